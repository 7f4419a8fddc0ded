import { Outlet, useRouter } from '@tanstack/react-router';
import { useEffect } from 'react';
import { isProblem, problemOf } from '../../shared/api/errors.ts';
import { useMe, useMeWithoutConnection } from '../../shared/api/me.ts';
import { useT } from '../../shared/i18n/locale.tsx';
import { appWords } from '../../shared/i18n/messages/app.ts';
import { FailState, LoadingRows } from '../../shared/ui/states.tsx';

/** Everything below needs someone signed in. A session that ends later is asked for again by SessionDialog, over the screen. */
export function SignedInOnly() {
  const me = useMe();
  useMeWithoutConnection();
  const t = useT(appWords);
  if (me.data) return <Outlet />;
  if (isProblem(me.error, 'not-signed-in')) return <ToSignIn />;
  return (
    <main id="main" className="gate">
      {me.error ? (
        <FailState
          problem={problemOf(me.error)}
          doing={t('sessionReading')}
          onRetry={() => me.refetch()}
          retrying={me.isFetching}
        />
      ) : (
        <LoadingRows rows={3} />
      )}
    </main>
  );
}

/** Goes to the sign-in once, remembering where to come back to: the address changes while this still stands. */
function ToSignIn() {
  const router = useRouter();
  useEffect(() => {
    const { href, pathname } = router.state.location;
    if (pathname === '/sign-in') return;
    router.navigate({ to: '/sign-in', search: href === '/' ? {} : { to: href }, replace: true });
  }, [router]);
  return null;
}
