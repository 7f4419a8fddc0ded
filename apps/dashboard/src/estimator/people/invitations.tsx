import { type Invitation, type Role, routes } from '@underlath/contract';
import { type FormEvent, useState } from 'react';
import { problemOf } from '../../shared/api/errors.ts';
import { useChange, useRoute } from '../../shared/api/hooks.ts';
import { Button } from '../../shared/ui/button.tsx';
import { Select, TextInput } from '../../shared/ui/field.tsx';
import { Stamp } from '../../shared/ui/stamp.tsx';
import { errorAt, FailState } from '../../shared/ui/states.tsx';
import { useAnnounce } from '../../shared/ui/status.tsx';
import { FormFail } from '../desk/form-fail.tsx';
import { LinkOnce } from '../desk/link-once.tsx';
import { Part } from '../desk/page.tsx';
import { Reading } from '../desk/reading.tsx';
import { isOpenInvitation, roleOptions, roleWords } from '../desk/words.ts';

export function Invitations() {
  const invitations = useRoute(routes.listInvitations, {});
  return (
    <Part title="Invite someone">
      <InviteForm />
      <Reading query={invitations} doing="Reading the invitations" rows={2}>
        {({ items }) => <InvitationList items={items} />}
      </Reading>
    </Part>
  );
}

function InviteForm() {
  const [email, setEmail] = useState('');
  const [role, setRole] = useState<Role>('crew');
  const invite = useChange(routes.invite, {
    invalidates: [routes.listInvitations],
    onDone: () => setEmail(''),
  });
  const problem = invite.error ? problemOf(invite.error) : null;
  function submit(event: FormEvent) {
    event.preventDefault();
    invite.mutate({ body: { email: email.trim(), role } });
  }
  return (
    <form className="stack" onSubmit={submit} noValidate>
      <div className="inline-form">
        <TextInput
          label="E-mail"
          type="email"
          autoComplete="off"
          value={email}
          onChange={setEmail}
          error={errorAt(problem, '/email')}
        />
        <Select label="Role" options={roleOptions} value={role} onChange={(value) => setRole(value as Role)} />
        <Button type="submit" busy={invite.isPending}>
          Invite
        </Button>
      </div>
      <FormFail problem={problem} doing="Inviting" />
      {invite.data && (
        <LinkOnce
          link={invite.data.link}
          label={`Invitation for ${invite.data.email}`}
          what="It was also mailed. Whoever opens it can join under that address."
        />
      )}
    </form>
  );
}

function InvitationList({ items }: { items: readonly Invitation[] }) {
  const announce = useAnnounce();
  const revoke = useChange(routes.revokeInvitation, {
    invalidates: [routes.listInvitations],
    onDone: () => announce('The invitation is revoked.'),
  });
  const open = items.filter(isOpenInvitation);
  if (open.length === 0) return <p className="soft">No invitation is waiting.</p>;
  return (
    <>
      <ul className="plain-rows">
        {open.map((each) => (
          <li key={each.id}>
            <span>
              <b>{each.email}</b>, {roleWords[each.role].toLowerCase()}
              <span className="soft">
                {', '}
                until <Stamp at={each.expiresAt} />, sent by {each.invitedBy.name}
              </span>
            </span>
            <Button
              look="quiet"
              busy={revoke.isPending && revoke.variables.params.invitationId === each.id}
              onClick={() => revoke.mutate({ params: { invitationId: each.id } })}
            >
              Revoke <span className="hidden-text">the invitation of {each.email}</span>
            </Button>
          </li>
        ))}
      </ul>
      {revoke.error && <FailState problem={problemOf(revoke.error)} doing="Revoking the invitation" />}
    </>
  );
}
