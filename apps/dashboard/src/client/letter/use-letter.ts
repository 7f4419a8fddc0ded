import { useQuery, useQueryClient } from '@tanstack/react-query';
import { type ClientLetter, clientRoutes } from '@underlath/contract';
import { useEffect, useState } from 'react';
import { call } from '../../shared/api/call.ts';
import { keyOf, useRoute, worthTrying } from '../../shared/api/hooks.ts';
import { type LetterAddress, moveAddress, takeAddress } from './link-token.ts';

/** While a question waits for its answer the letter is read again this often. */
const answerEveryMs = 60_000;

export type LetterState = {
  /** Of the address; null while an older link has not told it. */
  letterId: string | null;
  letter: ClientLetter | undefined;
  /** The address names no letter and opens none. */
  nowhere: boolean;
  error: Error | null;
  retry: () => void;
  retrying: boolean;
};

/** The link opened last: its secret while it is being exchanged, null when the session of an earlier visit is used. */
type Link = LetterAddress & { serial: number };

/** The link of a letter can be opened again where it is open: only the fragment changes then, and nothing is loaded anew. */
function useLink(): Link {
  const client = useQueryClient();
  const [link, setLink] = useState<Link>(() => ({ ...takeAddress(location, history), serial: 0 }));
  useEffect(() => {
    const onHash = () => {
      const address = takeAddress(location, history);
      if (address.token === null) return;
      client.removeQueries({ queryKey: [clientRoutes.getClientLetter.name] });
      setLink((old) => ({ ...address, serial: old.serial + 1 }));
    };
    window.addEventListener('hashchange', onHash);
    return () => window.removeEventListener('hashchange', onHash);
  }, [client]);
  return link;
}

/** Exchanges the secret for a session; answers which letter it opened. */
async function exchange({ letterId, token }: LetterAddress, signal: AbortSignal): Promise<string> {
  const body = { token: token ?? '' };
  if (letterId !== null) {
    return (await call(clientRoutes.openClientLink, { params: { letterId }, body, signal })).letterId;
  }
  const opened = await call(clientRoutes.openUnnamedLink, { body, signal });
  moveAddress(history, opened.letterId);
  return opened.letterId;
}

/** Exchanges the link for a session, then reads the letter. Only reads follow; opening a letter changes nothing of it. */
export function useLetter(): LetterState {
  const link = useLink();
  const opening = useQuery({
    queryKey: [clientRoutes.openClientLink.name, link.serial],
    queryFn: ({ signal }) => exchange(link, signal),
    enabled: link.token !== null,
    retry: worthTrying,
    networkMode: 'always',
    staleTime: Number.POSITIVE_INFINITY,
  });
  const letterId = link.token === null ? link.letterId : (opening.data ?? null);
  const [waits, setWaits] = useState(false);
  const asked = letterId === null ? null : { params: { letterId } };
  const reading = useRoute(clientRoutes.getClientLetter, asked, { everyMs: waits && answerEveryMs });
  useEffect(() => {
    setWaits(reading.data?.questions.some((question) => question.answer === null) ?? false);
  }, [reading.data]);
  const failed = letterId === null ? opening : reading;
  return {
    letterId,
    letter: letterId === null ? undefined : reading.data,
    nowhere: letterId === null && link.token === null,
    error: failed.error,
    retry: () => void failed.refetch(),
    retrying: failed.isFetching,
  };
}

/** Where the letter is kept while it is open, by its own id. */
export const letterKey = (letterId: string): readonly unknown[] =>
  keyOf(clientRoutes.getClientLetter, { params: { letterId } });
