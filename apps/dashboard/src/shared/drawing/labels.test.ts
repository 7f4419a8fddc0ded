import { expect, test } from 'vitest';
import { type LabelBox, placeLabels } from './labels.ts';

const bounds = { x: 0, y: 0, width: 800, height: 480 };
const apart = (a: LabelBox, b: LabelBox) =>
  a.x + a.width <= b.x || b.x + b.width <= a.x || a.y + a.height <= b.y || b.y + b.height <= a.y;

test('labels of crowded findings never lie on each other', () => {
  const wishes = Array.from({ length: 6 }, (_, at) => ({
    id: String(at),
    target: { x: 100 + at * 60, y: 200, width: 40, height: 30 },
    width: 120,
    height: 36,
  }));
  const boxes = placeLabels(wishes, bounds).map((label) => label.box);
  for (const [at, box] of boxes.entries()) {
    for (const other of boxes.slice(at + 1)) expect(apart(box, other)).toBe(true);
  }
});

test('a label stays on the sheet even when its finding is in the corner', () => {
  const [label] = placeLabels(
    [{ id: 'a', target: { x: 780, y: 2, width: 18, height: 10 }, width: 160, height: 36 }],
    bounds,
  );
  expect(label?.box.x).toBeGreaterThanOrEqual(0);
  expect((label?.box.x ?? 0) + 160).toBeLessThanOrEqual(800);
  expect(label?.box.y).toBeGreaterThanOrEqual(0);
});

test('a label wider than the sheet is still placed', () => {
  expect(
    placeLabels([{ id: 'a', target: { x: 10, y: 10, width: 5, height: 5 }, width: 900, height: 30 }], bounds),
  ).toHaveLength(1);
});
