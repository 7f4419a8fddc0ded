import { describe, expect, test } from 'vitest';
import { asksSeismicAnchors, SEISMIC_CATEGORIES } from './anchors.data.ts';
import { boltsNeeded, judgePiece, spacingsOf } from './layout.ts';

const plain = (lengthIn: number, ...boltsIn: number[]) => ({ lengthIn, boltsIn, joinsOffsetPanels: false });
const joining = (lengthIn: number, ...boltsIn: number[]) => ({ lengthIn, boltsIn, joinsOffsetPanels: true });
const judge = (piece: ReturnType<typeof plain>) => judgePiece(piece, 0.5, 72);

describe('bolts a piece needs (hand-worked from IRC R403.1.6)', () => {
  test.each([
    [20, 72, 2],
    [96, 72, 2],
    [96.5, 72, 3],
    [192, 72, 4],
    [192, 48, 5],
  ])('a piece of %s in with a limit of %s in needs %s', (lengthIn, limitIn, bolts) => {
    expect(boltsNeeded(lengthIn, limitIn, false)).toBe(bolts);
  });
  test('joining offset braced panels it needs none up to 12 in, one up to 24 in, two beyond', () => {
    expect([12, 12.1, 24, 24.1].map((lengthIn) => boltsNeeded(lengthIn, 72, true))).toEqual([0, 1, 1, 2]);
  });
});

describe('one piece', () => {
  test('a short piece that joins nothing needs two bolts like any other', () => {
    expect(judge(plain(20, 10))).toEqual({ bolts: 1, needed: 2, broken: ['too-few-bolts'], ratio: 2 });
  });
  test('without a bolt the count says it all and no ratio is made up', () => {
    expect(judge(plain(60))).toEqual({ bolts: 0, needed: 2, broken: ['too-few-bolts'], ratio: null });
  });
  test('a bolt at the very end is too near, and does not hide that the ends fail', () => {
    expect(judge(plain(60, 0, 50)).broken).toEqual(['end-too-near']);
    expect(judge(plain(60, 0, 60)).broken).toEqual(['end-too-near']);
    expect(judge(plain(60, 0, 60)).ratio).toBe(5);
  });
  test('one end too near and the other too far are both said', () => {
    expect(judge(plain(60, 2, 40)).broken).toEqual(['end-too-near', 'end-too-far']);
  });
  test('a bolt too near the end harms nothing when another stands where it should', () => {
    expect(judge(plain(60, 1, 10, 50)).broken).toEqual([]);
  });
  test('a gap just over the limit breaks it, the limit itself does not', () => {
    expect(judge(plain(96, 12, 84)).broken).toEqual([]);
    expect(judge(plain(96.1, 12, 84.1))).toMatchObject({ broken: ['spacing'], ratio: 72.1 / 72 });
  });
  test('two bolts well inside their limits have a ratio below 1', () => {
    expect(judge(plain(30, 8, 22)).ratio).toBeCloseTo(8 / 12, 12);
  });
});

describe('a short piece that joins offset braced panels', () => {
  test('of 24 in needs a bolt in the middle third of its length, 8 to 16 in', () => {
    expect(judge(joining(24)).broken).toEqual(['too-few-bolts']);
    expect([7.9, 8, 16, 16.1].map((atIn) => judge(joining(24, atIn)).broken)).toEqual([
      ['center-third'],
      [],
      [],
      ['center-third'],
    ]);
  });
  test('may have further bolts outside the third', () => {
    expect(judge(joining(24, 2, 12)).broken).toEqual([]);
  });
  test('of 12 in keeps every rule with no bolt at all', () => {
    expect(judge(joining(12))).toEqual({ bolts: 0, needed: 0, broken: [], ratio: null });
  });
});

test('spacings run from the left whatever the order the bolts were measured in', () => {
  expect(spacingsOf([84, 12, 40])).toEqual([28, 44]);
  expect(spacingsOf([12])).toEqual([]);
});

test('earthquake anchors are asked for from D0 up, and in townhouses in C', () => {
  expect(SEISMIC_CATEGORIES.filter((category) => asksSeismicAnchors(category, false))).toEqual(['D0', 'D1', 'D2', 'E']);
  expect(SEISMIC_CATEGORIES.filter((category) => asksSeismicAnchors(category, true))).toEqual([
    'C',
    'D0',
    'D1',
    'D2',
    'E',
  ]);
});
