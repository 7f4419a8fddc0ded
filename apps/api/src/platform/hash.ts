import { createHash } from 'node:crypto';
import canonicalize from 'canonicalize';

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
