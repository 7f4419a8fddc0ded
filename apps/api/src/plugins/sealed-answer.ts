import { createHash } from 'node:crypto';
import { openText, sealingKeyOf, sealText } from '../platform/sealed-text.ts';

/** An answer kept for repeats. */
export interface KeptAnswer {
  status: number;
  headers: Record<string, string>;
  body: string;
}

/** What stands in the database for an Idempotency-Key: its SHA-256, hex. */
export const hashKey = (key: string): string => createHash('sha256').update(key).digest('hex');

/** An answer may hold a secret that is shown once, such as a client's link. Sealed, only who repeats the same Idempotency-Key can read it. */
export const seal = (key: string, principal: string, kept: KeptAnswer): string =>
  sealText(secretOf(key, principal), JSON.stringify(kept));

/** @throws Error when it was sealed with another key or changed since */
export const unseal = (key: string, principal: string, sealed: string): KeptAnswer =>
  JSON.parse(openText(secretOf(key, principal), sealed)) as KeptAnswer;

const secretOf = (key: string, principal: string): Buffer => sealingKeyOf(key, principal, 'underlath kept answer');
