import { Outlet, useRouter } from '@tanstack/react-router';
import { useEffect } from 'react';
import { useT } from '../shared/i18n/locale.tsx';
import { commonWords } from '../shared/i18n/messages/common.ts';
import { SessionDialog } from './sign-in/session-dialog.tsx';
import './app.css';

/** Frame of every screen: the skip link, focus that follows navigation, and the way back in when a session ends. */
export function RootScreen() {
  const t = useT(commonWords);
  useFocusOnNavigation();
  return (
    <>
      <a className="skip" href="#main">
        {t('skipToMain')}
      </a>
      <Outlet />
      <SessionDialog />
    </>
  );
}

/** After going to another address the focus stands on the new screen's heading, so that it is read and Tab goes on from there. */
function useFocusOnNavigation() {
  const router = useRouter();
  useEffect(
    () =>
      router.subscribe('onRendered', ({ fromLocation, toLocation }) => {
        if (!fromLocation || fromLocation.pathname === toLocation.pathname) return;
        const target = document.querySelector<HTMLElement>('#main h1') ?? document.getElementById('main');
        if (!target) return;
        if (!target.hasAttribute('tabindex')) target.tabIndex = -1;
        target.focus({ preventScroll: true });
      }),
    [router],
  );
}
