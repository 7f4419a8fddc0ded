import { expect, test } from 'vitest';
import { floorMembers, memberEdges, sized, wallMembers } from './framing.ts';

const wall = {
  kind: 'wall' as const,
  name: 'East wall',
  widthIn: 96,
  heightIn: 97.5,
  framingSpacingIn: 16,
  memberDepthIn: 3.5,
  openings: [],
};

test('studs at 16 in have their centers at 16, 32, 48 in, so that a 4 ft panel breaks on one', () => {
  const centers = memberEdges(96, 16).map((edge) => edge + 0.75);
  expect(centers).toEqual([0.75, 16, 32, 48, 64, 80, 95.25]);
});

test('with no spacing known only the two ends are drawn', () => {
  expect(memberEdges(96, null)).toEqual([0, 94.5]);
});

test('a wall has one sole plate, two top plates and its studs', () => {
  expect(wallMembers(wall)).toHaveLength(3 + 7);
});

test('a stud that a window interrupts becomes two cripples', () => {
  const window = { name: 'Window', xIn: 24, yIn: 36, widthIn: 20, heightIn: 36 };
  const cripples = wallMembers({ ...wall, openings: [window] }).filter((m) => m.xIn === 31.25);
  expect(cripples.map((m) => [m.yIn, m.heightIn])).toEqual([
    [1.5, 34.5],
    [72, 22.5],
  ]);
});

test('a floor has two rims and its joists', () => {
  expect(floorMembers({ ...wall, kind: 'floor' })).toHaveLength(2 + 7);
});

test('a beam line with no height is as high as its beam; a wall with no height has no drawing', () => {
  expect(sized({ ...wall, kind: 'beam-line', heightIn: null, memberDepthIn: 11.25 })?.heightIn).toBe(11.25);
  expect(sized({ ...wall, heightIn: null })).toBeNull();
});
