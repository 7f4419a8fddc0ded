import { describe, expect, test } from 'vitest';
import { dowelBearingPsi, hankinsonPsi, nailBearingPsi, SIDE_PLATE_PSI } from './dowel-bearing.ts';
import { NAIL_DIAMETER_IN, NAIL_LENGTH_IN } from './nails.data.ts';
import { nailLateral, nailYieldPsi, toeNailGeometry, withdrawalLbPerIn } from './nails.ts';
import { SPECIFIC_GRAVITY } from './species.data.ts';
import { governingMode, YIELD_MODES, yieldLoads } from './yield-limit.ts';

/** Printed tables give whole pounds, so the equation may be up to half a pound away from them. */
const WHOLE_POUND = 0.5;
/** Worked numbers are written to a tenth of a pound. */
const TENTH = 0.05 + 1e-9;

/** A nail with ten diameters in the main member, through a side member of the same or another strength. */
const full = (diameterIn: number, sideIn: number, mainPsi: number, sidePsi = mainPsi) =>
  nailLateral(
    { diameterIn, sideBearingIn: sideIn, mainPsi, sidePsi, yieldPsi: nailYieldPsi(diameterIn) },
    10 * diameterIn,
  );

describe('strength of wood under a nail (second-hand: NDS 2018 Table 12.3.3)', () => {
  test.each([
    [0.55, 5550],
    [0.5, 4650],
    [0.49, 4450],
    [0.46, 4000],
    [0.43, 3500],
    [0.42, 3350],
    [0.36, 2550],
  ])('wood of gravity %s takes %s psi', (gravity, psi) => {
    expect(nailBearingPsi(gravity)).toBe(psi);
  });

  test('a bolt feels the grain: 11200 G along it, less across it, between them at an angle', () => {
    expect(dowelBearingPsi(0.5, 0.5, 0)).toBeCloseTo(5600, 9);
    expect(dowelBearingPsi(0.5, 0.5, 90)).toBeCloseTo((6100 * 0.5 ** 1.45) / Math.sqrt(0.5), 9);
    expect(hankinsonPsi(5600, 3150, 45)).toBeCloseTo((5600 * 3150) / ((5600 + 3150) / 2), 9);
    expect(dowelBearingPsi(0.5, 0.2499, 90)).toBe(4650);
    expect(dowelBearingPsi(0.5, 0.25, 0)).toBeCloseTo(5600, 9);
  });
});

describe('NDS 2018 Table 12N, 1-1/2 in side member (second-hand)', () => {
  test.each([
    ['8d box', 0.113, [79, 72, 61]],
    ['10d box', 0.128, [101, 93, 79]],
    ['8d common', 0.131, [106, 97, 82]],
    ['16d box', 0.135, [113, 103, 88]],
    ['10d common and 16d sinker', 0.148, [128, 118]],
    ['16d common', 0.162, [154, 141, 120]],
  ])('%s: every printed cell is the equation to the pound', (_nail, diameterIn, printedLb) => {
    printedLb.forEach((lb, column) => {
      const psi = nailBearingPsi([0.55, 0.5, 0.42][column] ?? 0);
      expect(Math.abs(full(diameterIn, 1.5, psi).referenceLb - lb)).toBeLessThanOrEqual(WHOLE_POUND);
    });
  });

  test.each([
    [0.131, 84.3],
    [0.148, 102.0],
    [0.162, 122.2],
  ])('in hem-fir a %s in nail takes %s lb (hand-worked)', (diameterIn, lb) => {
    expect(Math.abs(full(diameterIn, 1.5, nailBearingPsi(0.43)).referenceLb - lb)).toBeLessThanOrEqual(TENTH);
  });
});

