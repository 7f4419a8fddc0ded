import { randomBytes } from 'node:crypto';
import { hashSecret } from '../../platform/secrets.ts';

const howMany = 10;
/** Of Crockford's 32, 5 random bits each: 120 bits, more than a fast hash needs to be safe. */
const signs = 24;
const crockford = '0123456789ABCDEFGHJKMNPQRSTVWXYZ';

/** Ten codes for the day the phone is lost; each works once. */
export const newRecoveryCodes = (): string[] => Array.from({ length: howMany }, newCode);

const newCode = (): string =>
  [...randomBytes(signs)]
    .map((byte) => crockford[byte % crockford.length])
    .join('')
    .replace(/(.{6})(?=.)/g, '$1-');

/** Small letters, spaces and the letters that look like digits are read as meant. */
export const hashRecoveryCode = (typed: string): string =>
  hashSecret(
    typed
      .toUpperCase()
      .replace(/[^0-9A-Z]/g, '')
      .replace(/O/g, '0')
      .replace(/[IL]/g, '1'),
  );
