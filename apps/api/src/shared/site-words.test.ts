import { expect, test } from 'vitest';
import { sayDay, sayDayOf, sayInstant } from './site-words.ts';

/** Newer runtimes put a narrow no-break space before AM; to the reader it is the same. */
const plain = (words: string) => words.replace(/\s/g, ' ');
const signed = '2026-11-30T07:25:00Z';

test('a signature late in the evening on the Pacific is of that day, with its time and zone', () => {
  expect(plain(sayInstant(signed, 'en', 'America/Los_Angeles'))).toBe('November 29, 2026 at 11:25 PM PST');
  expect(plain(sayInstant(signed, 'es', 'America/Los_Angeles'))).toBe('29 de noviembre de 2026 a las 11:25 p.m. PST');
  expect(sayDayOf(signed, 'en', 'America/Los_Angeles')).toBe('November 29, 2026');
});

test('without a zone it is UTC and says so', () => {
  expect(plain(sayInstant(signed, 'en', null))).toBe('November 30, 2026 at 7:25 AM UTC');
  expect(sayDayOf(signed, 'es', null)).toBe('30 de noviembre de 2026 (UTC)');
});

test('a plain day is moved by no zone', () => {
  expect(sayDay('2026-11-30', 'en')).toBe('November 30, 2026');
});
