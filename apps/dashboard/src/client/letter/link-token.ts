/** What the address of a letter says: which one, and the secret that opens it. Either may be missing. */
export interface LetterAddress {
  readonly letterId: string | null;
  readonly token: string | null;
}

/**
 * Reads the address, and takes the secret out of it, so that it stands in no history, screenshot or bookmark. Links that
 * were mailed before letters had ids carry the secret alone.
 */
export function takeAddress(location: Location, history: History): LetterAddress {
  const letterId = /^\/c\/([^/]+)/.exec(location.pathname)?.[1] ?? null;
  const token = location.hash.slice(1) || null;
  if (token !== null) history.replaceState(history.state, '', location.pathname + location.search);
  return { letterId, token };
}

/** Moves the address to where the letter is, without loading anything anew. */
export const moveAddress = (history: History, letterId: string): void =>
  history.replaceState(history.state, '', `/c/${letterId}`);
