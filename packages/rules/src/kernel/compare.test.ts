import fc from 'fast-check';
import { expect, test } from 'vitest';
import { compareLengths, compareLoad, compareNumbers, compareShares, failuresFirst, reasonThat } from './compare.ts';
import { parseLength } from './measure.ts';
import { atLeast, atMost } from './ratio.ts';
import { text } from './text.ts';

test('a length is written as finely as it takes to tell it from the limit it passes', () => {
  const notch = (inches: number) => compareLengths(inches, 0.875, 'at-most').measured.en;
  expect([1, 0.9, 0.89, 0.8751, 0.87501].map(notch)).toEqual([
    '1"',
    '29/32"',
    '57/64"',
    '0.8751 in',
    'a little over 7/8"',
  ]);
  expect(compareLengths(1.499, 1.5, 'at-least').measured).toEqual(text('1.499 in', '1.499 in'));
  expect(compareLengths(1.49999, 1.5, 'at-least').measured.es).toBe('un poco menos de 1 1/2"');
});

test('a limit that is not on the tape is rounded to the safe side and shown in decimals', () => {
  expect(compareLengths(1, 5 / 6, 'at-most').limit).toBe('13/16" (0.833 in)');
  expect(compareLengths(0.5, 5 / 6, 'at-least').limit).toBe('7/8" (0.833 in)');
});

test('a measurement that holds does not look as if it passed the limit', () => {
  expect(compareLengths(0.85, 0.86, 'at-most')).toEqual({
    measured: text('27/32"', '27/32"'),
    limit: '27/32" (0.86 in)',
  });
  expect(compareLengths(0.875, 0.875, 'at-most')).toEqual({ measured: text('7/8"', '7/8"'), limit: '7/8"' });
});

test('loads, shares and numbers get the digits that tell them apart', () => {
  expect(compareLoad(1200.04, 1200)).toEqual({
    takes: '1,200 lb',
    load: text('; the load is 1,200.04 lb', '; la carga es 1,200.04 lb'),
  });
  expect(compareLoad(undefined, 1200).load.en).toBe('');
  expect(compareShares(0.50004, 0.5, 'at-most')).toEqual({ measured: text('50.004%', '50.004%'), limit: '50%' });
  expect(compareNumbers(239.8, 240, 'at-least').measured.en).toBe('239.8');
  expect(compareNumbers(1.0000001, 1, 'at-most').measured.en).toBe('a little over 1');
});

const sense = fc.constantFrom('at-most', 'at-least');
const inches = fc.double({ min: 0, max: 400, noNaN: true });
const near = fc.oneof(inches, fc.constantFrom(0, 1e-8, 1e-6, 1e-4, 1e-3, 0.01, 0.03));

test('what fails never reads like its limit, what holds never reads as past it', () => {
  fc.assert(
    fc.property(inches, near, sense, fc.boolean(), (limit, by, asked, over) => {
      const measured = Math.max(0, over ? limit + by : limit - by);
      const holds = asked === 'at-most' ? atMost(measured, limit) : atLeast(measured, limit);
      const lengths = compareLengths(measured, limit, asked);
      const numbers = compareNumbers(measured, limit, asked);
      if (holds) return;
      expect(lengths.measured.en).not.toBe(lengths.limit);
      expect(lengths.limit.startsWith(`${lengths.measured.en} (`)).toBe(false);
      expect(numbers.measured.en).not.toBe(numbers.limit);
    }),
  );
});

test('what is written of a length is within a sixteenth of it', () => {
  fc.assert(
    fc.property(inches, inches, sense, (measured, limit, asked) => {
      const written = compareLengths(measured, limit, asked)
        .measured.en.replace(/^a little \w+ /, '')
        .replace(/ \(.*/, '');
      const read = parseLength(written);
      expect(read.ok && Math.abs(read.inches - measured)).toBeLessThanOrEqual(1 / 16);
    }),
  );
});

test('what does not hold comes first, each in its order', () => {
  const said = (words: string, holds: boolean) => reasonThat(holds, text(words, words));
  const ordered = failuresFirst([said('a', true), said('b', false), said('c', true), said('d', false)]);
  expect(ordered.map((reason) => reason.en)).toEqual(['b', 'd', 'a', 'c']);
});
