import { describe, expect, test } from 'vitest';
import { ordinaryRodTensionLb } from '../aisc-360/rod-tension.ts';
import { threadStrength } from './threads.ts';

/** The worked areas and lengths are written to three decimals; stress areas to three or four. */
const WRITTEN = 0.0006;
/** The fastener table prints the nut area to two decimals. */
const PRINTED = 0.006;

describe.each([
  [0.5, 0.1419, 0.779, 1.123, 0.364, 1.12],
  [0.625, 0.226, 0.998, 1.425, 0.453, 1.42],
  [0.75, 0.334, 1.213, 1.723, 0.551, 1.72],
  [0.875, 0.462, 1.433, 2.026, 0.644, 2.03],
  [1, 0.606, 1.656, 2.334, 0.731, 2.33],
])('coarse thread of %s in', (diameterIn, tensionIn2, rodStripIn2, nutStripIn2, equalIn, printedNutIn2) => {
  const found = threadStrength(diameterIn);
  test('stress area (second-hand: UNC tables)', () => {
    expect(Math.abs(found.tensionIn2 - tensionIn2)).toBeLessThanOrEqual(WRITTEN);
  });
  test('stripping areas per inch and engagement of equal strength (hand-worked)', () => {
    expect(Math.abs(found.rodStripIn2 - rodStripIn2)).toBeLessThanOrEqual(WRITTEN);
    expect(Math.abs(found.nutStripIn2 - nutStripIn2)).toBeLessThanOrEqual(WRITTEN);
    expect(Math.abs(found.equalStrengthIn - equalIn)).toBeLessThanOrEqual(WRITTEN);
  });
  test('the thread of the nut (second-hand: fastener reference, internal thread stripping area)', () => {
    expect(Math.abs(found.nutStripIn2 - printedNutIn2)).toBeLessThanOrEqual(PRINTED);
  });
});

test('a size without limits is refused', () => {
  expect(() => threadStrength(0.51)).toThrow(RangeError);
});

test('a 5/8 in rod of ordinary steel may carry 6.67 kips (hand-worked from memory: AISC 360 J3.2)', () => {
  expect(Math.abs(ordinaryRodTensionLb(0.625) - 6670)).toBeLessThanOrEqual(5);
});
