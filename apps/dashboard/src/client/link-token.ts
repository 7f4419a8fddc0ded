/**
 * Takes the secret of the link out of the address: returns it and leaves the address without it, so that it stands in no
 * history, screenshot or bookmark. Null when the address has none.
 */
export function takeToken(location: Location, history: History): string | null {
  const token = location.hash.slice(1);
  if (token === '') return null;
  history.replaceState(null, '', location.pathname + location.search);
  return token;
}
