import { Outlet } from '@tanstack/react-router';
import { useEffect } from 'react';
import { OutboxProvider } from './outbox/use-outbox.tsx';

/** Fetched while there still is a signal: in the crawlspace, where a screen is first opened, there may be none. */
function fetchEveryScreen(): void {
  const screens = [
    import('./screens/account.tsx'),
    import('./screens/projects.tsx'),
    import('./screens/places.tsx'),
    import('./screens/place.tsx'),
    import('./screens/new-finding.tsx'),
    import('./screens/finding.tsx'),
    import('./screens/measure-again.tsx'),
    import('./screens/unsent.tsx'),
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
