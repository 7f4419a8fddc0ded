import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { allocate, formatCents, MoneyError, percentOf, roundCents, sumCents } from './money.ts';

describe('cents', () => {
  test.each([
    [0.5, 1],
    [-0.5, -1],
    [1.4999, 1],
    [2.5, 3],
    [-2.5, -3],
    [100 * 1.005, 101],
    [0, 0],
  ])('%s rounds half away from zero to %s', (cents, rounded) => {
    expect(roundCents(cents)).toBe(rounded);
  });

  test('8.25% of $412.50 is $34.03', () => {
    expect(percentOf(41_250, 8.25)).toBe(3403);
  });

  test('a sum no integer holds is refused', () => {
    expect(() => roundCents(Number.NaN)).toThrow(MoneyError);
    expect(() => roundCents(1e300)).toThrow(MoneyError);
  });

  test('a third each of $1.00 is 34, 33 and 33 cents', () => {
    expect(allocate(100, [1, 1, 1])).toEqual([34, 33, 33]);
    expect(allocate(-100, [1, 1, 1])).toEqual([-34, -33, -33]);
    expect(allocate(5, [0, 0])).toEqual([3, 2]);
  });

  test('nobody can be given money, and a negative weight is refused', () => {
    expect(() => allocate(5, [])).toThrow(MoneyError);
    expect(allocate(0, [])).toEqual([]);
    expect(() => allocate(5, [1, -1])).toThrow(MoneyError);
  });

  test('the parts of any split add up to the sum and are within a cent of fair', () => {
    const weights = fc.array(fc.double({ min: 0, max: 1e6, noNaN: true }), { minLength: 1, maxLength: 20 });
    fc.assert(
      fc.property(fc.integer({ min: -1e11, max: 1e11 }), weights, (total, given) => {
        const parts = allocate(total, given);
        expect(sumCents(parts)).toBe(total);
        const whole = given.reduce((sum, weight) => sum + weight, 0);
        if (whole > 0)
          for (const [at, part] of parts.entries())
            expect(Math.abs(part - (total * (given[at] ?? 0)) / whole)).toBeLessThan(1.001);
      }),
    );
  });

  test('sums are shown as US dollars in both languages', () => {
    expect(formatCents(123_450)).toBe('$1,234.50');
    expect(formatCents(-40_000)).toBe('-$400.00');
    expect(formatCents(123_450, 'es')).toContain('1,234.50');
  });
});
