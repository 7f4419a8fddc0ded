import { type Me, me as meSchema } from '@underlath/contract';

const storageKey = 'underlath.me';

/** Remembers on this device who is signed in, for a start with no connection. */
export function keepMe(me: Me): void {
  try {
    localStorage.setItem(storageKey, JSON.stringify(me));
  } catch {
    // Storage is full or shut off: the app then needs a connection to start, as it does on a new device.
  }
}

/** At sign-out, and when the server no longer knows the session. */
export function forgetMe(): void {
  try {
    localStorage.removeItem(storageKey);
  } catch {
    // Storage that is shut off keeps nothing.
  }
}

/** Who was signed in last on this device; null when nobody, or when an older version wrote it otherwise. */
export function keptMe(): Me | null {
  try {
    return meSchema.parse(JSON.parse(localStorage.getItem(storageKey) ?? 'null'));
  } catch {
    return null; // Not there or not readable: the app asks to sign in.
  }
}
