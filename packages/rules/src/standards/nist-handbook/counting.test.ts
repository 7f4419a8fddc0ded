import { describe, expect, test } from 'vitest';
import { lnChoose, lnFactorial } from './counting.ts';

/** Natural logarithm of a whole number too large for a double: the leading 60 bits and the rest as a power of two. */
function lnOf(value: bigint): number {
  const bits = value.toString(2).length;
  const shift = Math.max(0, bits - 60);
  return Math.log(Number(value >> BigInt(shift))) + shift * Math.LN2;
}

function factorial(n: number): bigint {
  let product = 1n;
  for (let factor = 2n; factor <= BigInt(n); factor++) product *= factor;
  return product;
}

describe('logarithms of counts against whole-number arithmetic', () => {
  test.each([0, 1, 2, 10, 18, 19, 20, 25, 60, 100, 1000, 3000])('%s! is right to 1e-14 of its logarithm', (n) => {
    const exact = lnOf(factorial(n));
    expect(Math.abs(lnFactorial(n) - exact)).toBeLessThanOrEqual(1e-14 * Math.max(1, exact));
  });

  test('the row where Stirling takes over continues the product', () => {
    expect(lnFactorial(19) - lnFactorial(18)).toBeCloseTo(Math.log(19), 13);
  });

  test('choosing all or none can be done in one way', () => {
    for (const n of [1, 5, 24, 100]) {
      expect(lnChoose(n, 0)).toBe(0);
      expect(lnChoose(n, n)).toBe(0);
    }
    expect(Math.exp(lnChoose(24, 15))).toBeCloseTo(1_307_504, 6);
  });
});
