import { createHmac } from 'node:crypto';

const base32 = 'ABCDEFGHIJKLMNOPQRSTUVWXYZ234567';

/** RFC 4648, section 6, without padding. */
export function fromBase32(text: string): Buffer {
  const bits = [...text].map((sign) => base32.indexOf(sign).toString(2).padStart(5, '0')).join('');
  return Buffer.from((bits.match(/.{8}/g) ?? []).map((byte) => Number.parseInt(byte, 2)));
}

/** The code of RFC 6238 with HMAC-SHA-1 and steps of 30 s, worked out without the library that the server uses. */
export function codeAt(secret: Buffer, at: Date, digits = 6): string {
  const step = Buffer.alloc(8);
  step.writeBigUInt64BE(BigInt(Math.floor(at.getTime() / 30_000)));
  const mac = createHmac('sha1', secret).update(step).digest();
  // RFC 4226, 5.3: four bytes from where the last half byte says, without the sign.
  const start = (mac.at(-1) ?? 0) & 15;
  const number = mac.readUInt32BE(start) & 0x7fffffff;
  return String(number % 10 ** digits).padStart(digits, '0');
}
