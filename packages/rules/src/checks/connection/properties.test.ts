import fc from 'fast-check';
import { expect, test } from 'vitest';
import { evaluateCheck } from '../../all-checks.ts';
import { NAIL_LENGTH_IN, type NamedNail } from '../../standards/nds-2018/nails.data.ts';

/** From the lightest to the heaviest wood. */
const BY_GRAVITY = [
  'spruce-pine-fir-south',
  'redwood',
  'spruce-pine-fir',
  'hem-fir',
  'douglas-fir-larch',
  'southern-pine',
] as const;
const nails = fc.constantFrom(...(Object.keys(NAIL_LENGTH_IN) as NamedNail[]));
const species = fc.constantFrom(...BY_GRAVITY);
const directions = fc.constantFrom('lateral', 'withdrawal');
const durations = fc.double({ min: 0.9, max: 1.6, noNaN: true });
const materials = fc.constantFrom('sawn', 'osb', 'plywood', 'structural-1-plywood', 'steel');
const sides = fc.double({ min: 0.1, max: 2, noNaN: true });
/** A nail that goes in at least six diameters. */
const depths = fc.double({ min: 1, max: 1.8, noNaN: true });

const numberAt = (id: string, inputs: unknown, name: string): number => {
  const value = evaluateCheck(id, { inputs }).values[name]?.value;
  if (typeof value !== 'number') throw new TypeError(`${id} gives no number ${name}`);
  return value;
};
const toeNails = (inputs: object): number => numberAt('connection.toe-nail', inputs, 'capacityLb');
const lateral = (inputs: object): number => numberAt('connection.nail', inputs, 'lateralLb');
/** Two results that ought to be equal may differ in their last binary digits. */
const notBelow = (more: number, less: number): void => expect(more).toBeGreaterThanOrEqual(less * (1 - 1e-12));

test('one more toe-nail, or a longer load duration factor, never lowers the capacity', () => {
  fc.assert(
    fc.property(
      nails,
      species,
      directions,
      fc.nat(99),
      durations,
      durations,
      (nail, wood, direction, count, one, other) => {
        const given = { nail, species: wood, direction };
        const [shorter, longer] = one < other ? [one, other] : [other, one];
        const base = toeNails({ ...given, count, loadDuration: shorter });
        notBelow(toeNails({ ...given, count: count + 1, loadDuration: shorter }), base);
        notBelow(toeNails({ ...given, count, loadDuration: longer }), base);
      },
    ),
  );
});

test('heavier wood never holds a nail less, across or along', () => {
  fc.assert(
    fc.property(nails, materials, sides, depths, (nail, sideMaterial, sideThicknessIn, penetrationIn) => {
      const given = { nail, sideMaterial, sideThicknessIn, penetrationIn };
      const each = BY_GRAVITY.map((mainSpecies) =>
        evaluateCheck('connection.nail', { inputs: { ...given, mainSpecies } }),
      );
      for (const name of ['lateralLb', 'withdrawalLb']) {
        const loads = each.map((outcome) => Number(outcome.values[name]?.value));
        loads.slice(1).forEach((load, lighter) => {
          notBelow(load, loads[lighter] ?? Number.NaN);
        });
      }
    }),
  );
});

test('a deeper nail never carries less', () => {
  fc.assert(
    fc.property(
      nails,
      materials,
      sides,
      species,
      fc.double({ min: 0, max: 1.8, noNaN: true }),
      (nail, sideMaterial, sideThicknessIn, mainSpecies, at) => {
        const given = { nail, sideMaterial, sideThicknessIn, mainSpecies };
        notBelow(
          lateral({ ...given, penetrationIn: Math.min(1.8, at + 0.05) }),
          lateral({ ...given, penetrationIn: at }),
        );
      },
    ),
  );
});

test('a longer load duration factor never lowers what a nail carries, toe-nailing never raises it', () => {
  fc.assert(
    fc.property(
      nails,
      species,
      sides,
      depths,
      durations,
      (nail, mainSpecies, sideThicknessIn, penetrationIn, loadDuration) => {
        const given = { nail, mainSpecies, sideThicknessIn, penetrationIn, sideMaterial: 'sawn' };
        notBelow(lateral({ ...given, loadDuration: 1.6 }), lateral({ ...given, loadDuration }));
        notBelow(
          numberAt('connection.nail', { ...given, loadDuration }, 'withdrawalLb'),
          numberAt('connection.nail', { ...given, loadDuration, toeNailed: true }, 'withdrawalLb'),
        );
      },
    ),
  );
});

test('the governing mode is the least of the six, and no mode is below what the nail is given', () => {
  fc.assert(
    fc.property(
      nails,
      species,
      materials,
      sides,
      depths,
      (nail, mainSpecies, sideMaterial, sideThicknessIn, penetrationIn) => {
        const { values } = evaluateCheck('connection.nail', {
          inputs: { nail, mainSpecies, sideMaterial, sideThicknessIn, penetrationIn },
        });
        const modes = ['Im', 'Is', 'II', 'IIIm', 'IIIs', 'IV'].map((mode) => Number(values[mode]?.value));
        expect(values[String(values.governingMode?.value)]?.value).toBe(Math.min(...modes));
        expect(Number(values.referenceLb?.value)).toBeLessThanOrEqual(Math.min(...modes));
      },
    ),
  );
});

test('a nail deeper than it is long, of two sizes, or toe-nailed through a panel is refused', () => {
  const given = { nail: '8d-common', sideThicknessIn: 0.5, sideMaterial: 'osb', mainSpecies: 'hem-fir' };
  const judge = (more: object) => () => evaluateCheck('connection.nail', { inputs: { ...given, ...more } });
  expect(judge({ penetrationIn: 2.6 })).toThrow(
    'penetrationIn: got 2.6 in; allowed is at most 2.5 in, the length of the nail.',
  );
  expect(judge({ diameterIn: 0.148 })).toThrow(
    'diameterIn: got 0.148 in; allowed is 0.131 in, as a 8d-common nail is.',
  );
  expect(judge({ toeNailed: true })).toThrow('toeNailed: got true, osb; allowed is true only with sawn.');
  expect(judge({ diameterIn: 0.131, penetrationIn: 2.5 })).not.toThrow();
});
