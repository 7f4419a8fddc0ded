import { Link } from '@tanstack/react-router';
import { routes } from '@underlath/contract';
import { type FormEvent, useState } from 'react';
import { problemOf } from '../../shared/api/errors.ts';
import { useChange } from '../../shared/api/hooks.ts';
import { useT } from '../../shared/i18n/locale.tsx';
import { accountWords } from '../../shared/i18n/messages/account.ts';
import { commonWords } from '../../shared/i18n/messages/common.ts';
import { Button, buttonClass } from '../../shared/ui/button.tsx';
import { PasswordInput } from '../../shared/ui/password-input.tsx';
import { EmptyState, errorAt, FailState } from '../../shared/ui/states.tsx';
import { Gate } from './gate.tsx';
import { tokenOfThisPage } from './letter-token.ts';

/** Where the link of a forgotten password leads. Opening it changes nothing. */
export function NewPasswordScreen() {
  const t = useT(accountWords);
  const c = useT(commonWords);
  const [token] = useState(tokenOfThisPage);
  const [password, setPassword] = useState('');
  const reset = useChange(routes.resetPassword);
  const problem = reset.error ? problemOf(reset.error) : null;
  function submit(event: FormEvent) {
    event.preventDefault();
    reset.mutate({ body: { token, password } });
  }
  if (token === '') {
    return (
      <Gate title={t('newPasswordTitle')}>
        <EmptyState title={t('linkMissing')}>
          <p>{t('linkMissingDo')}</p>
          <Link to="/forgot">{t('forgot')}</Link>
        </EmptyState>
      </Gate>
    );
  }
  if (reset.isSuccess) {
    return (
      <Gate title={t('newPasswordTitle')}>
        <p role="status">{t('newPasswordDone')}</p>
        <Link to="/sign-in" className={buttonClass('go', true)}>
          {c('signIn')}
        </Link>
      </Gate>
    );
  }
  return (
    <Gate title={t('newPasswordTitle')} lead={<p>{t('newPasswordLead')}</p>}>
      <form className="stack" onSubmit={submit} noValidate>
        <PasswordInput
          label={t('newPassword')}
          hint={t('newPasswordHint')}
          autoComplete="new-password"
          value={password}
          onChange={setPassword}
          error={errorAt(problem, '/password')}
        />
        {problem && <FailState problem={problem} doing={t('newPasswordDoing')} kept />}
        <Button type="submit" look="go" wide busy={reset.isPending}>
          {t('newPasswordDo')}
        </Button>
      </form>
      <p className="gate-other">
        <Link to="/forgot">{t('forgot')}</Link>
      </p>
    </Gate>
  );
}