describe('panel side members (hand-worked; the printed tables 12Q and 12R were not read)', () => {
  const { osb, plywood } = SIDE_PLATE_PSI;
  test.each([
    [3 / 8, osb.psi, 0.131, [73.4, 70.6, 66.0, 65.3]],
    [7 / 16, osb.psi, 0.131, [75.5, 72.8, 68.2, 67.5]],
    [15 / 32, osb.psi, 0.113, [59.8, 57.8, 54.4, 53.8]],
    [15 / 32, osb.psi, 0.131, [76.8, 74.1, 69.5, 68.8]],
    [15 / 32, osb.psi, 0.148, [91.4, 88.1, 82.6, 81.7]],
    [19 / 32, osb.psi, 0.148, [98.1, 94.8, 89.1, 88.2]],
    [15 / 32, plywood.psi, 0.131, [66.8, 64.7, 61.1, 60.6]],
    [15 / 32, plywood.psi, 0.148, [80.1, 77.6, 73.2, 72.5]],
  ])('a panel of %s in and %s psi under a %s in nail', (sideIn, sidePsi, diameterIn, workedLb) => {
    workedLb.forEach((lb, column) => {
      const mainPsi = nailBearingPsi([0.55, 0.5, 0.43, 0.42][column] ?? 0);
      expect(Math.abs(full(diameterIn, sideIn, mainPsi, sidePsi).referenceLb - lb)).toBeLessThanOrEqual(TENTH);
    });
  });
});

describe('withdrawal, NDS 2018 Table 12.2C (second-hand)', () => {
  test.each([
    [0.113, [35, 28, 18]],
    [0.128, [40, 31, 20]],
    [0.131, [41, 32, 21]],
    [0.135, [42, 33, 21]],
    [0.148, [46, 36, 23]],
    [0.162, [50, 40, 26]],
  ])('a %s in nail: every printed cell is the equation to the pound', (diameterIn, printedLb) => {
    printedLb.forEach((lb, column) => {
      const gravity = [0.55, 0.5, 0.42][column] ?? 0;
      expect(Math.abs(withdrawalLbPerIn(gravity, diameterIn) - lb)).toBeLessThanOrEqual(WHOLE_POUND);
    });
  });
});

describe('the six modes (hand-worked)', () => {
  test.each([
    [
      'a 16d common nail in Douglas fir-larch on both sides bends at two hinges',
      { diameterIn: 0.162, mainBearingIn: 1.62, sideBearingIn: 1.5, mainPsi: 4650, sidePsi: 4650, yieldPsi: 90_000 },
      [554.7, 513.6, 221.5, 202.4, 190.0, 140.9],
      'IV',
    ],
    [
      'an 8d common nail through 15/32 in OSB bends at one hinge in the panel',
      { diameterIn: 0.131, mainBearingIn: 1.31, sideBearingIn: 15 / 32, mainPsi: 4650, sidePsi: 4650, yieldPsi: 1e5 },
      [362.7, 129.8, 121.0, 133.6, 74.1, 97.1],
      'IIIs',
    ],
  ] as const)('%s', (_what, joint, workedLb, governing) => {
    const loads = yieldLoads(joint, joint.mainBearingIn);
    YIELD_MODES.forEach((mode, at) => {
      expect(Math.abs(loads[mode] - (workedLb[at] ?? 0)), mode).toBeLessThanOrEqual(TENTH);
    });
    expect(governingMode(loads)).toBe(governing);
    expect(loads.lateralLb).toBe(loads[governing]);
  });

  test('swapping main and side member swaps their modes and keeps the load', () => {
    const one = {
      diameterIn: 0.148,
      mainBearingIn: 1.2,
      sideBearingIn: 0.9,
      mainPsi: 3350,
      sidePsi: 5550,
      yieldPsi: 9e4,
    };
    const other = { ...one, mainBearingIn: 0.9, sideBearingIn: 1.2, mainPsi: 5550, sidePsi: 3350 };
    const [a, b] = [yieldLoads(one, one.mainBearingIn), yieldLoads(other, other.mainBearingIn)];
    for (const [mine, theirs] of [
      ['Im', 'Is'],
      ['II', 'II'],
      ['IIIm', 'IIIs'],
      ['IIIs', 'IIIm'],
      ['IV', 'IV'],
    ] as const)
      expect(a[mine]).toBeCloseTo(b[theirs], 9);
  });

  test('the reduction is 2.2 up to 0.17 in, then 10 D + 0.5, and by mode from 1/4 in', () => {
    const crushed = (diameterIn: number, grainAngleDeg = 0) =>
      diameterIn /
      yieldLoads({ diameterIn, sideBearingIn: 1, mainPsi: 1, sidePsi: 1, yieldPsi: 1e9, grainAngleDeg }, 1).Im;
    expect(crushed(0.17)).toBeCloseTo(2.2, 9);
    expect(crushed(0.2)).toBeCloseTo(2.5, 9);
    expect(crushed(0.25)).toBeCloseTo(4, 9);
    expect(crushed(0.5, 90)).toBeCloseTo(5, 9);
  });

  test('across the grain every mode of a bolt is a quarter more reduced', () => {
    const bolt = { diameterIn: 0.5, sideBearingIn: 1.5, mainPsi: 7500, sidePsi: 3150, yieldPsi: 45_000 };
    const [along, across] = [yieldLoads(bolt, 6), yieldLoads({ ...bolt, grainAngleDeg: 90 }, 6)];
    for (const mode of YIELD_MODES) expect(along[mode] / across[mode], mode).toBeCloseTo(1.25, 9);
  });
});

