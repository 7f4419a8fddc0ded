import { expect, test } from 'vitest';
import { takeToken } from './link-token.ts';

function address(hash: string) {
  const shown: string[] = [];
  const location = { hash, pathname: '/c', search: '' } as Location;
  const history = {
    replaceState: (_state: unknown, _title: string, url: string) => shown.push(url),
  } as unknown as History;
  return { location, history, shown };
}

test('the secret leaves the address as it is taken', () => {
  const { location, history, shown } = address('#secret');
  expect(takeToken(location, history)).toBe('secret');
  expect(shown).toEqual(['/c']);
});

test('an address without a secret is left alone', () => {
  const { location, history, shown } = address('');
  expect(takeToken(location, history)).toBeNull();
  expect(shown).toEqual([]);
});
