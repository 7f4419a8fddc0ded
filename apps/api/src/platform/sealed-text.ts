import { createCipheriv, createDecipheriv, randomBytes } from 'node:crypto';

const cipher = 'aes-256-gcm';
const nonceBytes = 12;
const tagBytes = 16;

/**
 * Seals a text with a key of 32 bytes: base64 of nonce, tag and text.
 * @param owner whom it belongs to; it opens for nobody else
 */
export function sealText(key: Buffer, text: string, owner = ''): string {
  const nonce = randomBytes(nonceBytes);
  const sealing = createCipheriv(cipher, key, nonce).setAAD(Buffer.from(owner));
  const sealed = Buffer.concat([sealing.update(text, 'utf8'), sealing.final()]);
  return Buffer.concat([nonce, sealing.getAuthTag(), sealed]).toString('base64');
}

/** @throws Error when it was sealed with another key, for another owner, or changed since */
export function unsealText(key: Buffer, sealed: string, owner = ''): string {
  const bytes = Buffer.from(sealed, 'base64');
  const opening = createDecipheriv(cipher, key, bytes.subarray(0, nonceBytes)).setAAD(Buffer.from(owner));
  opening.setAuthTag(bytes.subarray(nonceBytes, nonceBytes + tagBytes));
  return Buffer.concat([opening.update(bytes.subarray(nonceBytes + tagBytes)), opening.final()]).toString('utf8');
}
