import { routes } from '@underlath/contract';
import { useRoute } from '../../shared/api/hooks.ts';
import { useMe } from '../../shared/api/me.ts';
import { Page, Part } from '../desk/page.tsx';
import { Reading } from '../desk/reading.tsx';
import { ApiKeys } from './api-keys.tsx';
import { CompanyForm } from './company-form.tsx';
import { CompanyRights } from './company-rights.tsx';
import { Invitations } from './invitations.tsx';
import { Members } from './members.tsx';
import { PeopleLogLink } from './people-log-link.tsx';

/** Who belongs to the company, what they may see and do, and its details as they stand on every letter. */
export function PeopleScreen() {
  const me = useMe();
  const owner = me.data?.member.role === 'owner';
  const members = useRoute(routes.listMembers, {});
  return (
    <Page
      title="People"
      lead={owner ? undefined : 'The owner of the company invites people, changes roles and the company’s details.'}
    >
      <Part title="Members">
        <Reading query={members} doing="Reading the members">
          {({ items }) => <Members members={items} owner={owner} myId={me.data?.member.id ?? ''} />}
        </Reading>
      </Part>
      {owner && <Invitations />}
      <CompanyRights owner={owner} />
      <CompanyForm owner={owner} />
      {owner && <ApiKeys />}
      {owner && <PeopleLogLink />}
    </Page>
  );
}
