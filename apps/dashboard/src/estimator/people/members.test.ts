import type { ApiKey, Invitation, Role } from '@underlath/contract';
import { expect, test } from 'vitest';
import { whatEnds } from './members.tsx';

const inAYear = new Date(Date.now() + 365 * 86_400_000).toISOString();
const key = (role: Role, more: object = {}) =>
  ({ role, createdBy: { id: 'bo' }, revokedAt: null, expiresAt: inAYear, ...more }) as ApiKey;
const invitation = (more: object = {}) =>
  ({ invitedBy: { id: 'bo' }, acceptedAt: null, revokedAt: null, expiresAt: inAYear, ...more }) as Invitation;
const past = { expiresAt: '2020-01-01T00:00:00Z' };

test('a removal ends the keys in use and the open invitations of that person, and no others', () => {
  const keys = [key('owner'), key('crew'), key('crew', { revokedAt: inAYear }), key('crew', past)];
  const invitations = [invitation(), invitation({ acceptedAt: inAYear }), invitation(past)];
  expect(whatEnds('bo', null, keys, invitations)).toBe('2 API keys and 1 invitation end with this.');
  expect(whatEnds('bo', null, [key('crew')], [])).toBe('1 API key ends with this.');
  expect(whatEnds('cleo', null, keys, invitations)).toBe('No API key and no invitation of theirs ends with this.');
});

test('a lower role ends the invitations and lowers the keys that could do more', () => {
  expect(whatEnds('bo', 'crew', [key('owner'), key('crew')], [invitation()])).toBe(
    '1 invitation ends with this. 1 API key can do no more than crew from then on.',
  );
});
