import { type ApiKey, type Invitation, lowerRole, type Member, type Role, routes } from '@underlath/contract';
import { useState } from 'react';
import { problemOf } from '../../shared/api/errors.ts';
import { useChange, useRoute } from '../../shared/api/hooks.ts';
import { Button } from '../../shared/ui/button.tsx';
import { Dialog } from '../../shared/ui/dialog.tsx';
import { Select } from '../../shared/ui/field.tsx';
import { Stamp } from '../../shared/ui/stamp.tsx';
import { FailState } from '../../shared/ui/states.tsx';
import { useAnnounce } from '../../shared/ui/status.tsx';
import { isLiveKey, isOpenInvitation, plural, roleOptions, roleWords } from '../desk/words.ts';

type MembersProps = { members: readonly Member[]; owner: boolean; myId: string };
/** What somebody is asked about before it is done: a lower role, or none. */
type Asked = { member: Member; role: Role | null };

const afterwards = [routes.listMembers, routes.listApiKeys, routes.listInvitations, routes.whoAmI];

export function Members({ members, owner, myId }: MembersProps) {
  const [asked, setAsked] = useState<Asked | null>(null);
  const present = members.filter((member) => member.removedAt === null);
  const removed = members.filter((member) => member.removedAt !== null);
  return (
    <>
      <ul className="plain-rows">
        {present.map((member) => (
          <li key={member.id}>
            <span>
              <b>{member.name}</b>
              {member.id === myId && <span className="soft"> (you)</span>}
              <br />
              <span className="soft small">
                {member.email}, since <Stamp at={member.createdAt} />
              </span>
            </span>
            {owner && member.id !== myId ? (
              <span className="row">
                <RoleSelect member={member} onLower={(role) => setAsked({ member, role })} />
                <Button look="quiet" onClick={() => setAsked({ member, role: null })}>
                  Remove <span className="hidden-text">{member.name}</span>
                </Button>
              </span>
            ) : (
              roleWords[member.role]
            )}
          </li>
        ))}
      </ul>
      {removed.length > 0 && (
        <p className="soft">
          Removed: {removed.map((member) => member.name).join(', ')}. What they recorded keeps their names.
        </p>
      )}
      {asked && <TakeAway asked={asked} onClose={() => setAsked(null)} />}
    </>
  );
}

/** A higher role is given at once; a lower one ends things, and is asked about first. */
function RoleSelect({ member, onLower }: { member: Member; onLower: (role: Role) => void }) {
  const announce = useAnnounce();
  const change = useChange(routes.changeMember, {
    invalidates: afterwards,
    onDone: (changed) => announce(`${changed.name} is ${roleWords[changed.role].toLowerCase()} now`),
  });
  function choose(role: Role) {
    if (role === member.role) return;
    if (lowerRole(role, member.role) === role) return onLower(role);
    change.mutate({ params: { memberId: member.id }, body: { role }, ifMatch: member.version });
  }
  return (
    <>
      <Select
        label={`Role of ${member.name}`}
        labelHidden
        options={roleOptions}
        value={change.isPending ? (change.variables.body?.role ?? member.role) : member.role}
        onChange={(role) => choose(role as Role)}
      />
      {change.error && <FailState problem={problemOf(change.error)} doing={`Changing the role of ${member.name}`} />}
    </>
  );
}

function TakeAway({ asked: { member, role }, onClose }: { asked: Asked; onClose: () => void }) {
  const announce = useAnnounce();
  const done = (words: string) => {
    announce(words);
    onClose();
  };
  const params = { memberId: member.id };
  const remove = useChange(routes.removeMember, {
    invalidates: afterwards,
    onDone: () => done(`${member.name} is removed`),
  });
  const change = useChange(routes.changeMember, {
    invalidates: afterwards,
    onDone: (changed) => done(`${changed.name} is ${roleWords[changed.role].toLowerCase()} now`),
  });
  const roleWord = role && roleWords[role].toLowerCase();
  const error = remove.error ?? change.error;
  const doing = role ? `Changing the role of ${member.name}` : `Removing ${member.name}`;
  return (
    <Dialog
      open
      title={role ? `Make ${member.name} ${roleWord}?` : `Remove ${member.name}?`}
      onClose={onClose}
      actions={
        <>
          <Button onClick={onClose}>Cancel</Button>
          <Button
            look="go"
            busy={remove.isPending || change.isPending}
            onClick={() =>
              role
                ? change.mutate({ params, body: { role }, ifMatch: member.version })
                : remove.mutate({ params, ifMatch: member.version })
            }
          >
            {role ? `Make ${roleWord}` : 'Remove'}
          </Button>
        </>
      }
    >
      <div className="stack">
        <p>
          {role
            ? 'It holds from their next step on; nobody is signed out.'
            : 'They are signed out everywhere at once. What they recorded stays, under their name.'}
        </p>
        <WhatEnds member={member} role={role} />
        {error && <FailState problem={problemOf(error)} doing={doing} />}
      </div>
    </Dialog>
  );
}

/** Said before it is done: what the person made, and what becomes of it. */
function WhatEnds({ member, role }: Asked) {
  const keys = useRoute(routes.listApiKeys, {});
  const invitations = useRoute(routes.listInvitations, {});
  if (!keys.data || !invitations.data) return <p className="soft">Looking up what ends with it…</p>;
  return <p>{whatEnds(member.id, role, keys.data.items, invitations.data.items)}</p>;
}

export function whatEnds(
  memberId: string,
  role: Role | null,
  keys: readonly ApiKey[],
  invitations: readonly Invitation[],
): string {
  const sent = invitations.filter((one) => isOpenInvitation(one) && one.invitedBy.id === memberId).length;
  const theirs = keys.filter((key) => isLiveKey(key) && key.createdBy.id === memberId);
  const lowered = role ? theirs.filter((key) => key.role !== role && lowerRole(key.role, role) === role).length : 0;
  const ended = [
    ...(role || theirs.length === 0 ? [] : [plural(theirs.length, 'API key')]),
    ...(sent === 0 ? [] : [plural(sent, 'invitation')]),
  ];
  const isOne = theirs.length * (role ? 0 : 1) + sent === 1;
  const words = [
    ...(ended.length > 0 ? [`${ended.join(' and ')} ${isOne ? 'ends' : 'end'} with this.`] : []),
    ...(role && lowered > 0
      ? [`${plural(lowered, 'API key')} can do no more than ${roleWords[role].toLowerCase()} from then on.`]
      : []),
  ];
  return words.length > 0 ? words.join(' ') : 'No API key and no invitation of theirs ends with this.';
}
