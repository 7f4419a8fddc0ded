/** The secret of a mailed link stands in the fragment, which no server and no log sees. It is taken out of the address at once. */
function take(): string {
  const token = decodeURIComponent(location.hash.replace(/^#/, ''));
  if (token) history.replaceState(history.state, '', location.pathname);
  return token;
}

// Read once for the page: React may run a component's first render twice, and the address is clean by then.
let taken: string | null = null;
export function tokenOfThisPage(): string {
  taken = taken || take();
  return taken;
}
