import { expect, test } from 'vitest';
import { fitFrame, keepOn, rectangleFromCorners } from './frame.ts';

const margins = { top: 10, right: 20, bottom: 30, left: 20 };

test('a 15 ft wall fills the width it is given', () => {
  const frame = fitFrame(180, 108, 400, 1000, margins);
  expect(frame.scale).toBe(2);
  expect(frame.x(180)).toBe(380);
  expect(frame.heightPx).toBe(10 + 216 + 30);
});

test('a tall narrow wall is held by the height and stands in the middle', () => {
  const frame = fitFrame(48, 108, 400, 256, margins);
  expect(frame.scale).toBe(2);
  expect(frame.x(24)).toBe(200);
});

test('the floor line is at the bottom: y grows upward on the wall', () => {
  const frame = fitFrame(180, 108, 400, 1000, margins);
  expect(frame.y(0)).toBeGreaterThan(frame.y(108));
  expect(frame.rect({ xIn: 0, yIn: 0, widthIn: 9, heightIn: 15 })).toEqual({ x: 20, y: 196, width: 18, height: 30 });
});

test('a tap maps back to the inch it fell on, and a tap beside the wall to its edge', () => {
  const frame = fitFrame(180, 108, 400, 1000, margins);
  expect(frame.toIn(frame.x(72), frame.y(50))).toEqual({ xIn: 72, yIn: 50 });
  expect(frame.toIn(-50, 9999)).toEqual({ xIn: 0, yIn: 0 });
});

test('two corners make the same rectangle in any order', () => {
  const one = rectangleFromCorners({ xIn: 60, yIn: 40 }, { xIn: 48.4, yIn: 20 }, 180, 108);
  expect(one).toEqual({ xIn: 48, yIn: 20, widthIn: 12, heightIn: 20 });
});

test('a rectangle never leaves the wall', () => {
  expect(keepOn({ xIn: 175, yIn: -5, widthIn: 20, heightIn: 500 }, 180, 108)).toEqual({
    xIn: 160,
    yIn: 0,
    widthIn: 20,
    heightIn: 108,
  });
});
