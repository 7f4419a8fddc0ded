type Listener = () => void;

const listeners = new Set<Listener>();

/** Told by the API client when the server no longer knows the session. */
export function sessionEnded(): void {
  for (const listener of listeners) listener();
}

/** Hears that the session ended, so that the app can ask to sign in again over the screen that is being worked on. */
export function onSessionEnded(listener: Listener): () => void {
  listeners.add(listener);
  return () => listeners.delete(listener);
}

let shownMember: string | undefined;

/** Whom the page in this tab is drawn for. */
export function showMember(id: string): void {
  shownMember = id;
}

/** Tabs share one cookie, so somebody else may sign in beside this page: the server refuses to do its work in their name. */
export const shownMemberHeader = (): Record<string, string> =>
  shownMember === undefined ? {} : { 'underlath-member': shownMember };
