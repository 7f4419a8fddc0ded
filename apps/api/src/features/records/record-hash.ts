import { sha256Of } from '../../platform/hash.ts';

/** Before the first event of a project there is this. */
export const emptyHash = '0'.repeat(64);

/** The hash of an event covers its body and, through the hash before, every event before it. */
export const chainHash = (prevHash: string, body: string): string => sha256Of(prevHash + body);
