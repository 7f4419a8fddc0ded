import { Link, useSearch } from '@tanstack/react-router';
import { routes } from '@underlath/contract';
import { type FormEvent, useState } from 'react';
import { problemOf } from '../../shared/api/errors.ts';
import { useChange } from '../../shared/api/hooks.ts';
import { useT } from '../../shared/i18n/locale.tsx';
import { accountWords } from '../../shared/i18n/messages/account.ts';
import { appWords } from '../../shared/i18n/messages/app.ts';
import { Button } from '../../shared/ui/button.tsx';
import { TextInput } from '../../shared/ui/field.tsx';
import { errorAt, FailState } from '../../shared/ui/states.tsx';
import { Gate } from './gate.tsx';

export function ForgotScreen() {
  const t = useT(accountWords);
  const tApp = useT(appWords);
  const { email: typedBefore = '' } = useSearch({ from: '/forgot' });
  const [email, setEmail] = useState(typedBefore);
  const ask = useChange(routes.forgotPassword);
  const problem = ask.error ? problemOf(ask.error) : null;
  const asked = ask.data && ask.variables?.body.email;
  function submit(event: FormEvent) {
    event.preventDefault();
    ask.mutate({ body: { email: email.trim() } });
  }
  return (
    <Gate title={t('forgotTitle')} lead={<p>{t('forgotLead')}</p>}>
      <form className="stack" onSubmit={submit} noValidate>
        <TextInput
          label={tApp('email')}
          type="email"
          autoComplete="username"
          value={email}
          onChange={setEmail}
          error={errorAt(problem, '/email')}
          required
        />
        {problem && <FailState problem={problem} doing={t('forgotDoing')} kept />}
        <Button type="submit" look="go" wide busy={ask.isPending}>
          {t('forgotDo')}
        </Button>
        <p role="status">
          {asked && t(ask.data?.delivery === 'filed' ? 'forgotFiled' : 'forgotMailed', { email: asked })}
        </p>
      </form>
      <p className="gate-other">
        <Link to="/sign-in">{t('backToSignIn')}</Link>
      </p>
    </Gate>
  );
}
