import { expect, test } from 'vitest';
import { hasNoMarks, hasOnlyBreaks, isPersonName, isSameName, showsLetterOrDigit } from './written-words.ts';

test('a name has a letter that shows, on one line, without marks that turn or hide', () => {
  for (const name of ['Philippa Arden-Rowe', 'x', 'Ñ', '王芳', 'نگار']) expect(isPersonName(name), name).toBe(true);
  for (const name of [
    '',
    '12',
    '...',
    '\u200b\u2060',
    '\u3164',
    '\u202eInes',
    'Ines\nWren',
    'Ines\u001b[0m',
    'Ines\u200bWren',
    'In\u00ades',
  ]) {
    expect(isPersonName(name), JSON.stringify(name)).toBe(false);
  }
});

test('letters that join without being drawn may stand in a name', () => {
  expect(isPersonName('می\u200cخواهم')).toBe(true);
});

test('words have a letter or a digit that shows', () => {
  expect(showsLetterOrDigit('2')).toBe(true);
  expect(showsLetterOrDigit('\u200b-')).toBe(false);
});

test('several lines may be parted by new lines and tabs, one line by neither', () => {
  expect(hasOnlyBreaks('one\r\n\ttwo')).toBe(true);
  expect(hasOnlyBreaks('one\u0007')).toBe(false);
  expect(hasNoMarks('one\ttwo')).toBe(false);
  expect(hasNoMarks('one\u2028two')).toBe(false);
});

test('a name is the same whatever its case, accents, hyphens and spaces', () => {
  for (const typed of ['philippa arden rowe', ' Philippa  ARDEN-ROWE', 'Philippa Árden‑Rowe', 'Philippa Arden-Rowe.']) {
    expect(isSameName(typed, 'Philippa Arden-Rowe'), typed).toBe(true);
  }
  for (const typed of ['Tom Rowe', 'Philippa', 'P. Arden-Rowe', 'x']) {
    expect(isSameName(typed, 'Philippa Arden-Rowe'), typed).toBe(false);
  }
});
