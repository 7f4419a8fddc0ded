import { createHash } from 'node:crypto';
import canonicalize from 'canonicalize';

/** Before the first event of a project there is this. */
export const emptyHash = '0'.repeat(64);

/** JSON in the one form of RFC 8785, so that equal content has equal bytes. @throws TypeError for what JSON cannot say */
export function canonicalJson(value: unknown): string {
  const json = canonicalize(value);
  if (json === undefined) throw new TypeError('this value has no JSON form');
  return json;
}

/** SHA-256, hex, of UTF-8 text. */
export const sha256Of = (text: string): string => createHash('sha256').update(text, 'utf8').digest('hex');

/** SHA-256, hex, of a value's canonical JSON. */
export const hashOf = (value: unknown): string => sha256Of(canonicalJson(value));

/** The hash of an event covers its body and, through the hash before, every event before it. */
export const chainHash = (prevHash: string, body: string): string => sha256Of(prevHash + body);
