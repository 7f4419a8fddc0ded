import { useQueryClient } from '@tanstack/react-query';
import { type Me, routes } from '@underlath/contract';
import { useRoute } from './hooks.ts';

/** Who is signed in. The server says so again whenever the window comes back after a minute. */
export function useMe() {
  return useRoute(routes.whoAmI, {}, { staleMs: 60_000 });
}

/** Puts what a sign-in answered where `useMe` finds it, and forgets what another person may have read. */
export function useSignedInAs(): (me: Me) => void {
  const client = useQueryClient();
  return (me) => {
    const before = client.getQueryData<Me>(whoAmIKey);
    if (before && before.member.id !== me.member.id) client.clear();
    client.setQueryData(whoAmIKey, me);
  };
}

const whoAmIKey = [routes.whoAmI.name, {}, {}] as const;
