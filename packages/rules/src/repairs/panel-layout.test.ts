import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Ground } from './extents.ts';
import { countNails, countSheets, layOutPanels } from './panel-layout.ts';

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
});

test('sheets are never fewer than the pieces, area for area', () => {
  const piece = fc.record({
    xIn: fc.constant(0),
    yIn: fc.constant(0),
    widthIn: fc.integer({ min: 1, max: 48 }),
    heightIn: fc.integer({ min: 1, max: 96 }),
  });
  fc.assert(
    fc.property(fc.array(piece, { maxLength: 12 }), (pieces) => {
      const squareIn = pieces.reduce((sum, one) => sum + one.widthIn * one.heightIn, 0);
      const sheets = countSheets(pieces);
      expect(sheets).toBeGreaterThanOrEqual(squareIn / (48 * 96));
      expect(sheets).toBeLessThanOrEqual(pieces.length);
    }),
  );
});
