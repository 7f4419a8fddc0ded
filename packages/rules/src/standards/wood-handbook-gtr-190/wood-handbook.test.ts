import { describe, expect, test } from 'vitest';
import { MIXED_GRAIN_RULES, mixedGrainRule } from '../mixed-grain-shrinkage/rules.ts';
import { EMC_RANGE_F, equilibriumMoisturePct } from './equilibrium-moisture.ts';
import { coefficientPerPct, FIBER_SATURATION_PCT, movementAcrossGrain, SHRINKAGE_PCT } from './shrinkage.ts';

/** Table 13-5 prints five decimals. */
const PRINTED = 0.000005 + 1e-12;

/** Species, S_R, S_T of Table 4-3 and C_R, C_T of Table 13-5. */
const ROWS = [
  ['douglas-fir-coast', 4.8, 7.6, 0.00165, 0.00267],
  ['douglas-fir-interior-north', 3.8, 6.9, 0.0013, 0.00241],
  ['douglas-fir-interior-west', 4.8, 7.5, 0.00165, 0.00263],
  ['western-larch', 4.5, 9.1, 0.00155, 0.00323],
  ['western-hemlock', 4.2, 7.8, 0.00144, 0.00274],
  ['white-fir', 3.3, 7.0, 0.00112, 0.00245],
  ['grand-fir', 3.4, 7.5, 0.00116, 0.00263],
  ['noble-fir', 4.3, 8.3, 0.00148, 0.00293],
  ['lodgepole-pine', 4.3, 6.7, 0.00148, 0.00234],
  ['engelmann-spruce', 3.8, 7.1, 0.0013, 0.00248],
  ['loblolly-pine', 4.8, 7.4, 0.00165, 0.00259],
  ['longleaf-pine', 5.1, 7.5, 0.00176, 0.00263],
  ['shortleaf-pine', 4.6, 7.7, 0.00158, 0.00271],
  ['slash-pine', 5.4, 7.6, 0.00187, 0.00267],
] as const;
/** Printed species the checks do not offer; they test the closed form all the same. White ash is a hardwood. */
const OTHER_ROWS = [
  ['Pacific silver fir', 4.4, 9.2, 0.00151, 0.00327],
  ['balsam fir', 2.9, 6.9, 0.00099, 0.00241],
  ['jack pine', 3.7, 6.6, 0.00126, 0.0023],
  ['white ash', 4.9, 7.8, 0.00169, 0.00274],
] as const;

describe('Table 13-5 follows from Table 4-3 by S/(3000 - 20 S)', () => {
  test.each(ROWS)('%s: %s and %s %% give %s and %s per percent', (species, radial, tangential, cR, cT) => {
    expect(SHRINKAGE_PCT[species]).toEqual({ radial, tangential });
    expect(Math.abs(coefficientPerPct(radial) - cR)).toBeLessThanOrEqual(PRINTED);
    expect(Math.abs(coefficientPerPct(tangential) - cT)).toBeLessThanOrEqual(PRINTED);
  });
  test.each(OTHER_ROWS)('%s: %s and %s %% give %s and %s per percent', (_species, radial, tangential, cR, cT) => {
    expect(Math.abs(coefficientPerPct(radial) - cR)).toBeLessThanOrEqual(PRINTED);
    expect(Math.abs(coefficientPerPct(tangential) - cT)).toBeLessThanOrEqual(PRINTED);
  });
  test('every species of the checks is in the table', () => {
    expect(Object.keys(SHRINKAGE_PCT).toSorted()).toEqual(ROWS.map(([species]) => species).toSorted());
  });
});

describe('the two ranges of shrinkage', () => {
  test('from green to ovendry a board loses its total shrinkage', () => {
    for (const [, , tangential] of ROWS)
      expect(movementAcrossGrain(10, tangential, FIBER_SATURATION_PCT, 0).changeIn).toBeCloseTo(-tangential / 10, 9);
  });
  test('a coast Douglas fir 2x10 loses 0.4475 in from 28 to 9% by Equation 13-3 (hand-worked)', () => {
    expect(movementAcrossGrain(9.25, 7.6, 28, 9)).toEqual({
      changeIn: expect.closeTo(-0.4475, 4),
      method: 'equation-13-3',
    });
  });
  test('drying there and wetting back by Equation 13-3 brings the first size back', () => {
    const dried = 9.25 + movementAcrossGrain(9.25, 7.6, 28, 9).changeIn;
    expect(dried + movementAcrossGrain(dried, 7.6, 9, 28).changeIn).toBeCloseTo(9.25, 9);
  });
  test('inside 6 to 14% the ranges agree within 2% of the movement', () => {
    for (const [, radial, tangential] of ROWS)
      for (const shrinkagePct of [radial, tangential]) {
        const linear = movementAcrossGrain(10, shrinkagePct, 14, 6).changeIn;
        const wide = (10 * (6 - 14)) / ((FIBER_SATURATION_PCT * 100) / shrinkagePct - FIBER_SATURATION_PCT + 14);
        expect(Math.abs(linear / wide - 1)).toBeLessThan(0.02);
      }
  });
});

