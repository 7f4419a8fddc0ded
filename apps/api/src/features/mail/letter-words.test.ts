import type { ChangeOrderDocument } from '@underlath/contract';
import { text } from '@underlath/rules';
import { expect, test } from 'vitest';
import { daysText, ended, makeSafe, momentText, writeLetter } from './letter-words.ts';

const instant = new Date('2026-11-30T20:25:00Z');

test('a moment is told by the clock at the site, in words, and in UTC where that clock is not known', () => {
  expect(momentText(instant, 'America/Los_Angeles').en).toBe('November 30, 2026 at 12:25 PM PST');
  expect(momentText(instant, null).en).toBe('November 30, 2026 at 8:25 PM UTC');
  expect(momentText(instant, 'America/Los_Angeles').es).toContain('30 de noviembre de 2026');
});

test('one day is one day, and days are counted as the contract counts them', () => {
  const counted = (days: number, dayKind: 'working' | 'calendar') =>
    daysText(days, { contract: { dayKind } as ChangeOrderDocument['contract'] });
  expect(counted(1, 'working')).toEqual({ en: '1 working day', es: '1 día hábil' });
  expect(counted(3, 'working')).toEqual({ en: '3 working days', es: '3 días hábiles' });
  expect(counted(3, 'calendar')).toEqual({ en: '3 calendar days', es: '3 días calendario' });
});

test('what must be made safe is told in the words of the letter, its title first; else nothing is said', () => {
  const lines = [{ words: text('Keep out of this place: Hall.', 'No entre en este lugar: Pasillo.') }];
  const section = { id: 'make-safe' as const, title: text('Make safe now', 'Hay que asegurarlo ya'), lines };
  expect(makeSafe({ sections: [] })).toBe(false);
  expect(makeSafe({ sections: [section] })).toEqual({
    en: 'Make safe now\nKeep out of this place: Hall.',
    es: 'Hay que asegurarlo ya\nNo entre en este lugar: Pasillo.',
  });
});

test('what is left out leaves no gap, and a sentence ends in one point', () => {
  const letter = writeLetter('es', { en: 'A', es: 'B' }, [{ en: 'Hello', es: 'Hola' }, false, '', 'https://a.example']);
  expect(letter).toEqual({ subject: 'B', text: 'Hola\n\nhttps://a.example\n', locale: 'es' });
  expect([ended('12:25 p.m.'), ended('hoy')]).toEqual(['12:25 p.m.', 'hoy.']);
});
