import { useQueryClient } from '@tanstack/react-query';
import { type Me, routes } from '@underlath/contract';
import { useEffect } from 'react';
import { OfflineError } from './errors.ts';
import { useRoute } from './hooks.ts';
import { forgetMe, keepMe, keptMe } from './kept-me.ts';
import { onSessionEnded, showMember } from './session.ts';

/** Who is signed in. The server says so again whenever the window comes back after a minute. */
export function useMe() {
  return useRoute(routes.whoAmI, {}, { staleMs: 60_000 });
}

/**
 * Lets the app open with no connection for the person who was signed in on this device last. The server is asked again as
 * soon as it answers, and its word counts; until then nothing but what is on the device can be seen.
 */
export function useMeWithoutConnection(): void {
  const client = useQueryClient();
  const { data, failureReason } = useMe();
  useEffect(() => {
    if (!data) return;
    keepMe(data);
    showMember(data.member.id);
  }, [data]);
  useEffect(() => {
    const known = data ? null : failureReason instanceof OfflineError ? keptMe() : null;
    if (known) client.setQueryData(whoAmIKey, known, { updatedAt: 0 });
  }, [client, data, failureReason]);
  useEffect(() => onSessionEnded(forgetMe), []);
}

/** Puts what a sign-in answered where `useMe` finds it, and forgets what another person may have read. */
export function useSignedInAs(): (me: Me) => void {
  const client = useQueryClient();
  return (me) => {
    const before = client.getQueryData<Me>(whoAmIKey);
    if (before && before.member.id !== me.member.id) client.clear();
    client.setQueryData(whoAmIKey, me);
    showMember(me.member.id);
  };
}

const whoAmIKey = [routes.whoAmI.name, {}, {}] as const;