describe('mixed grain', () => {
  test('the default is the rule that moves the most', () => {
    for (const rule of MIXED_GRAIN_RULES)
      expect(Math.abs(rule.change(10, 19, 9))).toBeLessThanOrEqual(Math.abs(MIXED_GRAIN_RULES[0].change(10, 19, 9)));
  });
  test('the grading-rule equation reads 8 and 19%, and gives way to the default outside', () => {
    const { change } = mixedGrainRule('grading-rule');
    expect(change(11.25, 19, 8)).toBeCloseTo(11.25 * ((1 - 0.04311) / (1 - 0.01946) - 1), 9);
    expect(change(11.25, 19.1, 8)).toBe(MIXED_GRAIN_RULES[0].change(11.25, 19.1, 8));
    expect(change(11.25, 19, 7.9)).toBe(MIXED_GRAIN_RULES[0].change(11.25, 19, 7.9));
  });
});

/** Equation 4-5 with its coefficients for degrees Celsius, as a second transcription of it. */
function equilibriumAtCelsius(t: number, humidityPct: number): number {
  const h = humidityPct / 100;
  const w = 349 + 1.29 * t + 0.0135 * t ** 2;
  const k = 0.805 + 7.36e-4 * t - 2.73e-6 * t ** 2;
  const k1 = 6.27 - 0.00938 * t - 3.03e-4 * t ** 2;
  const k2 = 1.91 + 0.0407 * t - 2.93e-4 * t ** 2;
  const kh = k * h;
  return (1800 / w) * (kh / (1 - kh) + (k1 * kh + 2 * k1 * k2 * kh ** 2) / (1 + k1 * kh + k1 * k2 * kh ** 2));
}

describe('moisture of wood in air', () => {
  test('the forms for degrees Celsius and Fahrenheit agree to 0.02 from 40 to 100 F and 30 to 90%', () => {
    for (let f = 40; f <= 100; f += 5)
      for (let humidityPct = 30; humidityPct <= 90; humidityPct += 5) {
        const atCelsius = equilibriumAtCelsius(((f - 32) * 5) / 9, humidityPct);
        expect(Math.abs(equilibriumMoisturePct(f, humidityPct) - atCelsius)).toBeLessThanOrEqual(0.02);
      }
  });
  test.each([
    [40, [6.33, 9.52, 12.36, 16.5, 21.01]],
    [70, [6.17, 9.25, 11.96, 16.0, 20.49]],
    [100, [5.78, 8.68, 11.24, 15.1, 19.49]],
  ] as const)(
    'at %s F and a humidity of 30, 50, 65, 80, 90 it is %s (worked from Equation 4-5)',
    (temperatureF, row) => {
      expect([30, 50, 65, 80, 90].map((humidity) => equilibriumMoisturePct(temperatureF, humidity))).toEqual(
        row.map((pct) => expect.closeTo(pct, 2)),
      );
    },
  );
  test.each([
    [25, 5.3],
    [60, 11.1],
    [84, 17.6],
    [87, 19.0],
  ])('at 70 F and a humidity of %s it is within 0.14 of the %s published apart from the table', (humidityPct, pct) => {
    expect(Math.abs(equilibriumMoisturePct(70, humidityPct) - pct)).toBeLessThanOrEqual(0.14);
  });
  test('warmer air at one humidity never leaves wood wetter, from 40 F up', () => {
    for (let humidityPct = 5; humidityPct <= 95; humidityPct += 5)
      for (let f = 40; f < EMC_RANGE_F.max; f += 5)
        expect(equilibriumMoisturePct(f + 5, humidityPct)).toBeLessThanOrEqual(equilibriumMoisturePct(f, humidityPct));
  });
});
