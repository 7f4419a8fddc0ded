import { createCipheriv, createDecipheriv, hkdfSync, randomBytes } from 'node:crypto';

const cipher = 'aes-256-gcm';
/** NIST SP 800-38D, 5.2.1.1 and 8.2.2, from memory: nonces of 96 bits, drawn anew for every text; tags of 128. */
const nonceBytes = 12;
const tagBytes = 16;

/** The key of one kind of text. @param label keeps kinds apart that grow from one secret */
export const sealingKeyOf = (secret: string, salt: string, label: string): Buffer =>
  Buffer.from(hkdfSync('sha256', secret, salt, label, 32));

/** Base64 of nonce, tag and text. @param owner must be named again to open it */
export function sealText(key: Buffer, text: string, owner = ''): string {
  const nonce = randomBytes(nonceBytes);
  const sealing = createCipheriv(cipher, key, nonce).setAAD(Buffer.from(owner));
  const sealed = Buffer.concat([sealing.update(text, 'utf8'), sealing.final()]);
  return Buffer.concat([nonce, sealing.getAuthTag(), sealed]).toString('base64');
}

/** @throws Error when it was sealed with another key, for another owner, or changed since */
export function openText(key: Buffer, sealed: string, owner = ''): string {
  const bytes = Buffer.from(sealed, 'base64');
  const opening = createDecipheriv(cipher, key, bytes.subarray(0, nonceBytes), { authTagLength: tagBytes });
  opening.setAAD(Buffer.from(owner)).setAuthTag(bytes.subarray(nonceBytes, nonceBytes + tagBytes));
  return Buffer.concat([opening.update(bytes.subarray(nonceBytes + tagBytes)), opening.final()]).toString('utf8');
}
