import { Outlet } from '@tanstack/react-router';
import { useEffect } from 'react';
import { OutboxProvider } from './outbox/use-outbox.tsx';

/** Fetched while there still is a signal: in the crawlspace, where a screen is first opened, there may be none. */
function fetchEveryScreen(): void {
  const screens = [
    import('./account-screen.tsx'),
    import('./place/projects-screen.tsx'),
    import('./place/places-screen.tsx'),
    import('./place/place-screen.tsx'),
    import('./finding/new-finding-screen.tsx'),
    import('./finding/finding-screen.tsx'),
    import('./finding/measure-again-screen.tsx'),
    import('./outbox/unsent-screen.tsx'),
  ];
  // A screen that could not be fetched now is fetched when it is opened, and says so itself if that fails too.
  void Promise.allSettled(screens);
}

/** Around every crew screen: what is on the phone keeps being sent while they move about. */
export function CrewRoot() {
  useEffect(fetchEveryScreen, []);
  return (
    <OutboxProvider>
      <Outlet />
    </OutboxProvider>
  );
}
