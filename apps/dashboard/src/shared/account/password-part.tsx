import { routes } from '@underlath/contract';
import { useState } from 'react';
import { problemOf } from '../api/errors.ts';
import { useChange } from '../api/hooks.ts';
import { useT } from '../i18n/locale.tsx';
import { accountWords } from '../i18n/messages/account.ts';
import { PasswordInput } from '../ui/password-input.tsx';
import { errorAt } from '../ui/states.tsx';
import { WithPassword } from './with-password.tsx';

export function PasswordPart() {
  const t = useT(accountWords);
  const [newPassword, setNewPassword] = useState('');
  const change = useChange(routes.changePassword, {
    invalidates: [routes.listDevices],
    onDone: () => setNewPassword(''),
  });
  return (
    <section className="account-part stack">
      <h2>{t('passwordPart')}</h2>
      <WithPassword
        action={t('changePassword')}
        doing={t('newPasswordDoing')}
        error={change.error}
        busy={change.isPending}
        done={change.isSuccess}
        onSubmit={(password) => change.mutate({ body: { password, newPassword } })}
      >
        <PasswordInput
          label={t('newPassword')}
          hint={t('newPasswordHint')}
          autoComplete="new-password"
          value={newPassword}
          onChange={setNewPassword}
          error={errorAt(change.error && problemOf(change.error), '/newPassword')}
        />
      </WithPassword>
      <p role="status">{change.isSuccess && t('passwordChanged')}</p>
    </section>
  );
}
