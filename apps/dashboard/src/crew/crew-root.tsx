import { Outlet } from '@tanstack/react-router';
import { OutboxProvider } from './outbox/use-outbox.tsx';

/** Around every crew screen: what is on the phone keeps being sent while they move about. */
export function CrewRoot() {
  return (
    <OutboxProvider>
      <Outlet />
    </OutboxProvider>
  );
}
