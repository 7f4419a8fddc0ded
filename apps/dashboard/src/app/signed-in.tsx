import { Navigate, Outlet, useLocation } from '@tanstack/react-router';
import { isProblem, problemOf } from '../shared/api/errors.ts';
import { useMe } from '../shared/api/me.ts';
import { useT } from '../shared/i18n/locale.tsx';
import { app } from '../shared/i18n/messages/app.ts';
import { FailState, LoadingRows } from '../shared/ui/states.tsx';

/** Everything below needs someone signed in. A session that ends later is asked for again by SessionDialog, over the screen. */
export function SignedIn() {
  const me = useMe();
  const t = useT(app);
  const href = useLocation({ select: (location) => location.href });
  if (me.data) return <Outlet />;
  if (isProblem(me.error, 'not-signed-in')) {
    return <Navigate to="/sign-in" search={href === '/' ? {} : { to: href }} replace />;
  }
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
