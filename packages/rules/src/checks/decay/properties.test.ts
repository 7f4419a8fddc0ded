import fc from 'fast-check';
import { expect, test } from 'vitest';
import { evaluateCheck } from '../../all-checks.ts';

const pct = fc.double({ min: 0, max: 200, noNaN: true });
const share = fc.double({ min: 0, max: 1, noNaN: true });

test('more rust never raises what a rod keeps, and pits never help', () => {
  fc.assert(
    fc.property(fc.constantFrom(0.5, 0.625, 0.75, 0.875, 1), share, share, (diameterIn, a, b) => {
      const rod = (by: number, pitted: boolean) =>
        evaluateCheck('decay.rod-loss', { inputs: { diameterIn, remainingIn: by * diameterIn, pitted } });
      const [less, more] = a < b ? [a, b] : [b, a];
      expect(rod(less, false).remaining).toBeLessThanOrEqual(rod(more, false).remaining ?? 0);
      // Nobody can say how much a deeply pitted rod keeps, unless nothing is left of it.
      expect(rod(more, true).verdict).toBe('fails');
      expect([null, 0]).toContain(rod(more, true).remaining);
    }),
  );
});

test('a wetter reading never turns a verdict to meets, whatever the meter or the temperature', () => {
  const meter = fc.constantFrom('pin', 'pinless');
  fc.assert(
    fc.property(pct, pct, meter, fc.option(fc.integer({ min: -20, max: 120 })), (a, b, kind, temperatureF) => {
      const verdict = (readingPct: number) =>
        evaluateCheck('decay.moisture', { inputs: { readingPct, meter: kind, temperatureF } }).verdict;
      const [drier, wetter] = a < b ? [a, b] : [b, a];
      if (verdict(wetter) === 'meets') expect(verdict(drier)).toBe('meets');
      if (wetter > 30) expect(verdict(wetter)).toBe('undetermined');
    }),
  );
});

test.each([
  [34, 'stopped'],
  [35, 'stopped'],
  [36, 'slow'],
  [49, 'slow'],
  [50, 'active'],
  [95, 'active'],
  [96, 'slow'],
  [99, 'slow'],
  [100, 'stopped'],
])('at %s F fungi are %s', (temperatureF, growth) => {
  const { values } = evaluateCheck('decay.moisture', { inputs: { readingPct: 25, meter: 'pin', temperatureF } });
  expect(values.growth?.value).toBe(growth);
});

test.each([
  [18.9, 'dry'],
  [19.1, 'near-dry'],
  [19.9, 'near-dry'],
  [20, 'damp'],
  [27.9, 'damp'],
  [28, 'wet'],
  [30, 'wet'],
  [30.1, 'above-range'],
])('a reading of %s %% is %s', (readingPct, band) => {
  expect(evaluateCheck('decay.moisture', { inputs: { readingPct, meter: 'pin' } }).values.band?.value).toBe(band);
});
