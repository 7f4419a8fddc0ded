import { createCipheriv, createDecipheriv, createHash, hkdfSync, randomBytes } from 'node:crypto';

/** An answer kept for repeats. */
export interface KeptAnswer {
  status: number;
  headers: Record<string, string>;
  body: string;
}

const cipher = 'aes-256-gcm';
const nonceBytes = 12;
const tagBytes = 16;

/** What stands in the database for an Idempotency-Key: its SHA-256, hex. */
export const hashKey = (key: string): string => createHash('sha256').update(key).digest('hex');

/** An answer may hold a secret that is shown once, such as a client's link. Sealed, only who repeats the same Idempotency-Key can read it: base64 of nonce, tag and text. */
export function seal(key: string, principal: string, kept: KeptAnswer): string {
  const nonce = randomBytes(nonceBytes);
  const sealing = createCipheriv(cipher, secretOf(key, principal), nonce);
  const text = Buffer.concat([sealing.update(JSON.stringify(kept), 'utf8'), sealing.final()]);
  return Buffer.concat([nonce, sealing.getAuthTag(), text]).toString('base64');
}

/** @throws Error when it was sealed with another key or changed since */
export function unseal(key: string, principal: string, sealed: string): KeptAnswer {
  const bytes = Buffer.from(sealed, 'base64');
  const opening = createDecipheriv(cipher, secretOf(key, principal), bytes.subarray(0, nonceBytes));
  opening.setAuthTag(bytes.subarray(nonceBytes, nonceBytes + tagBytes));
  const text = Buffer.concat([opening.update(bytes.subarray(nonceBytes + tagBytes)), opening.final()]);
  return JSON.parse(text.toString('utf8')) as KeptAnswer;
}

const secretOf = (key: string, principal: string): Buffer =>
  Buffer.from(hkdfSync('sha256', key, principal, 'underlath kept answer', 32));
