import { randomBytes } from 'node:crypto';
import { hash, verify } from '@node-rs/argon2';
import { boundWork } from './bounded-work.ts';
import { normalizePassword } from './password-faults.ts';

/** OWASP Password Storage Cheat Sheet, Argon2id row "m=19456 (19 MiB), t=2, p=1"; from memory, 2024. `algorithm` 2 is Argon2id. */
const argon2id = { algorithm: 2, memoryCost: 19_456, timeCost: 2, parallelism: 1 } as const;

/** Hashing takes one of the process's four helper threads, which write photos too: two are left for them. */
const hashing = boundWork({ most: 2, waiting: 30 });

/** @throws ProblemError `busy` */
export const hashPassword = (password: string): Promise<string> =>
  hashing.run(() => hash(normalizePassword(password), argon2id));

/** @throws ProblemError `busy` */
export const verifyPassword = (hashed: string, password: string): Promise<boolean> =>
  hashing.run(() => verify(hashed, normalizePassword(password)));

/** Of nobody; an unknown address is compared with it, so that it is answered no sooner than a known one. */
let nobodys: Promise<string> | null = null;

export async function verifyNobodys(password: string): Promise<false> {
  nobodys ??= hashPassword(randomBytes(16).toString('base64url'));
  await verifyPassword(await nobodys, password);
  return false;
}
