import { describe, expect, test } from 'vitest';
import { boredSection, notchedSection } from './cut-section.ts';

/** Stiffness of the strips of a bored section about their own centroid, over the whole, summed by thin slices. */
function slicedStiffness(depthIn: number, holeIn: number, edgeIn: number): number {
  const count = 20_000;
  const sliceIn = depthIn / count;
  const solid = Array.from({ length: count }, (_, at) => (at + 0.5) * sliceIn).filter(
    (y) => y < edgeIn || y > edgeIn + holeIn,
  );
  const centroid = solid.reduce((sum, y) => sum + y, 0) / solid.length;
  const second = solid.reduce((sum, y) => sum + (y - centroid) ** 2 * sliceIn, 0);
  return second / (depthIn ** 3 / 12);
}

describe('sections with a cut', () => {
  test('a notch of a quarter keeps 0.5625 in bending, 0.4219 in stiffness, 0.75 of the depth', () => {
    expect(notchedSection(10, 2.5)).toEqual({ moment: 0.5625, stiffness: 0.421875, shear: 0.75 });
  });
  test('a notch through leaves nothing', () => {
    expect(notchedSection(9.25, 9.25)).toEqual({ moment: 0, stiffness: 0, shear: 0 });
  });
  test('a 3 in hole in the middle of 9.25 in keeps 0.966 of stiffness and bending', () => {
    const { moment, stiffness, shear } = boredSection(9.25, 3, 3.125);
    expect(stiffness).toBeCloseTo(1 - (3 / 9.25) ** 3, 12);
    expect(moment).toBeCloseTo(stiffness, 12);
    expect(shear).toBeCloseTo(6.25 / 9.25, 12);
  });
  test('a hole at the face is a notch', () => {
    const { moment, stiffness, shear } = boredSection(9.25, 2, 0);
    const notch = notchedSection(9.25, 2);
    expect(moment).toBeCloseTo(notch.moment, 12);
    expect(stiffness).toBeCloseTo(notch.stiffness, 12);
    expect(shear).toBeCloseTo(notch.shear, 12);
  });
  test.each([
    [9.25, 3, 1],
    [9.25, 1.5, 2],
    [11.25, 3.75, 0.5],
    [5.5, 2, 1.5],
  ])(
    '%s in deep, a hole of %s in %s in from the face: the same as summed slice by slice',
    (depthIn, holeIn, edgeIn) => {
      // Twenty thousand slices place each edge of the hole within half a slice: some 1e-4 of the stiffness.
      expect(
        Math.abs(boredSection(depthIn, holeIn, edgeIn).stiffness - slicedStiffness(depthIn, holeIn, edgeIn)),
      ).toBeLessThan(2e-4);
    },
  );
  test('no hole keeps everything, a hole of the whole depth nothing', () => {
    expect(boredSection(9.25, 0, 0)).toEqual({ moment: 1, stiffness: 1, shear: 1 });
    expect(boredSection(9.25, 9.25, 0)).toEqual({ moment: 0, stiffness: 0, shear: 0 });
  });
});
