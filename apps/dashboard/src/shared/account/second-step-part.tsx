import { type AccountView, routes } from '@underlath/contract';
import { useState } from 'react';
import { useChange } from '../api/hooks.ts';
import { useT } from '../i18n/locale.tsx';
import { accountWords } from '../i18n/messages/account.ts';
import { CodesSetup } from './codes-setup.tsx';
import { PasskeysSetup } from './passkeys-setup.tsx';
import { RecoveryCodes } from './recovery-codes.tsx';
import { WithPassword } from './with-password.tsx';

export function SecondStepPart({ own }: { own: AccountView }) {
  const t = useT(accountWords);
  const [codes, setCodes] = useState<readonly string[] | null>(null);
  const hasSecondStep = own.codesOn || own.passkeys.length > 0;
  return (
    <section className="account-part stack">
      <h2>{t('secondPart')}</h2>
      <p className="soft prose">{t('secondLead')}</p>
      {codes && <RecoveryCodes codes={codes} onKept={() => setCodes(null)} />}
      <CodesSetup isOn={own.codesOn} onCodes={setCodes} />
      <PasskeysSetup passkeys={own.passkeys} onCodes={setCodes} />
      {hasSecondStep && <RecoveryPart left={own.recoveryCodesLeft} onCodes={setCodes} />}
    </section>
  );
}

function RecoveryPart({ left, onCodes }: { left: number; onCodes: (codes: readonly string[]) => void }) {
  const t = useT(accountWords);
  const make = useChange(routes.newRecoveryCodes, {
    invalidates: [routes.getAccount],
    onDone: ({ recoveryCodes }) => onCodes(recoveryCodes),
  });
  return (
    <>
      <p>{t('recoveryLeft', { count: left })}</p>
      <WithPassword
        action={t('recoveryNew')}
        doing={t('recoveryNewDoing')}
        error={make.error}
        busy={make.isPending}
        done={make.isSuccess}
        onSubmit={(password) => make.mutate({ body: { password } })}
      />
    </>
  );
}
