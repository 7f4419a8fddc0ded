import { Link } from '@tanstack/react-router';
import { checks } from '@underlath/rules';
import { CheckPicture } from '../../shared/drawing/check-picture.tsx';
import { Page } from '../parts/page.tsx';
import '../order.css';

/** Every check there is, each with its picture. They come with the program, so nothing is read from the server. */
export function ChecksScreen() {
  return (
    <Page
      title="Checks"
      wide
      lead="What can be measured against a named rule. Each shows its sources, its worked cases, and what it does not cover."
    >
      <ul className="check-list">
        {checks.map((check) => (
          <li key={check.id}>
            <Link to="/checks/$checkId" params={{ checkId: check.id }} className="check-card">
              <CheckPicture checkId={check.id} />
              <b>{check.title.en}</b>
              <span className="soft">{check.question.en}</span>
            </Link>
          </li>
        ))}
      </ul>
    </Page>
  );
}
