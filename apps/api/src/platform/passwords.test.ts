import { describe, expect, test } from 'vitest';
import { hashPassword, passwordFault, verifyPassword } from './passwords.ts';

describe('passwords', () => {
  test('fourteen characters are too few, fifteen are enough', () => {
    expect(passwordFault('plumb-sill-14c')).toMatch(/has 14 characters; use at least 15/);
    expect(passwordFault('plumb-sill-15ch')).toBeNull();
  });

  test('a letter outside the keyboard counts as one character', () => {
    expect(passwordFault('🪵'.repeat(14))).toMatch(/has 14 characters/);
  });

  test.each([
    'correct horse battery staple',
    'Password1234567890',
    'aaaaaaaaaaaaaaaa',
    'passwordpassword',
    'abcabcabcabcabcab',
  ])('%s is refused as common or repeated', (password) => expect(passwordFault(password)).not.toBeNull());

  test.each(['123456789012345', 'abcdefghijklmnop', 'qwertyuiopasdfgh', '098765432109876'])(
    '%s is refused as a run',
    (password) => expect(passwordFault(password)).toMatch(/follows the keyboard/),
  );

  test('a hash is Argon2id and verifies the same letters typed another way', async () => {
    const hashed = await hashPassword('resum\u00e9 of the framing');
    expect(hashed).toMatch(/^\$argon2id\$v=19\$m=19456,t=2,p=1\$/);
    expect(await verifyPassword(hashed, 'resume\u0301 of the framing')).toBe(true);
    expect(await verifyPassword(hashed, 'resume of the framing')).toBe(false);
  });
});
