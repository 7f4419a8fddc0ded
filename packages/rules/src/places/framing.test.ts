import { expect, test } from 'vitest';
import { layOutElevation, sized } from './elevation.ts';
import { type Ground, overlaps } from './extents.ts';
import { type Member, memberEdgesIn, membersOf } from './framing.ts';

const wall: Ground = { kind: 'wall', widthIn: 96, heightIn: 97.5, framingSpacingIn: 16 };
const upright = (ground: Ground) => membersOf(ground).filter(({ run }) => run === 'upright');
const spans = (members: readonly Member[]) => members.map(({ name, rect }) => [name.en, rect.yIn, rect.heightIn]);

test('studs at 16 in have their centers at 16, 32, 48 in, so that a 4 ft panel breaks on one', () => {
  expect(memberEdgesIn(96, 16).map((edge) => edge + 0.75)).toEqual([0.75, 16, 32, 48, 64, 80, 95.25]);
});

test('with no spacing known only the two ends are drawn', () => {
  expect(memberEdgesIn(96, null)).toEqual([0, 94.5]);
});

test('a wall has one sole plate, two top plates and its studs; a floor two rims and its joists', () => {
  expect([upright(wall).length, membersOf(wall).length]).toEqual([7, 10]);
  expect(membersOf({ ...wall, kind: 'floor' })).toHaveLength(7 + 2);
});

test('a stud that a window interrupts becomes two cripples, and the window has a stud at each side', () => {
  const window = { xIn: 24, yIn: 36, widthIn: 20, heightIn: 36 };
  const members = upright({ ...wall, openings: [window] });
  expect(spans(members.filter(({ rect }) => rect.xIn === 31.25))).toEqual([
    ['Stud 3, below the opening', 1.5, 34.5],
    ['Stud 3, above the opening', 72, 22.5],
  ]);
  expect(spans(members.filter(({ id }) => id.includes('opening')))).toEqual([
    ['Opening 1, left stud', 1.5, 93],
    ['Opening 1, right stud', 1.5, 93],
  ]);
});

test('a stud between two windows, one over the other, keeps what is between them; under windows that overlap nothing is between', () => {
  const lower = { xIn: 24, yIn: 12, widthIn: 20, heightIn: 20 };
  const apart = upright({ ...wall, openings: [{ ...lower, yIn: 50 }, lower] });
  expect(spans(apart.filter(({ rect }) => rect.xIn === 31.25))).toEqual([
    ['Stud 3, below the opening', 1.5, 10.5],
    ['Stud 3, between openings', 32, 18],
    ['Stud 3, above the opening', 70, 24.5],
  ]);
  const nested = upright({ ...wall, openings: [{ ...lower, heightIn: 60 }, lower] });
  expect(spans(nested.filter(({ rect }) => rect.xIn === 31.25))).toEqual([
    ['Stud 3, below the opening', 1.5, 10.5],
    ['Stud 3, above the opening', 72, 22.5],
  ]);
});

test('no stud stands in a door, and none in the stud beside it', () => {
  const door = { xIn: 17, yIn: 0, widthIn: 36, heightIn: 82 };
  const members = upright({ ...wall, openings: [door] });
  for (const [at, { rect }] of members.entries()) {
    expect(overlaps(rect, door)).toBe(false);
    for (const other of members.slice(at + 1)) expect(overlaps(rect, other.rect)).toBe(false);
  }
  expect(members.some(({ rect }) => rect.yIn === 82)).toBe(true);
});

test('an opening at the end of a wall has no stud outside it', () => {
  const members = upright({ ...wall, openings: [{ xIn: 0, yIn: 0, widthIn: 36, heightIn: 82 }] });
  expect(members.every(({ rect }) => rect.xIn >= 0)).toBe(true);
  expect(members.map(({ id }) => id)).toContain('upright-opening-1-right');
});

test('a beam line with no height is as high as its beam; a wall with no height has no drawing', () => {
  const beam = { ...wall, kind: 'beam-line', heightIn: null, memberDepthIn: 11.25, openings: [] };
  expect(sized(beam)?.heightIn).toBe(11.25);
  expect(sized({ ...beam, kind: 'wall' })).toBeNull();
});

test('a drawing has members under plates, then openings, then its outline; a beam its joist ends above it', () => {
  const place = { ...wall, openings: [{ xIn: 24, yIn: 36, widthIn: 20, heightIn: 36 }] };
  const parts = layOutElevation(place).map(({ part }) => part);
  expect([...new Set(parts)]).toEqual(['member', 'plate', 'opening', 'outline']);
  const beam = layOutElevation({ ...wall, kind: 'beam-line', heightIn: 11.25, openings: [] });
  expect(beam.filter(({ part }) => part === 'member').every(({ rect }) => rect.yIn === 11.25)).toBe(true);
  expect(beam.map(({ part }) => part).slice(-2)).toEqual(['beam', 'outline']);
});
