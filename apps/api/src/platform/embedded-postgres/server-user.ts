import { chmodSync, chownSync, statSync } from 'node:fs';
import { dirname } from 'node:path';

/** The user and group id PostgreSQL runs under. */
export interface ServerUser {
  uid: number;
  gid: number;
}

/** The traditional id of "nobody": present in the kernel everywhere, no named account needed. */
const nobody: ServerUser = { uid: 65534, gid: 65534 };

/** PostgreSQL refuses to run as root, so root starts it under another id; anyone else runs it as themselves. */
export function chooseServerUser(): ServerUser | undefined {
  return process.getuid?.() === 0 ? nobody : undefined;
}

/** Gives a file or folder to the server's user. */
export function giveTo(user: ServerUser | undefined, path: string): void {
  if (user) chownSync(path, user.uid, user.gid);
}

/**
 * Lets another user pass through every folder above `path` (search permission only: nothing becomes listable or
 * readable). Returns the folders that were changed.
 */
export function makeTraversable(user: ServerUser | undefined, path: string): string[] {
  if (!user) return [];
  const changed: string[] = [];
  for (let folder = dirname(path); ; folder = dirname(folder)) {
    const { mode } = statSync(folder);
    if (!(mode & 0o001)) {
      chmodSync(folder, (mode & 0o7777) | 0o001);
      changed.push(folder);
    }
    if (dirname(folder) === folder) return changed;
  }
}
