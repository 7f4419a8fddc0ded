import { describe, expect, test } from 'vitest';
import { binomialTail, exactInterval, inspectionsNeeded, upperShare, zeroBadUpper } from './clopper-pearson.ts';
import { wilson, wilson95 } from './wilson.ts';

/** Ways to choose k of n. */
function choose(n: number, k: number): bigint {
  let ways = 1n;
  for (let at = 1n; at <= BigInt(k); at++) ways = (ways * (BigInt(n - k) + at)) / at;
  return ways;
}

/** A quotient of whole numbers as a double, right to its last digits. */
function quotient(part: bigint, whole: bigint): number {
  const scale = 400n;
  return Number((part << scale) / whole) / 2 ** Number(scale);
}

/** Chance of at most `bad` of n without any rounding: the double `share` is itself a whole number over a power of two. */
function exactTail(bad: number, n: number, share: number): number {
  const places = 60n;
  const whole = 1n << places;
  const badShare = BigInt(Math.round(share * 2 ** Number(places)));
  let sum = 0n;
  for (let k = 0; k <= bad; k++) sum += choose(n, k) * badShare ** BigInt(k) * (whole - badShare) ** BigInt(n - k);
  return quotient(sum, whole ** BigInt(n));
}

const SIZES = [1, 2, 5, 10, 20, 59, 150];
const badOf = (n: number) =>
  [...new Set([0, 1, 2, 3, Math.floor(n / 2), n - 1, n])].filter((bad) => bad >= 0 && bad <= n);
const CONFIDENCES = [50, 90, 95, 99.9];

describe('the binomial tail against exact whole-number arithmetic', () => {
  for (const n of SIZES)
    test(`${n} parts: within 1e-12 over shares from 0.001 to 0.999`, () => {
      for (const bad of badOf(n))
        for (const share of [0.001, 0.01, 0.05, 0.1, 0.25, 0.5, 0.75, 0.95, 0.999])
          expect(Math.abs(binomialTail(bad, n, share) - exactTail(bad, n, share))).toBeLessThanOrEqual(1e-12);
    });
});

describe('the exact interval', () => {
  for (const n of SIZES)
    test(`${n} parts: at each bound the chance beyond it is half of what the confidence leaves, to 1e-10`, () => {
      for (const bad of badOf(n))
        for (const confidencePct of CONFIDENCES) {
          const half = (100 - confidencePct) / 200;
          const { low, high } = exactInterval(bad, n, confidencePct);
          if (bad < n) expect(exactTail(bad, n, high) / half).toBeCloseTo(1, 10);
          else expect(high).toBe(1);
          if (bad > 0) expect((1 - exactTail(bad - 1, n, low)) / half).toBeCloseTo(1, 10);
          else expect(low).toBe(0);
        }
    });

  test('4 bad of 20 at 90%: 0.071354 to 0.401029, as the NIST handbook prints', () => {
    const { low, high } = exactInterval(4, 20, 90);
    // The handbook's root finders stop early: its two programs print lower ends 6e-6 apart.
    expect(Math.abs(high - 0.401029)).toBeLessThan(1e-5);
    expect(Math.abs(low - 0.071354)).toBeLessThan(1e-5);
  });
});

describe('the Wilson interval', () => {
  test('26 bad of 200, one-sided 95%: at least 0.09577, as the NIST handbook prints', () => {
    expect(wilson(26, 200, 90).low).toBeCloseTo(0.09577, 5);
  });

  test('both ends solve the equation they come from: the share lies z deviations from them', () => {
    const z = 1.959963984540054;
    for (const n of SIZES)
      for (const bad of badOf(n)) {
        const { low, high } = wilson95(bad, n);
        for (const end of [low, high])
          expect(Math.abs((bad / n - end) ** 2 - (z * z * end * (1 - end)) / n)).toBeLessThan(1e-12);
      }
  });

  test('the quantile of the normal distribution is right at the confidences in use', () => {
    // With no part bad the upper end is z2 / (n + z2): the quantile can be read off it.
    const quantile = (confidencePct: number) => {
      const { high } = wilson(0, 1, confidencePct);
      return Math.sqrt(high / (1 - high));
    };
    expect(quantile(90)).toBeCloseTo(1.6448536269514722, 12);
    expect(quantile(95)).toBeCloseTo(1.959963984540054, 12);
    expect(quantile(99)).toBeCloseTo(2.5758293035489004, 12);
  });
});

describe('none bad: the whole table of upper bounds', () => {
  test.each([
    [5, 0.451, 0.369, 3],
    [10, 0.259, 0.206, 3],
    [20, 0.139, 0.109, 3],
    [30, 0.095, 0.074, 3],
    [59, 0.0495, 0.0383, 4],
  ])('of %s: %s at 95%%, %s at 90%%', (n, at95, at90, digits) => {
    expect(zeroBadUpper(n, 95)).toBeCloseTo(at95, digits);
    expect(zeroBadUpper(n, 90)).toBeCloseTo(at90, digits);
    expect(upperShare(0, n, 0.05)).toBeCloseTo(zeroBadUpper(n, 95), 12);
  });

  test.each([
    [5, 0.6],
    [10, 0.3],
    [20, 0.15],
    [30, 0.1],
    [59, 0.0508],
  ])('of %s: three over n, %s, is never below it', (n, ruleOfThree) => {
    expect(3 / n).toBeCloseTo(ruleOfThree, 4);
    expect(zeroBadUpper(n, 95)).toBeLessThan(3 / n);
  });

  test('59 are needed to rule out 5% at 95%, 29 for 10%', () => {
    expect(inspectionsNeeded(0, 0.05, 0.05)).toBe(59);
    expect(inspectionsNeeded(0, 0.1, 0.05)).toBe(29);
  });
});

test('a sample of 10,000 keeps its middle and its far ends', () => {
  const middle = quotient(choose(10_000, 5_000), 1n << 10_000n);
  expect(Math.abs(binomialTail(5_000, 10_000, 0.5) - (0.5 + middle / 2))).toBeLessThanOrEqual(1e-11);
  expect(binomialTail(9_000, 10_000, 0.001)).toBe(1);
  expect(binomialTail(1_000, 10_000, 0.9)).toBe(0);
});
