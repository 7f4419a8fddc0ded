import { useQuery, useQueryClient } from '@tanstack/react-query';
import { type ClientLetter, clientRoutes } from '@underlath/contract';
import { useEffect, useState } from 'react';
import { call } from '../shared/api/call.ts';
import { useRoute, worthTrying } from '../shared/api/hooks.ts';
import { takeToken } from './link-token.ts';

/** While a question waits for its answer the letter is read again this often. */
const answerEveryMs = 60_000;

export type LetterState = {
  letter: ClientLetter | undefined;
  error: Error | null;
  retry: () => void;
  retrying: boolean;
};

/** The link opened last: its secret while it is being exchanged, null when the cookie of an earlier visit is used. */
type Link = { token: string | null; serial: number };

/** A link of another letter can be opened in the same tab: only the fragment changes then, and nothing is loaded anew. */
function useLink(): Link {
  const client = useQueryClient();
  const [link, setLink] = useState<Link>(() => ({ token: takeToken(location, history), serial: 0 }));
  useEffect(() => {
    const onHash = () => {
      const token = takeToken(location, history);
      if (token === null) return;
      client.removeQueries({ queryKey: [clientRoutes.getClientLetter.name] });
      setLink((old) => ({ token, serial: old.serial + 1 }));
    };
    window.addEventListener('hashchange', onHash);
    return () => window.removeEventListener('hashchange', onHash);
  }, [client]);
  return link;
}

/** Exchanges the link for a cookie, then reads the letter. Only reads follow; opening a letter changes nothing. */
export function useLetter(): LetterState {
  const { token, serial } = useLink();
  const opening = useQuery({
    queryKey: [clientRoutes.openClientLink.name, serial],
    queryFn: async ({ signal }) => {
      await call(clientRoutes.openClientLink, { body: { token: token ?? '' }, signal });
      return true;
    },
    enabled: token !== null,
    retry: worthTrying,
    networkMode: 'always',
    staleTime: Number.POSITIVE_INFINITY,
  });
  const opened = token === null || opening.isSuccess;
  const [waits, setWaits] = useState(false);
  const reading = useRoute(clientRoutes.getClientLetter, opened ? {} : null, { everyMs: waits && answerEveryMs });
  useEffect(() => {
    setWaits(reading.data?.questions.some((question) => question.answer === null) ?? false);
  }, [reading.data]);
  const failed = opened ? reading : opening;
  return {
    letter: opened ? reading.data : undefined,
    error: failed.error,
    retry: () => void failed.refetch(),
    retrying: failed.isFetching,
  };
}
