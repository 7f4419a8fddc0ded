import { describe, expect, test } from 'vitest';
import { evaluateEstimate } from './estimate.ts';
import { estimateSchema, MAX_RANGE_WORK, type RangeShape, rangeWork } from './estimate-input.ts';
import { bendOf } from './open-minimum.ts';
import { percentilesFor, percentilesOf } from './percentiles.ts';
import { evaluateRange } from './range.ts';
import type { VaryingLine } from './range-plan.ts';
import { spreadOf } from './spread.ts';

/** Invented lines of three shapes and widths, dealt out over places, under one minimum; money in cents. */
function visitOf(count: number, places: number, shape: RangeShape, shareReached: number) {
  const widths = Array.from({ length: count }, (_, at) => 100 * (1 + (at % 3)));
  const shortCents = shareReached * widths.reduce((sum, width) => sum + width, 0);
  const visit = { name: 'v', shortCents, laborFactor: 1, minimumFactor: 1 };
  const lines = widths.map((widthCents, at): VaryingLine => {
    const spread = spreadOf(shape, [0.1, 0.5, 0.8][at % 3] ?? 0.5);
    const location = `${Math.floor((at * places) / count)}`;
    return { name: 'a', location, key: `${at}`, spread, shiftCents: 0, widthCents, factor: 1, visit };
  });
  return { visit, lines };
}

const alike = (correlation: number, acrossPlaces: number) => ({
  follow: Math.sqrt(correlation),
  lean: correlation > 0 ? Math.sqrt(acrossPlaces / correlation) : 0,
});

describe('the percentiles that lines under a minimum are taken at', () => {
  test('are fewer where there are more lines', () => {
    expect(percentilesFor(64).shares).toHaveLength(128);
    expect(percentilesFor(65).shares).toHaveLength(64);
  });

  test.each([
    [1, 1],
    [2, 2],
    [64, 8],
    [65, 8],
    [100, 1],
    [100, 100],
  ])(
    'are enough for %d lines in %d places: 256 say the same',
    (count, places) => {
      for (const shape of ['pert-beta', 'triangular'] as const) {
        for (const shareReached of [0.35, 0.45]) {
          for (const how of [alike(0, 0), alike(0.3, 0.15), alike(1, 1)]) {
            const { visit, lines } = visitOf(count, places, shape, shareReached);
            const taken = bendOf(visit, lines, how, percentilesFor(count));
            const fine = bendOf(visit, lines, how, percentilesOf(256));
            const straight = Math.hypot(...lines.map(({ widthCents, spread }) => widthCents * spread.sd));
            // Of the deviation of the labor: ten thousand trials tell a mean no closer than 0.01, a deviation than 0.007.
            expect(Math.abs(taken.mean - fine.mean)).toBeLessThan(0.002 * straight);
            expect(Math.abs(Math.sqrt(taken.variance) - Math.sqrt(fine.variance))).toBeLessThan(
              0.005 * Math.max(straight, Math.sqrt(fine.variance)),
            );
          }
        }
      }
    },
    20_000,
  );
});

describe('lines under a minimum', () => {
  const line = {
    name: 'a',
    quantity: 1,
    unit: 'each',
    hoursPerUnit: { low: 1, likely: 2, high: 4 },
    rateCents: 10_000,
    materialCentsPerUnit: 0,
    wastePct: 0,
    materialTaxPct: 0,
    equipmentCents: 0,
    subcontractCents: 0,
    otherCents: 0,
  };
  const range = { trials: 10, seed: 1, correlation: 0.3, shape: 'pert-beta' as const };
  const priceOf = (count: number, ranged: boolean) => {
    // One line of the visit says the minimum for all of them.
    const lines = Array.from({ length: count }, (_, at) => ({
      ...line,
      visit: 'v',
      ...(at === 0 && { minimumCents: 2_300_000 }),
    }));
    return { lines, overheadPct: 0, profitPct: 0, stacking: 'stacked' as const, ...(ranged && { range }) };
  };

  test('cost a range more than other lines, those that share a visit counted', () => {
    const most = Math.floor(MAX_RANGE_WORK / rangeWork(priceOf(1, true).lines, range.trials));
    const taken = estimateSchema.parse(priceOf(most, true));
    expect(evaluateRange(taken, range, evaluateEstimate(taken)).openMinimums).toEqual(['v']);
    const refused = estimateSchema.safeParse(priceOf(most + 1, true));
    expect(refused.error?.issues.map(({ path, message }) => [path, message])).toEqual([
      [
        ['range', 'trials'],
        '10 trials of 67 lines, 67 of them under a minimum charge, are more than one range takes; take fewer of either',
      ],
    ]);
  });

  test('are as many as there are lines where no range is asked for', () => {
    expect(estimateSchema.safeParse(priceOf(2000, false)).success).toBe(true);
  });
});
