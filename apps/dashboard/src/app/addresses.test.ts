import { expect, test } from 'vitest';
import { ownAddress } from './own-address.ts';
import { word } from './search-words.ts';

test('sign-in leads back only into this app', () => {
  expect(ownAddress('/projects/1/house?place=2')).toBe('/projects/1/house?place=2');
  for (const elsewhere of [
    '//evil.example',
    '/\\evil.example',
    'https://evil.example',
    'javascript:alert(1)',
    undefined,
  ])
    expect(ownAddress(elsewhere)).toBe('/');
});

test('a word of the query is taken only when it is a text with something in it', () => {
  expect(word({ q: 'den' }, 'q')).toEqual({ q: 'den' });
  expect(word({ q: '' }, 'q')).toEqual({});
  expect(word({ q: 4 }, 'q')).toEqual({});
});
