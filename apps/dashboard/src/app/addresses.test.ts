import { expect, test } from 'vitest';
import { readSearch, word, writeSearch } from './search-words.ts';
import { ownAddress } from './sign-in/own-address.ts';

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

test('an address says back what it was read from, numbers and signs as they were typed', () => {
  for (const query of ['?q=4', '?diameterIn=0.625&nut=hex', '?members.0.name=joist+A+%26+B', ''])
    expect(writeSearch(readSearch(query))).toBe(query);
  expect(readSearch('?q=007')).toEqual({ q: '007' });
  expect(writeSearch({ q: 'den', place: undefined })).toBe('?q=den');
});
