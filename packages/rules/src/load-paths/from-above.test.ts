import { describe, expect, test } from 'vitest';
import { evaluateCheck } from '../all-checks.ts';
import { type LineAbove, momentsFromAbove, type PlacedSegment } from './from-above.ts';
import type { Link } from './load-path.ts';

const panels = (intendedLb?: number): Link => ({ name: 'Panels', role: 'panels', state: 'sound', intendedLb });
const segment = (name: string, more: Partial<PlacedSegment> = {}): PlacedSegment => ({
  name,
  fromIn: 0,
  lengthFt: 10,
  heightFt: 8,
  links: [panels()],
  ...more,
});
const upper = (segments: readonly PlacedSegment[], more: Partial<LineAbove['path']> = {}): LineAbove => ({
  name: 'Bedroom',
  floorDepthIn: 12,
  aligned: true,
  path: { kind: 'wall-line', storiesAbove: 0, demandLb: 2000, segments, ...more },
});
const one = [segment('A', { heightFt: 9 })];

describe('a line that stands on another', () => {
  test('hands down its load times its height from floor to floor', () => {
    const { momentsFtLb, words } = momentsFromAbove(one, upper([segment('Up')]));
    expect(momentsFtLb).toEqual([18_000]);
    expect(words.map(({ en }) => en)).toEqual(['Bedroom: 2,000 lb x (8 ft + 1 ft of floor) = 18,000 ft-lb.']);
  });

  test('gives the moment with which the overturning check lifts the end', () => {
    const wall = { shearLb: 3500, heightFt: 9, lengthFt: 10, deadLoadPlf: 0, deadFactor: 0.6 };
    const stories = [{ shearLb: 2000, heightFt: 9, deadLoadPlf: 0 }];
    const { values } = evaluateCheck('shear-wall.overturning', { inputs: { ...wall, stories } });
    const [momentFtLb] = momentsFromAbove(one, upper([segment('Up')])).momentsFtLb;
    expect((momentFtLb ?? 0) + 3500 * 9).toBe(values.overturningFtLb?.value);
  });

  test('adds what stands on it in its turn: 2,000 lb and 1,200 lb over two floors', () => {
    const third = { ...upper([segment('Attic')], { demandLb: 1200 }), name: 'Attic' };
    const second = { ...upper([segment('Up')], { storiesAbove: 1 }), above: third };
    const { momentsFtLb, words } = momentsFromAbove(one, second);
    expect(momentsFtLb).toEqual([2000 * 9 + 1200 * 9]);
    expect(words.map(({ en }) => en)).toEqual([
      'Attic: 1,200 lb x (8 ft + 1 ft of floor) = 10,800 ft-lb.',
      'Bedroom: 2,000 lb x (8 ft + 1 ft of floor) + 10,800 ft-lb from further up = 28,800 ft-lb.',
    ]);
  });

  test('takes the moment that its own engineer gave before one that follows', () => {
    const tie: Link = { name: 'Tie', role: 'hold-down', state: 'sound', momentAboveFtLb: 5000 };
    const line = upper([segment('Up', { links: [tie] })], { storiesAbove: 1 });
    expect(momentsFromAbove(one, line).momentsFtLb).toEqual([23_000]);
  });

  test('shares its load by strength, and each part stands on the segment under it', () => {
    const lower = [segment('A'), segment('B', { fromIn: 240 })];
    const line = upper([
      segment('Left', { links: [panels(3000)] }),
      segment('Right', { fromIn: 244, lengthFt: 8, links: [panels(1000)] }),
    ]);
    const { momentsFtLb, words } = momentsFromAbove(lower, line);
    expect(momentsFtLb).toEqual([0.75 * 18_000, 0.25 * 18_000]);
    expect(words[1]?.en).toBe('Bedroom, Right: 25% x 2,000 lb x (8 ft + 1 ft of floor) = 4,500 ft-lb.');
  });

  test.each<[string, readonly PlacedSegment[], LineAbove, string]>([
    ['no load', one, upper([segment('Up')], { demandLb: undefined }), 'has no load yet'],
    ['no height', one, upper([segment('Up', { heightFt: undefined })]), 'height is not known'],
    ['stories above that nobody told of', one, upper([segment('Up')], { storiesAbove: 1 }), 'from further up'],
    ['a place past the end of the wall below', one, upper([segment('Up', { fromIn: 7 })]), 'within 6 in'],
    ['a greater length', one, { ...upper([segment('Up', { lengthFt: 11 })]), aligned: false }, 'within 6 in'],
    [
      'places that cannot be compared, over two segments',
      [segment('A'), segment('B', { fromIn: 240 })],
      { ...upper([segment('Up')]), aligned: false },
      'within 6 in',
    ],
    [
      'segments of which nobody knows strength or length',
      one,
      upper([segment('Left', { lengthFt: undefined }), segment('Right', { lengthFt: undefined })]),
      'part of the load is not known',
    ],
  ])('with %s hands down what nobody knows, and says why', (_what, lower, line, why) => {
    const { momentsFtLb, words } = momentsFromAbove(lower, line);
    expect(momentsFtLb).toEqual(lower.map(() => null));
    expect(words.map(({ en }) => en).join(' ')).toContain(why);
  });

  test('may overhang by 6 in, not by more', () => {
    const at = (fromIn: number) => momentsFromAbove(one, upper([segment('Up', { fromIn })])).momentsFtLb[0];
    expect([at(6), at(6.01)]).toEqual([18_000, null]);
  });
});
