import { describe, expect, test } from 'vitest';
import { passwordFault } from './password-faults.ts';
import { hashPassword, verifyPassword } from './passwords.ts';

describe('passwords', () => {
  test('fourteen characters are too few, fifteen are enough', () => {
    expect(passwordFault('plumb-sill-14c')?.en).toMatch(/has 14 characters; use at least 15/);
    expect(passwordFault('plumb-sill-15ch')).toBeNull();
  });

  test('a letter outside the keyboard counts as one character', () => {
    expect(passwordFault('🪵'.repeat(14))?.en).toMatch(/has 14 characters/);
  });

  test.each([
    'correct horse battery staple',
    'Password1234567890',
    'password1234567',
    'P4ssw0rd!!!!!!!!!',
    '2024sunshine2024',
    'sunshinesunshine',
    'passwordpassword',
    'PasswordPassword99',
    '1qaz2wsx3edc4rfv',
  ])('%s is refused as common', (password) => expect(passwordFault(password)).not.toBeNull());

  test.each(['aaaaaaaaaaaaaaaa', 'abcabcabcabcabcab', 'sill7-sill7-sill7-'])('%s is refused as repeated', (password) =>
    expect(passwordFault(password)?.en).toMatch(/repeats a short piece/),
  );

  test.each(['123456789012345', 'abcdefghijklmnop', 'qwertyuiopasdfgh', '098765432109876'])(
    '%s is refused as a run',
    (password) => expect(passwordFault(password)?.en).toMatch(/follows the keyboard/),
  );

  const known = ['Odile Marsh', 'odile.marsh@plumbtenon.example', 'Plumb & Tenon Remodel'];
  test.each([
    'underlathunderlath',
    'Underlath 2026 Underlath',
    'odile.marsh@plumbtenon.example',
    'Odile Marsh 1984!!',
    'plumb&tenonremodel1',
    'MarshPlumbTenon77',
  ])('%s is refused as made of what everyone knows', (password) =>
    expect(passwordFault(password, known)?.en).toMatch(/made of your name/),
  );

  test.each(['odile hangs every door twice', 'the marsh was dry in April', 'underlath keeps nine joists'])(
    '%s has enough of its own beside a known word',
    (password) => expect(passwordFault(password, known)).toBeNull(),
  );

  test('a hash is Argon2id and verifies the same letters typed another way', async () => {
    const hashed = await hashPassword('resum\u00e9 of the framing');
    expect(hashed).toMatch(/^\$argon2id\$v=19\$m=19456,t=2,p=1\$/);
    expect(await verifyPassword(hashed, 'resume\u0301 of the framing')).toBe(true);
    expect(await verifyPassword(hashed, 'resume of the framing')).toBe(false);
  });
});
