import { Link, useNavigate } from '@tanstack/react-router';
import { routes } from '@underlath/contract';
import { type FormEvent, useState } from 'react';
import { problemOf } from '../../shared/api/errors.ts';
import { useChange, useRoute } from '../../shared/api/hooks.ts';
import { useSignedInAs } from '../../shared/api/me.ts';
import { useT } from '../../shared/i18n/locale.tsx';
import { appWords } from '../../shared/i18n/messages/app.ts';
import { commonWords } from '../../shared/i18n/messages/common.ts';
import { Button } from '../../shared/ui/button.tsx';
import { TextInput } from '../../shared/ui/field.tsx';
import { PasswordInput } from '../../shared/ui/password-input.tsx';
import { EmptyState, errorAt, FailState, LoadingRows } from '../../shared/ui/states.tsx';
import { Gate } from './gate.tsx';

const empty = { companyName: '', name: '', email: '', password: '' };

/** Where companies are opened, the form; elsewhere it is said at once, before anything is typed. */
export function StartScreen() {
  const t = useT(appWords);
  const tCommon = useT(commonWords);
  const signUp = useRoute(routes.getSignUp, {});
  if (signUp.data?.open) return <OpenCompany />;
  return (
    <Gate title={t('openCompany')}>
      {signUp.data && <EmptyState title={t('signUpClosed')}>{t('signUpClosedDo')}</EmptyState>}
      {signUp.isPending && <LoadingRows rows={4} />}
      {signUp.error && !signUp.data && (
        <FailState
          problem={problemOf(signUp.error)}
          doing={t('openCompanyDoing')}
          onRetry={() => signUp.refetch()}
          retrying={signUp.isFetching}
        />
      )}
      <p className="gate-other">
        {t('haveAccount')} <Link to="/sign-in">{tCommon('signIn')}</Link>
      </p>
    </Gate>
  );
}

/** Whoever opens a company becomes its owner and is signed in. */
function OpenCompany() {
  const t = useT(appWords);
  const tCommon = useT(commonWords);
  const navigate = useNavigate();
  const signedInAs = useSignedInAs();
  const [typed, setTyped] = useState(empty);
  const set = (name: keyof typeof empty) => (value: string) => setTyped((before) => ({ ...before, [name]: value }));
  const open = useChange(routes.createCompany, {
    onDone: (me) => {
      signedInAs(me);
      navigate({ to: '/' });
    },
  });
  const problem = open.error ? problemOf(open.error) : null;
  function submit(event: FormEvent) {
    event.preventDefault();
    open.mutate({ body: { ...typed, email: typed.email.trim() } });
  }
  return (
    <Gate title={t('openCompany')} lead={<p>{t('openCompanyLead')}</p>}>
      <form className="stack" onSubmit={submit} noValidate>
        <TextInput
          label={t('companyName')}
          autoComplete="organization"
          value={typed.companyName}
          onChange={set('companyName')}
          error={errorAt(problem, '/companyName')}
          required
        />
        <TextInput
          label={t('yourName')}
          autoComplete="name"
          value={typed.name}
          onChange={set('name')}
          error={errorAt(problem, '/name')}
          required
        />
        <TextInput
          label={t('email')}
          type="email"
          autoComplete="username"
          value={typed.email}
          onChange={set('email')}
          error={errorAt(problem, '/email')}
          required
        />
        <PasswordInput
          label={t('password')}
          hint={t('newPasswordHint')}
          autoComplete="new-password"
          value={typed.password}
          onChange={set('password')}
          error={errorAt(problem, '/password')}
        />
        {problem && <FailState problem={problem} doing={t('openCompanyDoing')} kept />}
        <Button type="submit" look="go" wide busy={open.isPending}>
          {t('openCompany')}
        </Button>
      </form>
      <p className="gate-other">
        {t('haveAccount')} <Link to="/sign-in">{tCommon('signIn')}</Link>
      </p>
    </Gate>
  );
}
