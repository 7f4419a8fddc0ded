import { useMutation, useQueryClient } from '@tanstack/react-query';
import { type Passkey, routes } from '@underlath/contract';
import { useState } from 'react';
import { call } from '../api/call.ts';
import { useChange } from '../api/hooks.ts';
import { useT } from '../i18n/locale.tsx';
import { accountWords } from '../i18n/messages/account.ts';
import { TextInput } from '../ui/field.tsx';
import { Stamp } from '../ui/stamp.tsx';
import { useAnnounce } from '../ui/status.tsx';
import { canUsePasskeys, makePasskey } from './passkey-program.ts';
import { WithPassword } from './with-password.tsx';

type PasskeysSetupProps = { passkeys: readonly Passkey[]; onCodes: (codes: readonly string[] | null) => void };

export function PasskeysSetup({ passkeys, onCodes }: PasskeysSetupProps) {
  const t = useT(accountWords);
  return (
    <>
      {passkeys.length === 0 && <p>{t('passkeysNone')}</p>}
      <ul className="account-rows">
        {passkeys.map((passkey) => (
          <PasskeyRow key={passkey.id} passkey={passkey} />
        ))}
      </ul>
      {canUsePasskeys() && <AddPasskey onCodes={onCodes} />}
    </>
  );
}

function PasskeyRow({ passkey: { id, name, lastUsedAt } }: { passkey: Passkey }) {
  const t = useT(accountWords);
  const announce = useAnnounce();
  const remove = useChange(routes.removePasskey, {
    invalidates: [routes.getAccount],
    onDone: () => announce(t('passkeyRemoved')),
  });
  return (
    <li>
      <span>
        <b>{name}</b>
        <span className="soft">
          {', '}
          {lastUsedAt ? (
            <>
              {t('passkeyUsed')} <Stamp at={lastUsedAt} />
            </>
          ) : (
            t('passkeyUnused')
          )}
        </span>
      </span>
      <WithPassword
        action={t('passkeyRemove')}
        of={name}
        quiet
        doing={t('passkeyRemove')}
        error={remove.error}
        busy={remove.isPending}
        done={remove.isSuccess}
        onSubmit={(password) => remove.mutate({ params: { passkeyId: id }, body: { password } })}
      />
    </li>
  );
}

function AddPasskey({ onCodes }: Pick<PasskeysSetupProps, 'onCodes'>) {
  const t = useT(accountWords);
  const announce = useAnnounce();
  const client = useQueryClient();
  const [name, setName] = useState('');
  const add = useMutation({
    mutationFn: async (password: string) =>
      call(routes.addPasskey, { body: { name, passkey: await makePasskey(password) } }),
    onSuccess: async ({ recoveryCodes }) => {
      announce(t('passkeyAdded'));
      setName('');
      onCodes(recoveryCodes);
      await client.invalidateQueries({ queryKey: [routes.getAccount.name] });
    },
  });
  return (
    <WithPassword
      action={t('passkeyAdd')}
      doing={t('passkeyAdd')}
      error={add.error}
      busy={add.isPending}
      done={add.isSuccess}
      onSubmit={(password) => add.mutate(password)}
    >
      <TextInput
        label={t('passkeyName')}
        hint={t('passkeyNameHint')}
        autoComplete="off"
        value={name}
        onChange={setName}
        required
      />
    </WithPassword>
  );
}
