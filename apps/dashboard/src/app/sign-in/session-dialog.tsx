import { useQueryClient } from '@tanstack/react-query';
import type { Me } from '@underlath/contract';
import { useEffect, useState } from 'react';
import { useSignedInAs } from '../../shared/api/me.ts';
import { onSessionEnded } from '../../shared/api/session.ts';
import { useT } from '../../shared/i18n/locale.tsx';
import { appWords } from '../../shared/i18n/messages/app.ts';
import { Dialog } from '../../shared/ui/dialog.tsx';
import { SignInForm } from './sign-in-form.tsx';

/** Asks to sign in again over the screen that is being worked on. Nothing below is taken away, so nothing typed is lost. */
export function SessionDialog() {
  const t = useT(appWords);
  const client = useQueryClient();
  const signedInAs = useSignedInAs();
  const [was, setWas] = useState<Me | null>(null);
  useEffect(
    () =>
      onSessionEnded(() => {
        // Nobody was signed in on this page: the sign-in screen is the place, not a dialog.
        const me = client.getQueryData<Me>(['whoAmI', {}, {}]);
        if (me) setWas((before) => before ?? me);
      }),
    [client],
  );
  function done(me: Me) {
    const samePerson = me.member.id === was?.member.id;
    signedInAs(me);
    setWas(null);
    // Another person must not go on in the first one's screen.
    if (samePerson) client.invalidateQueries();
    else location.assign('/');
  }
  return (
    <Dialog open={was !== null} title={t('endedTitle')} onClose={() => setWas(null)}>
      <div className="stack">
        <p>{t('endedLead')}</p>
        <SignInForm knownEmail={was?.member.email ?? ''} onDone={done} />
      </div>
    </Dialog>
  );
}
