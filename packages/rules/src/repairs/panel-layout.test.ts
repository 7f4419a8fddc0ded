import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Ground } from '../places/extents.ts';
import { countNails, layOutPanels } from './panel-layout.ts';
import { countSheets } from './sheets.ts';

const sheet = { xIn: 0, yIn: 0, widthIn: 48, heightIn: 96 };
const wall: Ground = { kind: 'wall', widthIn: 192, heightIn: 96, framingSpacingIn: 16 };

// Worked from 2(w + h)/e + n(h/f - 1); no published table was read.
test.each([
  [6, 12, 16, 62],
  [4, 12, 16, 86],
  [3, 12, 16, 110],
  [2, 12, 16, 158],
  [6, 6, 16, 78],
  [6, 12, 24, 55],
])('worked by hand: a 4 x 8 sheet at %i in / %i in over studs at %i in takes %i nails', (edge, field, studs, nails) => {
  expect(countNails(sheet, { edgeSpacingIn: edge, fieldSpacingIn: field }, studs)).toBe(nails);
});

test('a hole 3 ft wide and 8 ft high takes a whole sheet', () => {
  const hole = { xIn: 16, yIn: 0, widthIn: 36, heightIn: 96 };
  const { panelSf, sheets, blockingFt, area } = layOutPanels([hole], wall);
  expect({ panelSf, sheets, blockingFt }).toEqual({ panelSf: 32, sheets: 1, blockingFt: 0 });
  expect(area).toEqual([{ xIn: 16, yIn: 0, widthIn: 48, heightIn: 96 }]);
});

test('three holes 32 in wide take three sheets where their area would be two', () => {
  const holes = [0, 64, 128].map((xIn) => ({ xIn, yIn: 0, widthIn: 32, heightIn: 96 }));
  const { panelSf, sheets } = layOutPanels(holes, wall);
  expect([panelSf, sheets]).toEqual([64, 3]);
});

test('a wall of precut studs takes one row of sheets, a 9 ft wall a strip above with blocking at the joint', () => {
  const across = (heightIn: number) =>
    layOutPanels([{ xIn: 0, yIn: 0, widthIn: 192, heightIn }], { ...wall, heightIn });
  expect(across(97.125)).toMatchObject({ sheets: 4, blockingFt: 0 });
  expect(across(108)).toMatchObject({ sheets: 5, blockingFt: 16 });
  // The joint at 96 in lands on the lower top plate.
  expect(across(98.5)).toMatchObject({ blockingFt: 0 });
});

const floor: Ground = { kind: 'floor', widthIn: 240, heightIn: 180, framingSpacingIn: 16 };
const hole = (xIn: number, yIn: number, widthIn: number, heightIn: number) => ({ xIn, yIn, widthIn, heightIn });

test('floor panels lie across the joists: a floor of 16 x 8 ft takes two courses of two whole sheets', () => {
  const { area, pieces, sheets, blockingFt } = layOutPanels([hole(0, 0, 192, 96)], { ...floor, heightIn: 96 });
  expect(area).toEqual([hole(0, 0, 192, 96)]);
  expect(pieces).toEqual([{ widthIn: 96, heightIn: 48, count: 4 }]);
  // Both outer edges lie on the rims; the joint between the courses needs blocking.
  expect([sheets, blockingFt]).toEqual([4, 16]);
});

test.each([
  ['in a bay, nearer its right joist', hole(100, 60, 12, 12), hole(96, 54, 32, 24)],
  ['in a bay, nearer its left joist', hole(97, 60, 12, 12), hole(80, 54, 32, 24)],
  ['over a joist', hole(106, 60, 12, 12), hole(96, 54, 32, 24)],
  ['in the last bay', hole(226, 60, 12, 12), hole(208, 54, 32, 24)],
  ['at the near rim', hole(100, 0, 12, 12), hole(96, 0, 32, 24)],
  ['at the far rim', hole(100, 168, 12, 12), hole(96, 156, 32, 24)],
  ['longer than a sheet is wide', hole(100, 30, 12, 60), hole(96, 30, 32, 60)],
])('a patch %s spans two bays and is two feet along the joists or as long as the hole', (_where, defect, area) => {
  expect(layOutPanels([defect], floor).area).toEqual([area]);
  expect(layOutPanels([defect], { ...floor, kind: 'roof' }).area).toEqual([area]);
});

test('a patch needs blocking under its two edges that no joist carries', () => {
  expect(layOutPanels([hole(100, 60, 12, 12)], floor).blockingFt).toBeCloseTo((2 * 32) / 12, 12);
  expect(layOutPanels([hole(100, 0, 12, 12)], floor).blockingFt).toBeCloseTo(32 / 12, 12);
});

test('joists at 19.2 in carry a sheet of 8 ft on five bays, with four joists between its ends', () => {
  const at192 = { ...floor, widthIn: 288, framingSpacingIn: 19.2 };
  const { pieces } = layOutPanels([hole(0, 0, 288, 48)], at192);
  expect(pieces).toEqual([{ widthIn: 96, heightIn: 48, count: 3 }]);
  // Edges 2 (96 + 48) / 6 are 48, and four joists of 48 / 12 - 1.
  expect(countNails(hole(0, 0, 96, 48), { edgeSpacingIn: 6, fieldSpacingIn: 12 }, 19.2)).toBe(48 + 4 * 3);
});

test.each([
  [38.4, 45 + 7],
  [57.6, 52 + 2 * 7],
])('studs at 19.2 in: a piece %d in wide has a stud for every bay but one inside', (widthIn, nails) => {
  expect(countNails({ ...sheet, widthIn }, { edgeSpacingIn: 6, fieldSpacingIn: 12 }, 19.2)).toBe(nails);
});

test('sheets are never fewer than the pieces, area for area', () => {
  const piece = fc.record({
    count: fc.integer({ min: 1, max: 9 }),
    widthIn: fc.integer({ min: 1, max: 48 }),
    heightIn: fc.integer({ min: 1, max: 96 }),
  });
  fc.assert(
    fc.property(fc.array(piece, { maxLength: 12 }), (pieces) => {
      const squareIn = pieces.reduce((sum, one) => sum + one.count * one.widthIn * one.heightIn, 0);
      const sheets = countSheets(pieces);
      expect(sheets).toBeGreaterThanOrEqual(squareIn / (48 * 96));
      expect(sheets).toBeLessThanOrEqual(pieces.reduce((sum, { count }) => sum + count, 0));
      // Placed one by one, the same.
      expect(
        countSheets(pieces.flatMap((one) => Array.from({ length: one.count }, () => ({ ...one, count: 1 })))),
      ).toBe(sheets);
    }),
  );
});
