import { type ApiKey, type Role, routes } from '@underlath/contract';
import { type FormEvent, useState } from 'react';
import { problemOf } from '../../shared/api/errors.ts';
import { useChange, useRoute } from '../../shared/api/hooks.ts';
import { Button } from '../../shared/ui/button.tsx';
import { Select, TextInput } from '../../shared/ui/field.tsx';
import { Stamp } from '../../shared/ui/stamp.tsx';
import { errorAt, FailState } from '../../shared/ui/states.tsx';
import { useStatus } from '../../shared/ui/status.tsx';
import { FormFail } from './form-fail.tsx';
import { LinkOnce } from './link-once.tsx';
import { Part } from './page.tsx';
import { Reading } from './reading.tsx';
import { roleOptions, roleWords } from './words.ts';

/** Keys for programs of the company. A key can do what its role can. */
export function ApiKeys() {
  const keys = useRoute(routes.listApiKeys, {});
  return (
    <Part title="API keys" lead="For programs of your own. A key may do what its role may.">
      <NewKey />
      <Reading query={keys} doing="Reading the keys" rows={2}>
        {({ items }) => <KeyList keys={items} />}
      </Reading>
    </Part>
  );
}

function NewKey() {
  const [name, setName] = useState('');
  const [role, setRole] = useState<Role>('estimator');
  const create = useChange(routes.createApiKey, {
    invalidates: [routes.listApiKeys],
    onDone: () => setName(''),
  });
  const problem = create.error ? problemOf(create.error) : null;
  function submit(event: FormEvent) {
    event.preventDefault();
    create.mutate({ body: { name: name.trim(), role } });
  }
  return (
    <form className="stack" onSubmit={submit} noValidate>
      <div className="inline-form">
        <TextInput
          label="What it is for"
          autoComplete="off"
          maxLength={80}
          value={name}
          onChange={setName}
          error={errorAt(problem, '/name')}
        />
        <Select label="Role" options={roleOptions} value={role} onChange={(value) => setRole(value as Role)} />
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
  const say = useStatus();
  const revoke = useChange(routes.revokeApiKey, {
    invalidates: [routes.listApiKeys],
    onDone: () => say('The key is revoked.'),
  });
  const live = keys.filter((key) => key.revokedAt === null);
  if (live.length === 0) return <p className="soft">No key is in use.</p>;
  return (
    <>
      <ul className="plain-rows">
        {live.map((key) => (
          <li key={key.id}>
            <span>
              <b>{key.name}</b>, {roleWords[key.role].toLowerCase()}
              <span className="soft">
                , begins with <code>{key.prefix}</code>, made <Stamp at={key.createdAt} />
              </span>
            </span>
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
