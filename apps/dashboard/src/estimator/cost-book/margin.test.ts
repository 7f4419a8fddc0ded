import { expect, test } from 'vitest';
import { profitMarginPct, profitOfMargin, wholeMarginPct, wholeMarkupPct } from './margin.ts';

const stacked = { overheadPct: 18, profitPct: 10, stacking: 'stacked' } as const;
const added = { ...stacked, stacking: 'added' } as const;

test('18% and 10% stacked are a markup of 29.8%, added one of 28%', () => {
  expect(wholeMarkupPct(stacked)).toBe(29.8);
  expect(wholeMarkupPct(added)).toBe(28);
});

test('a markup of 25% is a margin of 20%, and the two are never the same but at 0', () => {
  const quarter = { overheadPct: 0, profitPct: 25, stacking: 'stacked' } as const;
  expect(wholeMarginPct(quarter)).toBeCloseTo(20, 10);
  expect(profitMarginPct(quarter)).toBeCloseTo(20, 10);
  expect(profitOfMargin(20, quarter)).toBe(25);
  expect(profitOfMargin(0, quarter)).toBe(0);
});

test('profit as a margin is its share of the price, stacked or added', () => {
  // 1.18 x 0.10 of 1.298, and 0.10 of 1.28
  expect(profitMarginPct(stacked)).toBeCloseTo((100 * 0.118) / 1.298, 10);
  expect(profitMarginPct(added)).toBeCloseTo((100 * 0.1) / 1.28, 10);
});

test('a margin typed with two places comes back as it was typed', () => {
  for (const sums of [stacked, added])
    for (const typed of [7.5, 12.34, 33.33, 48.01]) {
      const profitPct = profitOfMargin(typed, sums) ?? Number.NaN;
      expect(Number(profitMarginPct({ ...sums, profitPct }).toFixed(2))).toBe(typed);
    }
});

test('no price has a margin of 100% or more', () => expect(profitOfMargin(100, stacked)).toBeUndefined());
