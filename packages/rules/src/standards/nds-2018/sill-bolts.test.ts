import { expect, test } from 'vitest';
import { sillBoltLoads } from './sill-bolts.ts';
import { washerNetAreaIn2 } from './washers.ts';
import { governingMode } from './yield-limit.ts';

/** Table 12E prints bolts to 10 lb. */
const TEN_POUNDS = 5;

test.each([
  [0.5, 0.5, 0, 650],
  [0.625, 0.5, 0, 930],
  [0.5, 0.42, 0, 590],
  [0.625, 0.42, 0, 850],
  [0.5, 0.5, 90, 380],
  [0.625, 0.5, 90, 530],
])('a %s in bolt, gravity %s, %s degrees: %s lb (second-hand: NDS 2018 Table 12E)', (d, gravity, angle, lb) => {
  expect(Math.abs(sillBoltLoads(d, gravity, angle).lateralLb - lb)).toBeLessThanOrEqual(TEN_POUNDS);
});

test('a 3/4 in bolt takes 1274 lb along a 1-1/2 in sill, bending in the sill (hand-worked)', () => {
  const loads = sillBoltLoads(0.75, 0.5, 0);
  expect(Math.round(loads.lateralLb)).toBe(1274);
  expect(governingMode(loads)).toBe('IIIs');
});

test('a 3 in washer on a 5/8 in bolt bears on 8.629 square inches (hand-worked)', () => {
  expect(washerNetAreaIn2(3, 0.625)).toBeCloseTo(9 - (Math.PI / 4) * 0.6875 ** 2, 12);
  expect(washerNetAreaIn2(3, 0.625)).toBeCloseTo(8.629, 3);
  expect(washerNetAreaIn2(0.5, 0.5)).toBeLessThan(0.25);
});
