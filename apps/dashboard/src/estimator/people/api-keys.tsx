import { type ApiKey, type KeyUse, type Role, routes } from '@underlath/contract';
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
import { isLiveKey, roleOptions, roleWords } from '../desk/words.ts';

const useWords: Record<KeyUse, string> = { full: 'all its role may', read: 'reading only', photos: 'photos only' };
const useOptions = (Object.keys(useWords) as KeyUse[]).map((value) => ({
  value,
  label: `${useWords[value].charAt(0).toUpperCase()}${useWords[value].slice(1)}`,
}));

/** Keys for programs of the company. */
export function ApiKeys() {
  const keys = useRoute(routes.listApiKeys, {});
  return (
    <Part
      title="API keys"
      lead="For programs of your own. A key does what its role may, never more than whoever made it may now, and changes no members, invitations or keys."
    >
      <NewKey />
      <Reading query={keys} doing="Reading the keys" rows={2}>
        {({ items }) => <KeyList keys={items} />}
      </Reading>
    </Part>
  );
}

/** A day as its field holds it, by the clock of this device. */
function dayInYears(years: number): string {
  const day = new Date();
  day.setFullYear(day.getFullYear() + years);
  const two = (part: number) => String(part).padStart(2, '0');
  return `${day.getFullYear()}-${two(day.getMonth() + 1)}-${two(day.getDate())}`;
}

const startKey = () => ({ name: '', role: 'estimator' as Role, use: 'full' as KeyUse, lastDay: dayInYears(1) });

function NewKey() {
  const [typed, setTyped] = useState(startKey);
  const set = (change: Partial<typeof typed>) => setTyped((before) => ({ ...before, ...change }));
  const create = useChange(routes.createApiKey, {
    invalidates: [routes.listApiKeys],
    onDone: () => setTyped(startKey()),
  });
  const problem = create.error ? problemOf(create.error) : null;
  function submit(event: FormEvent) {
    event.preventDefault();
    const { name, role, use, lastDay } = typed;
    // Through its last day, as the person who makes it counts days.
    const end = new Date(`${lastDay}T23:59:59`);
    const expiresAt = Number.isNaN(end.getTime()) ? {} : { expiresAt: end.toISOString() };
    create.mutate({ body: { name: name.trim(), role, use, ...expiresAt } });
  }
  return (
    <form className="stack" onSubmit={submit} noValidate>
      <div className="inline-form">
        <TextInput
          label="What it is for"
          autoComplete="off"
          maxLength={80}
          value={typed.name}
          onChange={(name) => set({ name })}
          error={errorAt(problem, '/name')}
        />
        <Select
          label="Role of the key"
          options={roleOptions}
          value={typed.role}
          onChange={(role) => set({ role: role as Role })}
        />
        <Select
          label="It may do"
          options={useOptions}
          value={typed.use}
          onChange={(use) => set({ use: use as KeyUse })}
        />
        <TextInput
          label="Last day"
          type="date"
          min={dayInYears(0)}
          max={dayInYears(2)}
          value={typed.lastDay}
          onChange={(lastDay) => set({ lastDay })}
          error={errorAt(problem, '/expiresAt')}
        />
        <Button type="submit" busy={create.isPending}>
          Make a key
        </Button>
      </div>
      <FormFail problem={problem} doing="Making the key" />
      {create.data && (
        <LinkOnce link={create.data.secret} label={`Key “${create.data.name}”`} what="Keep it like a password." />
      )}
    </form>
  );
}

function KeyList({ keys }: { keys: readonly ApiKey[] }) {
  const announce = useAnnounce();
  const revoke = useChange(routes.revokeApiKey, {
    invalidates: [routes.listApiKeys],
    onDone: () => announce('The key is revoked.'),
  });
  const live = keys.filter(isLiveKey);
  if (live.length === 0) return <p className="soft">No key is in use.</p>;
  return (
    <>
      <ul className="plain-rows">
        {live.map((key) => (
          <li key={key.id}>
            <KeyFacts apiKey={key} />
            <Button
              look="quiet"
              busy={revoke.isPending && revoke.variables.params.apiKeyId === key.id}
              onClick={() => revoke.mutate({ params: { apiKeyId: key.id } })}
            >
              Revoke <span className="hidden-text">{key.name}</span>
            </Button>
          </li>
        ))}
      </ul>
      {revoke.error && <FailState problem={problemOf(revoke.error)} doing="Revoking the key" />}
    </>
  );
}

function KeyFacts({ apiKey: key }: { apiKey: ApiKey }) {
  return (
    <span>
      <b>{key.name}</b>, {roleWords[key.role].toLowerCase()}, {useWords[key.use]}, until <Stamp at={key.expiresAt} />
      <br />
      <span className="soft">
        {key.lastUsedAt ? (
          <>
            Last used <Stamp at={key.lastUsedAt} look="day-time" />
          </>
        ) : (
          'Never used'
        )}
        ; begins with <code>{key.prefix}</code>, made <Stamp at={key.createdAt} /> by {key.createdBy.name}
      </span>
    </span>
  );
}
