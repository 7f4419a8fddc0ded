import { expect, test } from 'vitest';
import { choicesOf, daysOfPart } from './parts.ts';

test('the choices of three are each pair and each one, in the order given', () => {
  expect(choicesOf(['a', 'b', 'c'])).toEqual([['a', 'b'], ['a', 'c'], ['b', 'c'], ['a'], ['b'], ['c']]);
  expect(choicesOf(['a'])).toEqual([]);
  expect(choicesOf([])).toEqual([]);
  expect(choicesOf(['a', 'b', 'c', 'd'])).toHaveLength(14);
});

test('days shrink as the suggested ones do, and never grow', () => {
  expect(daysOfPart(3, 3, 2)).toBe(2);
  expect(daysOfPart(9, 3, 2)).toBe(6);
  expect(daysOfPart(1, 3, 2)).toBe(1);
  expect(daysOfPart(2, 2, 3)).toBe(2);
  expect(daysOfPart(4, 0, 0)).toBe(4);
});
