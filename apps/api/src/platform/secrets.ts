import { createHash, randomBytes } from 'node:crypto';

/** A new secret of 256 random bits for a link, an invitation or a key; shown once, stored only as its hash. */
export const newSecret = (): string => randomBytes(32).toString('base64url');

/** SHA-256 (hex) of a secret. A random 256-bit secret needs no slow hash. */
export const hashSecret = (secret: string): string => createHash('sha256').update(secret).digest('hex');
