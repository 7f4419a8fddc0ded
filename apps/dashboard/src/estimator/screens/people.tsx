import { type Member, type Role, routes } from '@underlath/contract';
import { useState } from 'react';
import { problemOf } from '../../shared/api/errors.ts';
import { useChange, useRoute } from '../../shared/api/hooks.ts';
import { useMe } from '../../shared/api/me.ts';
import { Button } from '../../shared/ui/button.tsx';
import { type Column, DataTable } from '../../shared/ui/data-table.tsx';
import { Dialog } from '../../shared/ui/dialog.tsx';
import { Select } from '../../shared/ui/field.tsx';
import { Stamp } from '../../shared/ui/stamp.tsx';
import { FailState } from '../../shared/ui/states.tsx';
import { useStatus } from '../../shared/ui/status.tsx';
import { ApiKeys } from '../parts/api-keys.tsx';
import { CompanyForm } from '../parts/company-form.tsx';
import { Invitations } from '../parts/invitations.tsx';
import { Page, Part } from '../parts/page.tsx';
import { PeopleLogLink } from '../parts/people-log-link.tsx';
import { Reading } from '../parts/reading.tsx';
import { roleOptions, roleWords } from '../parts/words.ts';

/** Who belongs to the company, and its details as they stand on every letter. */
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
      <CompanyForm owner={owner} />
      {owner && <ApiKeys />}
      {owner && <PeopleLogLink />}
    </Page>
  );
}

type MembersProps = { members: readonly Member[]; owner: boolean; myId: string };

function Members({ members, owner, myId }: MembersProps) {
  const [removing, setRemoving] = useState<Member | null>(null);
  const present = members.filter((member) => member.removedAt === null);
  const removed = members.filter((member) => member.removedAt !== null);
  const columns: Column<Member>[] = [
    {
      key: 'name',
      head: 'Name',
      sortBy: (row) => row.name,
      cell: (row) => (
        <>
          <b>{row.name}</b>
          {row.id === myId && <span className="soft"> (you)</span>}
          <div className="soft small">{row.email}</div>
        </>
      ),
    },
    {
      key: 'role',
      head: 'Role',
      sortBy: (row) => row.role,
      cell: (row) => (owner && row.id !== myId ? <RoleSelect member={row} /> : roleWords[row.role]),
    },
    {
      key: 'since',
      head: 'Since',
      wideOnly: true,
      sortBy: (row) => row.createdAt,
      cell: (row) => <Stamp at={row.createdAt} />,
    },
  ];
  if (owner) {
    columns.push({
      key: 'remove',
      head: '',
      cell: (row) =>
        row.id !== myId && (
          <Button look="quiet" onClick={() => setRemoving(row)}>
            Remove <span className="hidden-text">{row.name}</span>
          </Button>
        ),
    });
  }
  return (
    <>
      <DataTable caption="Members" columns={columns} rows={present} rowKey={(row) => row.id} />
      {removed.length > 0 && (
        <p className="soft">
          Removed: {removed.map((member) => member.name).join(', ')}. What they recorded keeps their names.
        </p>
      )}
      {removing && <RemoveMember member={removing} onClose={() => setRemoving(null)} />}
    </>
  );
}

function RoleSelect({ member }: { member: Member }) {
  const say = useStatus();
  const change = useChange(routes.changeMember, {
    invalidates: [routes.listMembers],
    onDone: (changed) => say(`${changed.name} is ${roleWords[changed.role].toLowerCase()} now`),
  });
  return (
    <>
      <Select
        label={`Role of ${member.name}`}
        labelHidden
        options={roleOptions}
        value={change.isPending ? (change.variables.body?.role ?? member.role) : member.role}
        onChange={(role) => change.mutate({ params: { memberId: member.id }, body: { role: role as Role } })}
      />
      {change.error && <FailState problem={problemOf(change.error)} doing={`Changing the role of ${member.name}`} />}
    </>
  );
}

function RemoveMember({ member, onClose }: { member: Member; onClose: () => void }) {
  const say = useStatus();
  const remove = useChange(routes.removeMember, {
    invalidates: [routes.listMembers],
    onDone: () => {
      say(`${member.name} is removed`);
      onClose();
    },
  });
  return (
    <Dialog
      open
      title={`Remove ${member.name}?`}
      onClose={onClose}
      actions={
        <>
          <Button onClick={onClose}>Cancel</Button>
          <Button look="go" busy={remove.isPending} onClick={() => remove.mutate({ params: { memberId: member.id } })}>
            Remove
          </Button>
        </>
      }
    >
      <div className="stack">
        <p>They are signed out everywhere at once. What they recorded stays, under their name.</p>
        {remove.error && <FailState problem={problemOf(remove.error)} doing={`Removing ${member.name}`} />}
      </div>
    </Dialog>
  );
}