describe('how deep a nail must go', () => {
  const joint = { diameterIn: 0.162, sideBearingIn: 1.5, mainPsi: 4650, sidePsi: 4650, yieldPsi: 90_000 };
  test('ten diameters are full, six count in proportion, less counts for nothing', () => {
    expect(nailLateral(joint, 1.62).penetrationFactor).toBe(1);
    expect(nailLateral(joint, 0.972).penetrationFactor).toBeCloseTo(0.6, 12);
    expect(nailLateral(joint, 0.971)).toMatchObject({ penetrationFactor: 0, referenceLb: 0, yielding: undefined });
  });
  test('1-1/4 in of a 16d common nail keeps 0.772 of 141 lb, 174 lb at 1.6 (second-hand: SEAINT list 2009, NDS 2005)', () => {
    const { referenceLb, penetrationFactor } = nailLateral(joint, 1.25);
    expect(penetrationFactor).toBeCloseTo(0.7716, 4);
    expect(Math.round(referenceLb * 1.6)).toBe(174);
  });
  test('the lower of the two ways counts where the wood behind the tip governs', () => {
    const steel = { ...joint, sideBearingIn: 0.06, sidePsi: SIDE_PLATE_PSI.steel.psi };
    const { yielding, referenceLb, penetrationFactor, keptShare } = nailLateral(steel, 0.972);
    const fullLb = nailLateral(steel, 1.62).referenceLb;
    expect(yielding?.Im).toBeCloseTo((0.162 * (0.972 - 0.162) * 4650) / 2.2, 9);
    expect(referenceLb).toBe(Math.min(yielding?.lateralLb ?? 0, fullLb * penetrationFactor));
    expect(keptShare).toBe(referenceLb / fullLb);
  });
});

describe('bending yield strength by diameter (second-hand: NDS 2018 Table 12N notes)', () => {
  test.each([
    [0.142, 100_000],
    [0.143, 90_000],
    [0.177, 90_000],
    [0.178, 80_000],
    [0.236, 80_000],
    [0.273, 70_000],
  ])('a %s in nail yields at %s psi', (diameterIn, psi) => {
    expect(nailYieldPsi(diameterIn)).toBe(psi);
  });
  test('past the table there is none', () => {
    expect(() => nailYieldPsi(0.274)).toThrow(RangeError);
  });
});

describe('toe-nails (hand-worked from the 30 degree figure)', () => {
  test.each([
    [2.5, 0.833, 1.332, 1.538],
    [3, 1, 1.598, 1.845],
    [3.5, 1.167, 1.864, 2.153],
  ])('a %s in nail bears %s, %s and %s in', (nailIn, sideIn, lateralIn, withdrawalIn) => {
    const found = toeNailGeometry(nailIn);
    expect(found.sideIn).toBeCloseTo(sideIn, 3);
    expect(found.lateralIn).toBeCloseTo(lateralIn, 3);
    expect(found.withdrawalIn).toBeCloseTo(withdrawalIn, 3);
  });
  test('every named nail is long enough to count as a toe-nail', () => {
    for (const [nail, lengthIn] of Object.entries(NAIL_LENGTH_IN))
      expect(toeNailGeometry(lengthIn).lateralIn).toBeGreaterThan(
        6 * NAIL_DIAMETER_IN[nail as keyof typeof NAIL_DIAMETER_IN],
      );
  });
});

test('Douglas fir-larch weighs 0.50, hem-fir 0.43, and redwood is from memory', () => {
  expect(SPECIFIC_GRAVITY['douglas-fir-larch'].gravity).toBe(0.5);
  expect(SPECIFIC_GRAVITY['hem-fir'].gravity).toBe(0.43);
  expect(SPECIFIC_GRAVITY.redwood.source.basis).toBe('memory');
});
