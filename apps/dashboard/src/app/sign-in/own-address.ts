/** Only an address of this app is followed after sign-in; `//elsewhere` and full addresses are not. */
export function ownAddress(to: string | undefined): string {
  return to && /^\/(?![/\\])/.test(to) ? to : '/';
}
