import { useMutation } from '@tanstack/react-query';
import { type Me, routes, type SecondStep } from '@underlath/contract';
import { type FormEvent, useEffect, useRef, useState } from 'react';
import { askForPasskey } from '../../shared/account/passkey-program.ts';
import { call } from '../../shared/api/call.ts';
import { problemOf } from '../../shared/api/errors.ts';
import { useChange } from '../../shared/api/hooks.ts';
import { useT } from '../../shared/i18n/locale.tsx';
import { accountWords } from '../../shared/i18n/messages/account.ts';
import { Button } from '../../shared/ui/button.tsx';
import { TextInput } from '../../shared/ui/field.tsx';
import { FailState } from '../../shared/ui/states.tsx';
import { PasskeyFail } from './passkey-fail.tsx';

type SecondStepFormProps = { needs: readonly SecondStep[]; onDone: (me: Me) => void; onBeginAgain: () => void };

const words = { code: 'useCode', passkey: 'usePasskey', recovery: 'useRecovery' } as const;

/** After the password: a code, a passkey or a recovery code, whichever the person has at hand. */
export function SecondStepForm({ needs, onDone, onBeginAgain }: SecondStepFormProps) {
  const t = useT(accountWords);
  const [step, setStep] = useState<SecondStep>(needs[0] ?? 'recovery');
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => heading.current?.focus(), []);
  return (
    <div className="stack">
      <h2 ref={heading} tabIndex={-1}>
        {t('secondTitle')}
      </h2>
      {step === 'passkey' ? <PasskeyStep onDone={onDone} /> : <TypedStep key={step} step={step} onDone={onDone} />}
      {needs
        .filter((other) => other !== step)
        .map((other) => (
          <Button key={other} wide onClick={() => setStep(other)}>
            {t(words[other])}
          </Button>
        ))}
      <Button look="quiet" onClick={onBeginAgain}>
        {t('beginAgain')}
      </Button>
    </div>
  );
}

type StepProps = { onDone: (me: Me) => void };

function TypedStep({ step, onDone }: StepProps & { step: 'code' | 'recovery' }) {
  const t = useT(accountWords);
  const [typed, setTyped] = useState('');
  const finish = useChange(routes.finishSignIn, { onDone });
  function submit(event: FormEvent) {
    event.preventDefault();
    finish.mutate({ body: step === 'code' ? { code: typed } : { recoveryCode: typed } });
  }
  return (
    <form className="stack" onSubmit={submit} noValidate>
      <TextInput
        label={t(step === 'code' ? 'codeLabel' : 'recoveryLabel')}
        hint={t(step === 'code' ? 'codeHint' : 'recoveryHint')}
        inputMode={step === 'code' ? 'numeric' : 'text'}
        autoComplete={step === 'code' ? 'one-time-code' : 'off'}
        autoCapitalize="characters"
        spellCheck={false}
        value={typed}
        onChange={setTyped}
        required
      />
      {finish.error && <FailState problem={problemOf(finish.error)} doing={t('secondDoing')} kept />}
      <Button type="submit" look="go" wide busy={finish.isPending}>
        {t('secondDo')}
      </Button>
    </form>
  );
}

function PasskeyStep({ onDone }: StepProps) {
  const t = useT(accountWords);
  const finish = useMutation({
    networkMode: 'always',
    mutationFn: async () => call(routes.finishSignIn, { body: { passkey: await askForPasskey('second') } }),
    onSuccess: onDone,
  });
  return (
    <>
      <Button look="go" wide busy={finish.isPending} onClick={() => finish.mutate()}>
        {t('usePasskey')}
      </Button>
      <PasskeyFail error={finish.error} />
    </>
  );
}
