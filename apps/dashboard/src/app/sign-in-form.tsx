import { type Me, routes } from '@underlath/contract';
import { type FormEvent, useState } from 'react';
import { problemOf } from '../shared/api/errors.ts';
import { useChange } from '../shared/api/hooks.ts';
import { useT } from '../shared/i18n/locale.tsx';
import { app } from '../shared/i18n/messages/app.ts';
import { common } from '../shared/i18n/messages/common.ts';
import { Button } from '../shared/ui/button.tsx';
import { TextInput } from '../shared/ui/field.tsx';
import { errorAt, FailState } from '../shared/ui/states.tsx';
import { PasswordInput } from './password-input.tsx';

/** E-mail and password. `knownEmail` fills in who was signed in before. */
export function SignInForm({ knownEmail = '', onDone }: { knownEmail?: string; onDone: (me: Me) => void }) {
  const t = useT(app);
  const tCommon = useT(common);
  const [email, setEmail] = useState(knownEmail);
  const [password, setPassword] = useState('');
  const signIn = useChange(routes.signIn, { onDone });
  const problem = signIn.error ? problemOf(signIn.error) : null;
  function submit(event: FormEvent) {
    event.preventDefault();
    signIn.mutate({ body: { email: email.trim(), password } });
  }
  return (
    <form className="stack" onSubmit={submit} noValidate>
      <TextInput
        label={t('email')}
        type="email"
        autoComplete="username"
        value={email}
        onChange={setEmail}
        error={errorAt(problem, '/email')}
        required
      />
      <PasswordInput
        label={t('password')}
        autoComplete="current-password"
        value={password}
        onChange={setPassword}
        error={errorAt(problem, '/password')}
      />
      {problem && <FailState problem={problem} doing={t('signInDoing')} kept />}
      <Button type="submit" look="go" wide busy={signIn.isPending}>
        {tCommon('signIn')}
      </Button>
    </form>
  );
}
