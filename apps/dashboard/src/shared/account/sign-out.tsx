import { routes } from '@underlath/contract';
import { type ReactNode, useRef, useState } from 'react';
import { problemOf } from '../api/errors.ts';
import { useChange } from '../api/hooks.ts';
import { useMe } from '../api/me.ts';
import { useT } from '../i18n/locale.tsx';
import { accountWords } from '../i18n/messages/account.ts';
import { commonWords } from '../i18n/messages/common.ts';
import { Button } from '../ui/button.tsx';
import { Dialog } from '../ui/dialog.tsx';
import { FailState } from '../ui/states.tsx';
import { countDrafts, forgetPerson } from './kept-here.ts';

type SignOutProps = {
  /** Findings and photos that are on this phone only. */
  unsent?: number;
  /** The way to them. */
  seeUnsent?: ReactNode;
};

/** Tells what is on this device only before it ends the session, and removes what the browser kept of the person. */
export function SignOut({ unsent = 0, seeUnsent }: SignOutProps) {
  const t = useT(accountWords);
  const c = useT(commonWords);
  const me = useMe();
  const [asked, setAsked] = useState<{ drafts: number } | null>(null);
  const unsentToo = useRef(false);
  const signOut = useChange(routes.signOut, {
    onDone: async () => {
      await forgetPerson(me.data?.member.id ?? '', unsentToo.current);
      // A whole new page, so that nothing of this session stays in memory.
      location.assign('/sign-in');
    },
  });
  function press() {
    const drafts = countDrafts();
    if (unsent + drafts > 0) setAsked({ drafts });
    else signOut.mutate({});
  }
  function go(deleting: boolean) {
    unsentToo.current = deleting;
    signOut.mutate({});
  }
  return (
    <>
      <Button look="quiet" busy={signOut.isPending} onClick={press}>
        {c('signOut')}
      </Button>
      {signOut.error && <FailState problem={problemOf(signOut.error)} doing={c('signOut')} />}
      <Dialog
        open={asked !== null}
        title={t('signOutTitle')}
        onClose={() => setAsked(null)}
        actions={
          <>
            <Button onClick={() => setAsked(null)}>{t('signOutStay')}</Button>
            {unsent > 0 && <Button onClick={() => go(true)}>{t('signOutDelete')}</Button>}
            <Button look="go" busy={signOut.isPending} onClick={() => go(false)}>
              {t('signOutKeep')}
            </Button>
          </>
        }
      >
        <div className="stack">
          {unsent > 0 && <p>{t('signOutUnsent', { count: unsent })}</p>}
          {unsent > 0 && seeUnsent}
          {asked && asked.drafts > 0 && <p>{t('signOutDrafts', { count: asked.drafts })}</p>}
        </div>
      </Dialog>
    </>
  );
}
