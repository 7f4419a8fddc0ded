import { routes } from '@underlath/contract';
import { type FormEvent, useState } from 'react';
import { problemOf } from '../api/errors.ts';
import { useChange } from '../api/hooks.ts';
import { useT } from '../i18n/locale.tsx';
import { accountWords } from '../i18n/messages/account.ts';
import { Button } from '../ui/button.tsx';
import { TextInput } from '../ui/field.tsx';
import { FailState } from '../ui/states.tsx';
import { QrCode } from './qr-code.tsx';
import { WithPassword } from './with-password.tsx';

type CodesSetupProps = { isOn: boolean; onCodes: (codes: readonly string[] | null) => void };

/** Sets up an authenticator app: password, secret, first code. Or ends asking for codes. */
export function CodesSetup({ isOn, onCodes }: CodesSetupProps) {
  const t = useT(accountWords);
  const begin = useChange(routes.beginCodes);
  const end = useChange(routes.endCodes, { invalidates: [routes.getAccount], onDone: () => begin.reset() });
  if (isOn) {
    return (
      <>
        <p>{t('codesOn')}</p>
        <WithPassword
          action={t('codesEnd')}
          doing={t('codesEnd')}
          error={end.error}
          busy={end.isPending}
          done={end.isSuccess}
          onSubmit={(password) => end.mutate({ body: { password } })}
        />
      </>
    );
  }
  return (
    <>
      <p>{end.isSuccess ? t('codesEnded') : t('codesOff')}</p>
      {begin.data ? (
        <FirstCode secret={begin.data.secret} uri={begin.data.uri} onCodes={onCodes} />
      ) : (
        <WithPassword
          action={t('codesBegin')}
          doing={t('codesDoing')}
          error={begin.error}
          busy={begin.isPending}
          done={begin.isSuccess}
          onSubmit={(password) => begin.mutate({ body: { password } })}
        />
      )}
    </>
  );
}

type FirstCodeProps = { secret: string; uri: string; onCodes: CodesSetupProps['onCodes'] };

function FirstCode({ secret, uri, onCodes }: FirstCodeProps) {
  const t = useT(accountWords);
  const [code, setCode] = useState('');
  const confirm = useChange(routes.confirmCodes, {
    invalidates: [routes.getAccount],
    onDone: ({ recoveryCodes }) => onCodes(recoveryCodes),
  });
  function submit(event: FormEvent) {
    event.preventDefault();
    confirm.mutate({ body: { code } });
  }
  return (
    <form className="stack account-form" onSubmit={submit} noValidate>
      <p className="prose">{t('qrDo')}</p>
      <QrCode text={uri} label={t('qrLabel')} />
      <p>
        {t('secret')}: <code className="secret">{secret.replace(/(.{4})(?=.)/g, '$1 ')}</code>
      </p>
      <TextInput
        label={t('codeNow')}
        inputMode="numeric"
        autoComplete="one-time-code"
        value={code}
        onChange={setCode}
        required
      />
      {confirm.error && <FailState problem={problemOf(confirm.error)} doing={t('codesDoing')} kept />}
      <Button type="submit" look="go" busy={confirm.isPending}>
        {t('codesConfirm')}
      </Button>
    </form>
  );
}
