import { expect, test } from 'vitest';
import { moveAddress, takeAddress } from './link-token.ts';

function address(pathname: string, hash: string) {
  const shown: string[] = [];
  const location = { hash, pathname, search: '' } as Location;
  const history = {
    state: null,
    replaceState: (_state: unknown, _title: string, url: string) => shown.push(url),
  } as unknown as History;
  return { location, history, shown };
}

test('the secret leaves the address as it is taken, and the letter stays in it', () => {
  const { location, history, shown } = address('/c/7F3KQ2M9TB', '#secret');
  expect(takeAddress(location, history)).toEqual({ letterId: '7F3KQ2M9TB', token: 'secret' });
  expect(shown).toEqual(['/c/7F3KQ2M9TB']);
});

test('an address without a secret is left alone', () => {
  const { location, history, shown } = address('/c/7F3KQ2M9TB', '');
  expect(takeAddress(location, history)).toEqual({ letterId: '7F3KQ2M9TB', token: null });
  expect(shown).toEqual([]);
});

test('an older address has the secret alone, and moves to the letter once it is known', () => {
  const { location, history, shown } = address('/c', '#secret');
  expect(takeAddress(location, history)).toEqual({ letterId: null, token: 'secret' });
  moveAddress(history, '7F3KQ2M9TB');
  expect(shown).toEqual(['/c', '/c/7F3KQ2M9TB']);
});
