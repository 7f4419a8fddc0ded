import { expect, test } from 'vitest';
import { nailSpots } from './nail-spots.ts';

const panel = { xIn: 48, yIn: 0, widthIn: 48, heightIn: 96 };

test('48 nails counted along 288 in stand 6 in apart on all four edges of a panel', () => {
  const spots = nailSpots(panel, { surveyedLengthIn: 288, counts: { flush: 40, overdriven: 8 } });
  expect(spots).toHaveLength(48);
  expect(spots.slice(0, 2)).toEqual([
    { xIn: 48, yIn: 0 },
    { xIn: 54, yIn: 0 },
  ]);
  for (const { xIn, yIn } of spots) expect(xIn === 48 || xIn === 96 || yIn === 0 || yIn === 96).toBe(true);
  expect(new Set(spots.map(({ xIn, yIn }) => `${xIn} ${yIn}`)).size).toBe(48);
});

test('a survey without a length or a count draws none', () => {
  expect(nailSpots(panel, { surveyedLengthIn: 288 })).toEqual([]);
  expect(nailSpots(panel, { counts: { flush: 4 } })).toEqual([]);
  expect(nailSpots(panel, undefined)).toEqual([]);
});
