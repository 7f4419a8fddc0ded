import { hash, verify } from '@node-rs/argon2';
import { boundWork } from './bounded-work.ts';
import { commonPasswords } from './common-passwords.data.ts';

/** OWASP Password Storage Cheat Sheet, Argon2id row "m=19456 (19 MiB), t=2, p=1"; from memory, 2024. `algorithm` 2 is Argon2id. */
const argon2id = { algorithm: 2, memoryCost: 19_456, timeCost: 2, parallelism: 1 } as const;

/** The least length of a password that is the only factor; NIST SP 800-63B-4 section 3.1.1.2, from memory. */
export const minPasswordLength = 15;

/** Different keyboards write the same letter with different bytes. */
const normalize = (password: string): string => password.normalize('NFKC');

/** Hashing takes one of the process's four helper threads, which write photos too: two are left for them. */
const hashing = boundWork({ most: 2, waiting: 30 });

/** @throws ProblemError `busy` */
export const hashPassword = (password: string): Promise<string> =>
  hashing.run(() => hash(normalize(password), argon2id));

/** @throws ProblemError `busy` */
export const verifyPassword = (hashed: string, password: string): Promise<boolean> =>
  hashing.run(() => verify(hashed, normalize(password)));

/** Why a password is not taken, in words, or null when it is. Any characters are allowed. */
export function passwordFault(password: string): string | null {
  const plain = normalize(password);
  const length = [...plain].length;
  if (length < minPasswordLength)
    return `has ${length} characters; use at least ${minPasswordLength}, such as four or five words`;
  const key = plain.toLowerCase().replace(/\s+/g, '');
  if (commonPasswords.has(key)) return 'is one of the most common passwords; choose another';
  if (/^(.{1,8}?)\1+(?:.{0,7})$/u.test(key) && repeats(key)) return 'only repeats a short piece; choose another';
  if (isRun(key)) return 'only follows the keyboard or the alphabet; choose another';
  return null;
}

function repeats(key: string): boolean {
  const piece = /^(.{1,8}?)\1+/u.exec(key)?.[1] ?? key;
  return piece.repeat(Math.ceil(key.length / piece.length)).startsWith(key);
}

const rows = ['1234567890', 'abcdefghijklmnopqrstuvwxyz', 'qwertyuiopasdfghjklzxcvbnm'];

function isRun(key: string): boolean {
  return rows.some((row) => {
    const endless = row.repeat(Math.ceil(key.length / row.length) + 1);
    return endless.includes(key) || [...endless].reverse().join('').includes(key);
  });
}
