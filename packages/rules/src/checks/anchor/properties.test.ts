import fc from 'fast-check';
import { expect, test } from 'vitest';
import { evaluateCheck } from '../../all-checks.ts';

const BY_GRAVITY = [
  'spruce-pine-fir-south',
  'redwood',
  'spruce-pine-fir',
  'hem-fir',
  'douglas-fir-larch',
  'southern-pine',
] as const;
const species = fc.constantFrom(...BY_GRAVITY);
const sizes = fc.constantFrom(0.5, 0.625, 0.75, 0.875, 1);
const directions = fc.constantFrom('parallel', 'perpendicular');
const durations = fc.double({ min: 0.9, max: 1.6, noNaN: true });
/** Two results that ought to be equal may differ in their last binary digits. */
const notBelow = (more: number, less: number): void => expect(more).toBeGreaterThanOrEqual(less * (1 - 1e-12));

const numberAt = (id: string, inputs: unknown, name: string): number => {
  const value = evaluateCheck(id, { inputs }).values[name]?.value;
  if (typeof value !== 'number') throw new TypeError(`${id} gives no number ${name}`);
  return value;
};
const bolts = (inputs: object): number => numberAt('anchor.sill-bolt-shear', inputs, 'capacityLb');

test('one more bolt, a thicker one, heavier wood or a longer duration factor never lowers the capacity', () => {
  fc.assert(
    fc.property(
      fc.nat(50),
      sizes,
      fc.nat(4),
      directions,
      durations,
      (count, diameterIn, wood, direction, loadDuration) => {
        const given = { count, diameterIn, species: BY_GRAVITY[wood], direction, loadDuration };
        const base = bolts(given);
        notBelow(bolts({ ...given, count: count + 1 }), base);
        notBelow(bolts({ ...given, diameterIn: Math.min(1, diameterIn + 0.125) }), base);
        notBelow(bolts({ ...given, species: BY_GRAVITY[wood + 1] }), base);
        notBelow(bolts({ ...given, loadDuration: 1.6 }), base);
        notBelow(bolts({ ...given, direction: 'parallel' }), base);
      },
    ),
  );
});

test('a wider washer never takes less, a thicker bolt never more', () => {
  const side = fc.double({ min: 2.1, max: 6, noNaN: true });
  fc.assert(
    fc.property(side, fc.double({ min: 0.25, max: 1.9, noNaN: true }), species, (sideIn, boltDiameterIn, wood) => {
      const judge = (inputs: object) => numberAt('anchor.washer-bearing', { species: wood, ...inputs }, 'capacityLb');
      const base = judge({ sideIn, boltDiameterIn });
      notBelow(judge({ sideIn: sideIn + 0.25, boltDiameterIn }), base);
      notBelow(base, judge({ sideIn, boltDiameterIn: boltDiameterIn + 0.1 }));
    }),
  );
});

const pieces = fc.uniqueArray(
  fc
    .record({
      name: fc.constantFrom('A', 'B', 'C', 'D', 'E'),
      lengthIn: fc.double({ min: 1, max: 240, noNaN: true }),
      at: fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { maxLength: 6 }),
      joinsOffsetPanels: fc.boolean(),
    })
    .map(({ at, ...piece }) => ({ ...piece, boltsIn: at.map((share) => share * piece.lengthIn) })),
  { minLength: 1, selector: (piece) => piece.name },
);
type Piece = { name: string; lengthIn: number; boltsIn: number[]; joinsOffsetPanels: boolean };
const sill = (plates: readonly Piece[], more: object = {}) =>
  evaluateCheck('anchor.sill-bolts', {
    inputs: {
      plates,
      diameterIn: 0.625,
      storiesAbove: 1,
      seismicCategory: 'B',
      embedmentIn: 7,
      washer: 'round',
      middleThird: true,
      ...more,
    },
  });

test('the order of pieces and of their bolts changes nothing', () => {
  fc.assert(
    fc.property(pieces, (plates) => {
      const turned = [...plates].reverse().map((piece) => ({ ...piece, boltsIn: [...piece.boltsIn].reverse() }));
      const [one, other] = [sill(plates), sill(turned)];
      expect(other.verdict).toBe(one.verdict);
      expect(other.ratio).toBe(one.ratio);
      expect(other.remaining).toBe(one.remaining);
      expect(other.values).toEqual(one.values);
    }),
  );
});

/** So many bolts at even distances, the outer ones 12 in from the ends of the piece or a third of a short one. */
function evenly(lengthIn: number, count: number): number[] {
  const endIn = Math.min(12, lengthIn / 3);
  const stepIn = (lengthIn - 2 * endIn) / Math.max(1, count - 1);
  return Array.from({ length: count }, (_bolt, at) => endIn + at * stepIn);
}
const TALL = { seismicCategory: 'D0', washer: 'plate-3x3' };
const lengths = fc.double({ min: 24, max: 600, noNaN: true });
const needs = (lengthIn: number, more: object): number =>
  Number(sill([{ name: 'A', lengthIn, boltsIn: [], joinsOffsetPanels: false }], more).values['boltsNeeded.A']?.value);

test('as many bolts as a piece needs can be placed so that it meets, one bolt less cannot', () => {
  fc.assert(
    fc.property(lengths, fc.constantFrom(1, 3), (lengthIn, storiesAbove) => {
      const more = { ...TALL, storiesAbove };
      const needed = needs(lengthIn, more);
      const judge = (count: number) =>
        sill([{ name: 'A', lengthIn, boltsIn: evenly(lengthIn, count), joinsOffsetPanels: false }], more).verdict;
      expect(judge(needed)).toBe('meets');
      expect(judge(needed - 1)).toBe('fails');
    }),
  );
});

test('a bolt added anywhere never breaks a rule that was kept', () => {
  fc.assert(
    fc.property(lengths, fc.double({ min: 0, max: 1, noNaN: true }), (lengthIn, share) => {
      const more = { ...TALL, storiesAbove: 3 };
      const boltsIn = [...evenly(lengthIn, needs(lengthIn, more)), share * lengthIn];
      const { verdict, remaining } = sill([{ name: 'A', lengthIn, boltsIn, joinsOffsetPanels: false }], more);
      expect({ verdict, remaining }).toEqual({ verdict: 'meets', remaining: 1 });
    }),
  );
});

test('what a rod keeps by thread stripping falls with its recess', () => {
  fc.assert(
    fc.property(sizes, fc.double({ min: 0, max: 0.4, noNaN: true }), (diameterIn, recessIn) => {
      const judge = (projectionIn: number) =>
        numberAt('anchor.thread-engagement', { diameterIn, nut: 'hex', projectionIn }, 'geometricShare');
      notBelow(judge(-recessIn), judge(-recessIn - 0.02));
    }),
  );
});

test('a bolt past its piece, two pieces of one name and a washer thinner than its bolt are refused', () => {
  const piece = { name: 'A', lengthIn: 60, boltsIn: [10, 61], joinsOffsetPanels: false };
  expect(() => sill([piece])).toThrow(
    'plates.0.boltsIn.1.atIn: got 61 in; allowed is at most 60 in, the length of the piece.',
  );
  const fine = { ...piece, boltsIn: [10, 60] };
  expect(() => sill([fine, fine])).toThrow('plates.1.name: got "A" twice; allowed is each name once.');
  const washer = { sideIn: 0.6, boltDiameterIn: 0.625, species: 'hem-fir' };
  expect(() => evaluateCheck('anchor.washer-bearing', { inputs: washer })).toThrow(
    'sideIn: got 0.6 in; allowed is wider than the bolt, 0.625 in.',
  );
});
