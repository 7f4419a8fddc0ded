import { Secret } from 'otpauth';
import { describe, expect, test } from 'vitest';
import { codeUri, newCodeSecret, stepOfCode } from './one-time-codes.ts';

/** RFC 6238, appendix B, the rows of SHA-1: seconds and code of eight digits. Six digits are the last six of it (RFC 4226, 5.3). */
const published = [
  [59, '94287082'],
  [1_111_111_109, '07081804'],
  [1_111_111_111, '14050471'],
  [1_234_567_890, '89005924'],
  [2_000_000_000, '69279037'],
  [20_000_000_000, '65353130'],
] as const;
const secret = Secret.fromLatin1('12345678901234567890').base32;
const at = (seconds: number) => new Date(seconds * 1000);

describe('codes of an authenticator app', () => {
  test.each(published)('at %i s the published code is of that step', (seconds, code) => {
    expect(stepOfCode(secret, code.slice(-6), at(seconds))).toBe(Math.floor(seconds / 30));
  });

  test('a code counts one step early and one step late, and not two', () => {
    const code = '287082';
    expect([-29, 0, 30, 60].map((later) => stepOfCode(secret, code, at(59 + later)))).toEqual([1, 1, 1, null]);
    expect(stepOfCode(secret, '081804', at(1_111_111_109 - 60))).toBeNull();
  });

  test('a code may be typed with a gap, and nothing else passes', () => {
    expect(stepOfCode(secret, '287 082', at(59))).toBe(1);
    for (const wrong of ['', '28708', '2870820', '94287082', 'abcdef', '287083'])
      expect(stepOfCode(secret, wrong, at(59)), wrong).toBeNull();
  });

  test('a secret has 160 bits, and its address names the person and the program', () => {
    expect(Secret.fromBase32(newCodeSecret()).bytes).toHaveLength(20);
    const uri = new URL(codeUri(secret, 'odile@plumb.example'));
    expect(decodeURIComponent(uri.pathname)).toBe('/Underlath:odile@plumb.example');
    expect(uri.searchParams.get('secret')).toBe(secret);
  });
});
