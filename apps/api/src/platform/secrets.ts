import { createHash, randomBytes } from 'node:crypto';

/** A new secret of 256 random bits for a link, an invitation or a key; shown once, stored only as its hash. */
export const newSecret = (): string => randomBytes(32).toString('base64url');

const crockford = '0123456789ABCDEFGHJKMNPQRSTVWXYZ';

/** A new id for the address of a letter: ten of Crockford's 32 signs, 50 random bits, none of which looks like another. */
export const newLetterId = (): string => [...randomBytes(10)].map((byte) => crockford[byte % 32]).join('');

/** SHA-256 (hex) of a secret. A random 256-bit secret needs no slow hash. */
export const hashSecret = (secret: string): string => createHash('sha256').update(secret).digest('hex');
