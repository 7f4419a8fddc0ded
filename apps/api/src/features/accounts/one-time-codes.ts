import { Secret, TOTP } from 'otpauth';

/** What authenticator apps take without being told otherwise: HMAC-SHA-1, six digits, steps of 30 s (RFC 6238, 4 and 1.2). */
const kind = { algorithm: 'SHA1', digits: 6, period: 30 } as const;
/** RFC 6238, 5.2 recommends one step at most for a clock that is off and a person who types slowly. */
const stepsEitherSide = 1;
/** RFC 4226, 4 (R6) recommends 160 bits. */
const secretBytes = 20;

export const newCodeSecret = (): string => new Secret({ size: secretBytes }).base32;

/** What the QR code says to the app. */
export const codeUri = (secret: string, email: string): string =>
  new TOTP({ ...kind, issuer: 'Underlath', label: email, secret }).toString();

/** The step of time a code belongs to, or null when it is of none that counts now. @param secret base32 */
export function stepOfCode(secret: string, code: string, now: Date): number | null {
  const plain = code.replace(/\s/g, '');
  const away = new TOTP({ ...kind, secret }).validate({
    token: plain,
    timestamp: now.getTime(),
    window: stepsEitherSide,
  });
  return away === null ? null : Math.floor(now.getTime() / 1000 / kind.period) + away;
}
