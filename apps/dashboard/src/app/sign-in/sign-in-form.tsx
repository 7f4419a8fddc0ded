import { useMutation } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { type Me, routes, type SecondStep } from '@underlath/contract';
import { type FormEvent, useState } from 'react';
import { askForPasskey, canUsePasskeys } from '../../shared/account/passkey-program.ts';
import { call } from '../../shared/api/call.ts';
import { problemOf } from '../../shared/api/errors.ts';
import { useChange } from '../../shared/api/hooks.ts';
import { useT } from '../../shared/i18n/locale.tsx';
import { accountWords } from '../../shared/i18n/messages/account.ts';
import { appWords } from '../../shared/i18n/messages/app.ts';
import { commonWords } from '../../shared/i18n/messages/common.ts';
import { Button } from '../../shared/ui/button.tsx';
import { TextInput } from '../../shared/ui/field.tsx';
import { PasswordInput } from '../../shared/ui/password-input.tsx';
import { errorAt, FailState } from '../../shared/ui/states.tsx';
import { PasskeyFail } from './passkey-fail.tsx';
import { SecondStepForm } from './second-step-form.tsx';

type SignInFormProps = { knownEmail?: string; onDone: (me: Me) => void };

/** E-mail and password, and a second step where one is set up. `knownEmail` fills in who was signed in before. */
export function SignInForm({ knownEmail = '', onDone }: SignInFormProps) {
  const [needs, setNeeds] = useState<readonly SecondStep[] | null>(null);
  return needs ? (
    <SecondStepForm needs={needs} onDone={onDone} onBeginAgain={() => setNeeds(null)} />
  ) : (
    <PasswordForm knownEmail={knownEmail} onDone={onDone} onSecondStep={setNeeds} />
  );
}

type PasswordFormProps = Required<SignInFormProps> & { onSecondStep: (needs: readonly SecondStep[]) => void };

function PasswordForm({ knownEmail, onDone, onSecondStep }: PasswordFormProps) {
  const t = useT(appWords);
  const a = useT(accountWords);
  const tCommon = useT(commonWords);
  const [email, setEmail] = useState(knownEmail);
  const [password, setPassword] = useState('');
  const signIn = useChange(routes.signIn, {
    onDone: (answer) => ('needs' in answer ? onSecondStep(answer.needs) : onDone(answer)),
  });
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
      {canUsePasskeys() && <PasskeySignIn onDone={onDone} />}
      <p>
        <Link to="/forgot" search={email ? { email } : {}}>
          {a('forgot')}
        </Link>
      </p>
    </form>
  );
}

/** A passkey whose device checks the person says who they are, and needs no password. */
function PasskeySignIn({ onDone }: { onDone: (me: Me) => void }) {
  const a = useT(accountWords);
  const signIn = useMutation({
    networkMode: 'always',
    mutationFn: async () => call(routes.signInWithPasskey, { body: { passkey: await askForPasskey('alone') } }),
    onSuccess: onDone,
  });
  return (
    <>
      <Button wide busy={signIn.isPending} onClick={() => signIn.mutate()}>
        {a('passkeySignIn')}
      </Button>
      <PasskeyFail error={signIn.error} />
    </>
  );
}
