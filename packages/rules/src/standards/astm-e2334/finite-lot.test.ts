import { describe, expect, test } from 'vitest';
import { hypergeometricTail, lotRisk, openingsNeeded, upperBad } from './finite-lot.ts';

function choose(n: number, k: number): bigint {
  if (k < 0 || k > n) return 0n;
  let ways = 1n;
  for (let at = 1n; at <= BigInt(k); at++) ways = (ways * (BigInt(n - k) + at)) / at;
  return ways;
}

/** The tail as a fraction of whole numbers. */
function exactTail(bad: number, total: number, badInLot: number, opened: number): [bigint, bigint] {
  let ways = 0n;
  for (let k = 0; k <= bad; k++) ways += choose(badInLot, k) * choose(total - badInLot, opened - k);
  return [ways, choose(total, opened)];
}

const toNumber = ([part, whole]: [bigint, bigint]): number => Number((part << 200n) / whole) / 2 ** 200;

describe('the tail without replacement against exact fractions', () => {
  test.each([1, 2, 10, 24, 40, 100, 400, 1000])(
    'a lot of %s: within 1e-11, the last digit of the logarithms it is made of',
    (total) => {
      const some = [0, 1, 2, 3, Math.floor(total / 3), Math.floor(total / 2), total - 1, total];
      const within = [...new Set(some)].filter((n) => n >= 0 && n <= total);
      for (const badInLot of within)
        for (const opened of within)
          for (const bad of [0, 1, 2, Math.floor((opened * badInLot) / total)]) {
            const exact = toNumber(exactTail(bad, total, badInLot, opened));
            expect(Math.abs(hypergeometricTail(bad, total, badInLot, opened) - exact)).toBeLessThanOrEqual(1e-11);
          }
    },
  );
});

describe('the bound against a search with exact fractions', () => {
  /** Largest number of bad parts whose tail is above the risk of so many percent, compared without rounding. */
  function exactUpper(bad: number, total: number, opened: number, riskPct: number): number {
    let most = bad;
    for (let badInLot = bad; badInLot <= total - opened + bad; badInLot++) {
      const [part, whole] = exactTail(bad, total, badInLot, opened);
      if (part * 100n > whole * BigInt(riskPct)) most = badInLot;
    }
    return most;
  }

  test('agrees for every lot up to 30, every number opened, up to 3 bad, at 95% and 90%', () => {
    for (let total = 1; total <= 30; total++)
      for (let opened = 0; opened <= total; opened++)
        for (let bad = 0; bad <= Math.min(3, opened); bad++)
          for (const riskPct of [5, 10])
            expect(upperBad(bad, total, opened, riskPct / 100)).toBe(exactUpper(bad, total, opened, riskPct));
  });
});

describe('openings needed with none bad: the whole table', () => {
  const TABLE: [total: number, at95: number[], at90: number[]][] = [
    [10, [10, 10, 8], [9, 9, 7]],
    [16, [16, 12, 8], [15, 11, 7]],
    [20, [19, 16, 10], [18, 14, 9]],
    [24, [19, 15, 10], [17, 13, 9]],
    [30, [23, 19, 11], [21, 16, 9]],
    [40, [31, 21, 12], [27, 17, 10]],
    [60, [38, 23, 12], [32, 19, 10]],
    [100, [45, 25, 13], [37, 20, 10]],
  ];
  const SHARES_PCT = [5, 10, 20];

  test.each(TABLE)('a lot of %s', (total, at95, at90) => {
    // To rule out a share is to rule out that many parts, rounded up.
    const tolerable = SHARES_PCT.map((sharePct) => Math.ceil((sharePct * total) / 100) - 1);
    expect(tolerable.map((bad) => openingsNeeded(0, total, bad, 0.05))).toEqual(at95);
    expect(tolerable.map((bad) => openingsNeeded(0, total, bad, 0.1))).toEqual(at90);
  });
});

test('when more are found than tolerated, all are to be opened', () => {
  expect(openingsNeeded(3, 24, 2, 0.05)).toBe(24);
});

test('a lot that may be bad altogether carries no risk', () => {
  expect(lotRisk(0, 10, 0, 10)).toBe(0);
  expect(openingsNeeded(0, 10, 10, 0.05)).toBe(0);
});
