import { Link } from '@tanstack/react-router';
import { Part } from '../desk/page.tsx';

/** The way from the people to what happened to them. */
export function PeopleLogLink() {
  return (
    <Part title="Log" lead="Sign-ins, roles, keys, invitations and company details, as they were changed and by whom.">
      <p>
        <Link to="/people-log">Read the log of people</Link>
      </p>
    </Part>
  );
}
