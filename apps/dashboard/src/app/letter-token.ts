/** The secret of a mailed link stands in the fragment, which no server and no log sees. It is taken out of the address at once. */
function take(): string {
  const token = decodeURIComponent(location.hash.replace(/^#/, ''));
  if (token) history.replaceState(history.state, '', location.pathname);
  return token;
}

/** By page: React may run a component's first render twice, and the address is clean by then. */
const taken = new Map<string, string>();

export function tokenOfThisPage(): string {
  const token = take() || taken.get(location.pathname) || '';
  taken.set(location.pathname, token);
  return token;
}
