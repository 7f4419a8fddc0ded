import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { evaluateCheck } from '../../all-checks.ts';
import { parseLength } from '../../kernel/index.ts';
import { SLOPE_RULES } from '../../standards/level-tolerances/floor-slope.data.ts';

const positive = (max: number) => fc.double({ min: 1, max, noNaN: true });
const pair = fc
  .tuple(fc.double({ min: 0, max: 20, noNaN: true }), fc.double({ min: 0, max: 20, noNaN: true }))
  .map(([a, b]) => (a < b ? ([a, b] as const) : ([b, a] as const)));
const rule = fc.constantFrom(...SLOPE_RULES.map(({ id }) => id));

const slope = (inputs: object) => evaluateCheck('level.floor-slope', { inputs });
const sag = (inputs: object) => evaluateCheck('level.deflection', { inputs });

function typed(words: string): number {
  const parsed = parseLength(words);
  if (!parsed.ok) throw new Error(parsed.failure.message.en);
  return parsed.inches;
}

describe('slope', () => {
  test('more rise never lowers the ratio, a longer run never raises it', () => {
    fc.assert(
      fc.property(pair, positive(600), positive(600), rule, (rises, runA, runB, named) => {
        const ratio = (riseIn: number, runIn: number) => slope({ riseIn, runIn, rule: named }).ratio ?? 0;
        expect(ratio(rises[1], runA)).toBeGreaterThanOrEqual(ratio(rises[0], runA));
        const [short, long] = runA < runB ? [runA, runB] : [runB, runA];
        expect(ratio(rises[1], long)).toBeLessThanOrEqual(ratio(rises[1], short));
      }),
    );
  });

  test('the verdict under a rule is the one shown beside the others', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 20, noNaN: true }), positive(600), rule, (riseIn, runIn, named) => {
        const outcome = slope({ riseIn, runIn, rule: named });
        expect(outcome.values[`passes.${named}`]?.value).toBe(outcome.verdict === 'meets');
      }),
    );
  });

  test('is the same in millimeters and in inches', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 200 }), fc.integer({ min: 100, max: 9000 }), (riseMm, runMm) => {
        const outcome = slope({ riseIn: typed(`${riseMm} mm`), runIn: typed(`${runMm} mm`), rule: 'remedial' });
        expect(outcome.verdict).toBe(riseMm * 100 <= runMm ? 'meets' : 'fails');
      }),
    );
  });

  test('says the angle whose tangent is the slope', () => {
    expect(slope({ riseIn: 12, runIn: 12 }).values.angleDeg?.value).toBeCloseTo(45, 12);
  });
});

describe('sag', () => {
  const member = fc.constantFrom('floor', 'roof-no-ceiling', 'wall-brittle', 'lintel-veneer', 'other');

  test('more sag never lowers the ratio, a longer span never raises it', () => {
    fc.assert(
      fc.property(pair, positive(60), positive(60), member, (sags, spanA, spanB, what) => {
        const ratio = (sagIn: number, spanFt: number) => sag({ sagIn, spanFt, member: what }).ratio ?? 0;
        expect(ratio(sags[1], spanA)).toBeGreaterThanOrEqual(ratio(sags[0], spanA));
        const [short, long] = spanA < spanB ? [spanA, spanB] : [spanB, spanA];
        expect(ratio(sags[1], long)).toBeLessThanOrEqual(ratio(sags[1], short));
      }),
    );
  });

  test('a cantilever is judged like a span of twice its length', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 5, noNaN: true }), positive(20), (sagIn, spanFt) => {
        const cantilever = sag({ sagIn, spanFt, member: 'floor', cantilever: true });
        const span = sag({ sagIn, spanFt: spanFt * 2, member: 'floor' });
        expect([cantilever.verdict, cantilever.ratio]).toEqual([span.verdict, span.ratio]);
      }),
    );
  });

  test('people alone are held to a stricter limit than the whole load', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 5, noNaN: true }), positive(40), (sagIn, spanFt) => {
        const ratio = (load: string) => sag({ sagIn, spanFt, member: 'floor', load }).ratio ?? 0;
        expect(ratio('live')).toBeGreaterThanOrEqual(ratio('total'));
      }),
    );
  });
});
