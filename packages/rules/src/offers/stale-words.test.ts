import { text } from '@underlath/rules';
import { expect, test } from 'vitest';
import { countsFindings, type Spoken, stillSpokenOf } from './stale-words.ts';

const finding = (number: number, title: string, place: string, found: string): Spoken => ({
  number,
  title,
  place: {
    locationId: '',
    name: place,
    kind: 'wall',
    widthIn: null,
    heightIn: null,
    framingSpacingIn: null,
    openings: [],
  },
  found: text(found, found),
  why: text('The wall may lean.', 'La pared se puede inclinar.'),
  ifNot: text('', ''),
});
const plate = finding(3, 'Cut top plate', 'North wall', 'A pipe was run through the board.');
const decay = finding(4, 'Decayed sill', 'Kitchen beam', 'The board is soft.');
const numbersOf = (words: string) => stillSpokenOf(text(words, ''), [decay], [plate]).map(({ number }) => number);

test('typed words speak of a finding by its number, alone or in a list', () => {
  expect(numbersOf('See finding 4.')).toEqual([4]);
  expect(numbersOf('Findings 3, 4 and 6 belong together.')).toEqual([4]);
  expect(stillSpokenOf(text('', 'Los hallazgos 3 y 4 van juntos.'), [decay], [plate])).toEqual([decay]);
  expect(numbersOf('We count 4 hours for finding 3.')).toEqual([]);
});

test('a word of its title or place speaks of it only where no other finding has that word', () => {
  expect(numbersOf('Most of it is decayed wood.')).toEqual([4]);
  expect(numbersOf('The kitchen stays open.')).toEqual([4]);
  expect(numbersOf('The north wall stays open.')).toEqual([]);
  expect(stillSpokenOf(text('The wall is cut.', ''), [finding(5, 'Cut stud', 'North wall', 'x')], [plate])).toEqual([]);
});

test('one of its sentences speaks of it, one that others say too does not', () => {
  expect(numbersOf('We looked. The board is soft.')).toEqual([4]);
  expect(numbersOf('The wall may lean.')).toEqual([]);
});

test('a count of the findings before is found in digits and words of both languages', () => {
  expect(countsFindings(text('4 hidden conditions: Garage', ''), 4)).toBe(true);
  expect(countsFindings(text('Four things in your garage', ''), 4)).toBe(true);
  expect(countsFindings(text('', 'cuatro condiciones ocultas'), 4)).toBe(true);
  expect(countsFindings(text('It takes 4 hours in one place', ''), 4)).toBe(false);
  expect(countsFindings(text('14 places', ''), 4)).toBe(false);
});
