import fc from 'fast-check';
import { expect, test } from 'vitest';
import { evaluateCheck } from '../../all-checks.ts';

const HOUSE = { weightLb: 60_000, stories: 2, sds: 1, system: 'bearing-wall' } as const;
const places = fc.uniqueArray(fc.integer({ min: 0, max: 60 }), { minLength: 2, maxLength: 6 });
const linesAt = (positions: readonly number[]) =>
  positions.map((positionFt) => ({ name: `line ${positionFt}`, positionFt, wallFt: 12, capacityPlf: 300 }));
const judge = (lines: unknown) => evaluateCheck('demand.base-shear', { inputs: { ...HOUSE, lines } });

test('the lines together take the whole load, in whatever order they are listed', () => {
  fc.assert(
    fc.property(places, (positions) => {
      const found = judge(linesAt(positions));
      const loads = positions.map((at) => Number(found.values[`lineLb.line ${at}`]?.value));
      expect(loads.reduce((sum, load) => sum + load, 0)).toBeCloseTo(Number(found.values.asdLb?.value), 6);
      const turned = judge(linesAt([...positions].reverse()));
      expect(turned.ratio).toBe(found.ratio);
      expect(turned.values).toEqual(found.values);
    }),
  );
});

test('one line takes it all, and two lines with one name or one place are refused', () => {
  expect(judge(linesAt([7])).values['tributaryShare.line 7']?.value).toBe(1);
  const [a, b] = [
    { name: 'A', positionFt: 0 },
    { name: 'B', positionFt: 20 },
  ];
  expect(() => judge([a, { ...b, name: 'A' }])).toThrow(/lines.1.name: got "A" twice; allowed is each name once/);
  expect(() => judge([a, { ...b, positionFt: 0 }])).toThrow(/lines.1.positionFt: got 0 ft twice/);
});

test('a heavier house, more stories and stronger ground motion never lower the load', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 1000, max: 500_000 }),
      fc.integer({ min: 1, max: 2 }),
      fc.double({ min: 0, max: 3, noNaN: true }),
      (weightLb, stories, sds) => {
        const load = (more: object) =>
          Number(
            evaluateCheck('demand.base-shear', { inputs: { ...HOUSE, weightLb, stories, sds, ...more } }).values
              .baseShearLb?.value,
          );
        const base = load({});
        expect(load({ weightLb: weightLb + 1000 })).toBeGreaterThanOrEqual(base);
        expect(load({ stories: stories + 1 })).toBeGreaterThanOrEqual(base);
        expect(load({ sds: sds + 0.1 })).toBeGreaterThanOrEqual(base);
      },
    ),
  );
});
