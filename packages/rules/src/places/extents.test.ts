import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  covers,
  disjoint,
  framingLinesIn,
  type Ground,
  overlaps,
  type Rect,
  rightIn,
  snapToFraming,
  unionSf,
} from './extents.ts';
import { memberEdgesIn } from './framing.ts';

const rect = (xIn: number, yIn: number, widthIn: number, heightIn: number): Rect => ({ xIn, yIn, widthIn, heightIn });
const wall: Ground = { kind: 'wall', widthIn: 100, heightIn: 96, framingSpacingIn: 16 };

const side = fc.integer({ min: 0, max: 30 });
const size = fc.integer({ min: 1, max: 20 });
const rects = fc.array(
  fc.tuple(side, side, size, size).map(([x, y, w, h]) => rect(x, y, w, h)),
  { maxLength: 12 },
);

/** Counts inch by inch which squares are covered, knowing nothing of rectangles. */
function rasterSquares(list: readonly Rect[]): number {
  const squares = new Set<number>();
  for (const { xIn, yIn, widthIn, heightIn } of list)
    for (let x = xIn; x < xIn + widthIn; x += 1)
      for (let y = yIn; y < yIn + heightIn; y += 1) squares.add(x * 1000 + y);
  return squares.size;
}

test('the union of whole-inch rectangles is the count of the squares they cover', () => {
  fc.assert(
    fc.property(rects, (list) => {
      const parts = disjoint(list);
      expect(parts.reduce((sum, one) => sum + one.widthIn * one.heightIn, 0)).toBe(rasterSquares(list));
      for (const [at, one] of parts.entries())
        for (const other of parts.slice(at + 1)) expect(overlaps(one, other)).toBe(false);
    }),
  );
});

test('two openings of 4 x 8 ft that overlap by 16 in are 53 1/3 SF, not 64', () => {
  expect(unionSf([rect(0, 0, 48, 96), rect(32, 0, 48, 96)])).toBeCloseTo(160 / 3, 12);
});

test('a rectangle inside another adds nothing, and one beside it is joined to it', () => {
  expect(disjoint([rect(0, 0, 10, 10), rect(2, 2, 3, 3), rect(10, 0, 5, 10)])).toEqual([rect(0, 0, 15, 10)]);
});

test('a rectangle is covered only when nothing of it is left', () => {
  expect(covers([rect(0, 0, 5, 10), rect(5, 0, 5, 10)], rect(2, 2, 6, 6))).toBe(true);
  expect(covers([rect(0, 0, 5, 10), rect(6, 0, 5, 10)], rect(2, 2, 6, 6))).toBe(false);
});

test('a cut reaches the nearest framing on both sides and never shrinks', () => {
  expect(snapToFraming(rect(20, 5, 30, 7), wall)).toEqual(rect(16, 5, 48, 7));
  expect(snapToFraming(rect(16, 0, 32, 9), wall)).toEqual(rect(16, 0, 32, 9));
  expect(snapToFraming(rect(97, 0, 2, 9), wall)).toEqual(rect(96, 0, 4, 9));
  expect(snapToFraming(rect(20, 5, 30, 7), { ...wall, framingSpacingIn: null })).toEqual(rect(20, 5, 30, 7));
});

test.each([
  [19.2, [0, 19.2, 38.4, 57.6, 76.8, 96, 115.2]],
  [13.7, [0, 13.7, 27.4, 41.1, 54.8, 68.5, 82.2, 95.9, 109.6]],
])('framing at %d in stands at whole multiples, to the last digit', (framingSpacingIn, lines) => {
  expect(framingLinesIn({ ...wall, widthIn: 120, framingSpacingIn })).toEqual([...lines, 120]);
});

test('sums of decimal inches are decimal: 38.4 and 19.2 in end at 57.6 in', () => {
  expect(rightIn(rect(38.4, 0, 19.2, 96))).toBe(57.6);
  expect(memberEdgesIn(96, 19.2)).toEqual([0, 18.45, 37.65, 56.85, 76.05, 94.5]);
  expect(disjoint([rect(0, 0, 19.2, 96), rect(19.2, 0, 38.4, 96)])).toEqual([rect(0, 0, 57.6, 96)]);
});
