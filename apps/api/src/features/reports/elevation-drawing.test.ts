import { layOutElevation } from '@underlath/rules/places';
import PDFDocument from 'pdfkit';
import { expect, test, vi } from 'vitest';
import { drawElevation, elevationHeight, paperScale } from './elevation-drawing.ts';

const openings = [{ name: 'Window', xIn: 60, yIn: 36, widthIn: 36, heightIn: 48 }];
const wall = {
  ...{ locationId: '', name: 'North wall', kind: 'wall', widthIn: 144, heightIn: 97.125, framingSpacingIn: 16 },
  openings,
};
const widthPt = 500;

/** Every rectangle that is drawn, in inches of the place. */
function drawnIn(place: typeof wall) {
  const doc = new PDFDocument();
  for (const face of ['text', 'bold']) doc.registerFont(face, 'Helvetica');
  const rect = vi.spyOn(doc, 'rect');
  drawElevation(doc, { leftPt: 0, topPt: 0, widthPt }, place, []);
  const outline = rect.mock.calls.at(-1) ?? [0, 0, 1, 1];
  const scale = outline[2] / place.widthIn;
  // Points have rounding of their own; a millionth of an inch is none. Zero has no sign.
  const rounded = (value: number) => Math.round(value * 1e6) / 1e6 || 0;
  return rect.mock.calls.map(([x, y, w, h]) =>
    [x / scale, (outline[1] + outline[3] - y - h) / scale, w / scale, h / scale].map(rounded),
  );
}

test.each(['wall', 'floor', 'roof', 'beam-line'])('a %s is on paper what it is on the screen', (kind) => {
  const place = { ...wall, kind, openings: kind === 'wall' ? openings : [] };
  const marks = layOutElevation(place).map(({ rect }) => [rect.xIn, rect.yIn, rect.widthIn, rect.heightIn]);
  expect(drawnIn(place)).toEqual(marks);
});

test('studs at 16 in stand with their centers at 16, 32 and 48 in', () => {
  const centers = drawnIn({ ...wall, openings: [] }).flatMap(([x = 0, , w = 0]) => (w === 1.5 ? x + w / 2 : []));
  expect(centers.slice(0, 4)).toEqual([0.75, 16, 32, 48]);
});

test('a place without a size has no drawing', () => {
  const place = { ...wall, heightIn: null };
  expect([elevationHeight(place, widthPt), paperScale(place, widthPt)]).toEqual([null, null]);
});
