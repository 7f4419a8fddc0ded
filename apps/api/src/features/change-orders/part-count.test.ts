import { expect, test } from 'vitest';
import { assertCanPart } from './part-count.ts';

test('two to four findings can be left out one by one', () => {
  expect(() => assertCanPart(2)).not.toThrow();
  expect(() => assertCanPart(4)).not.toThrow();
  expect(() => assertCanPart(1)).toThrow('one finding');
  expect(() => assertCanPart(5)).toThrow('5 findings');
});
