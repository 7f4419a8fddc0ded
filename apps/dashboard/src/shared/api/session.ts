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
