import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { evaluateCheck } from '../../all-checks.ts';
import { parseLength } from '../../kernel/index.ts';

const share = fc.double({ min: 0, max: 1, noNaN: true });
const depth = fc.constantFrom(3.5, 5.5, 7.25, 9.25, 11.25);
const pair = fc.tuple(share, share).map(([a, b]) => (a < b ? ([a, b] as const) : ([b, a] as const)));

const studLeft = (inputs: object) => evaluateCheck('cut.stud', { inputs }).remaining ?? 1;
const joist = (inputs: object) => evaluateCheck('cut.joist', { inputs });
const valueIn = (outcome: ReturnType<typeof joist>, name: string) => outcome.values[name]?.value as number;

/** Inches of a length as typed. */
function typed(words: string): number {
  const parsed = parseLength(words);
  if (!parsed.ok) throw new Error(parsed.failure.message.en);
  return parsed.inches;
}

describe('a deeper cut never raises what is left', () => {
  test('a notch or a hole in a stud', () => {
    fc.assert(
      fc.property(depth, pair, fc.boolean(), (depthIn, [less, more], bearing) => {
        const notched = (by: number) => studLeft({ depthIn, bearing, notchIn: by * depthIn });
        expect(notched(more)).toBeLessThanOrEqual(notched(less));
        const bored = (by: number) => studLeft({ depthIn, bearing, holeIn: by * depthIn, edgeIn: 0 });
        expect(bored(more)).toBeLessThanOrEqual(bored(less));
      }),
    );
  });

  test('a notch, an end notch or a hole in a joist', () => {
    fc.assert(
      fc.property(depth, pair, (depthIn, [less, more]) => {
        for (const input of ['notchIn', 'endNotchIn', 'holeIn']) {
          const cut = (by: number) => joist({ depthIn, [input]: by * depthIn });
          for (const name of ['momentRatio', 'stiffnessRatio', 'shearRatio'])
            expect(valueIn(cut(more), name)).toBeLessThanOrEqual(valueIn(cut(less), name));
        }
      }),
    );
  });

  test('a wider hole at one distance from the edge', () => {
    fc.assert(
      fc.property(depth, pair, share, (depthIn, [less, more], near) => {
        const edgeIn = (near * depthIn) / 2;
        const roomIn = depthIn - edgeIn;
        const bored = (by: number) => joist({ depthIn, edgeIn, holeIn: by * roomIn });
        for (const name of ['momentRatio', 'stiffnessRatio', 'shearRatio'])
          expect(valueIn(bored(more), name)).toBeLessThanOrEqual(valueIn(bored(less), name) + 1e-12);
      }),
    );
  });

  test('what one cut leaves is never raised by another', () => {
    fc.assert(
      fc.property(depth, share, share, (depthIn, a, b) => {
        const one = joist({ depthIn, notchIn: a * depthIn });
        const two = joist({ depthIn, notchIn: a * depthIn, endNotchIn: b * depthIn });
        for (const name of ['momentRatio', 'shearRatio'])
          expect(valueIn(two, name)).toBeLessThanOrEqual(valueIn(one, name));
      }),
    );
  });

  test('a deeper end notch never raises the load the end carries', () => {
    fc.assert(
      fc.property(depth, pair, (depthIn, [less, more]) => {
        const carried = (by: number) =>
          valueIn(
            joist({ depthIn, endNotchIn: by * depthIn, endShearLb: 500, widthIn: 1.5, species: 'hem-fir' }),
            'notchedShearLb',
          );
        expect(carried(more)).toBeLessThanOrEqual(carried(less));
      }),
    );
  });
});

describe('the verdict', () => {
  test('does not change when a passing cut is made shallower', () => {
    fc.assert(
      fc.property(depth, pair, (depthIn, [less, more]) => {
        const verdict = (by: number) => joist({ depthIn, endNotchIn: by * depthIn }).verdict;
        if (verdict(more) === 'meets') expect(verdict(less)).toBe('meets');
      }),
    );
  });

  test('is the same in millimeters and in inches', () => {
    fc.assert(
      fc.property(fc.integer({ min: 60, max: 300 }), fc.integer({ min: 1, max: 240 }), (depthMm, cutMm) => {
        fc.pre(cutMm <= depthMm);
        const metric = { depthIn: typed(`${depthMm} mm`), endNotchIn: typed(`${cutMm} mm`) };
        // Straight from the rule, in millimeters: a quarter of the depth, and equality meets.
        expect(joist(metric).verdict).toBe(cutMm * 4 <= depthMm ? 'meets' : 'fails');
        const stud = { depthIn: metric.depthIn, bearing: true, notchIn: metric.endNotchIn };
        expect(evaluateCheck('cut.stud', { inputs: stud }).verdict).toBe(cutMm * 4 <= depthMm ? 'meets' : 'fails');
      }),
    );
  });

  test('of a 190 mm joist is that of 7 61/128 in, typed either way', () => {
    for (const cutMm of [47, 47.5, 48]) {
      const inMm = joist({ depthIn: typed('190 mm'), endNotchIn: typed(`${cutMm} mm`) });
      const inInches = joist({ depthIn: 190 / 25.4, endNotchIn: cutMm / 25.4 });
      expect(inMm.verdict).toBe(cutMm <= 47.5 ? 'meets' : 'fails');
      expect(inInches.verdict).toBe(inMm.verdict);
    }
  });
});

test('words for a limit never allow more than the limit', () => {
  const outcome = joist({ depthIn: 9.25, notchIn: 1.5625 });
  expect(outcome.verdict).toBe('fails');
  expect(outcome.reasons[0]?.en).toBe('Notch: 1 9/16"; at most 1 1/2" (1.542 in).');
});

test('IRC 2018 names its print fault where a hole is judged, the later editions do not', () => {
  const inputs = { depthIn: 3.5, bearing: true, holeIn: 1, edgeIn: 1 };
  const cautions = (edition: string) =>
    evaluateCheck('cut.stud', { edition, inputs }).cautions.filter((caution) => /not more than 5\/8/.test(caution.en));
  expect(cautions('irc-2018')).toHaveLength(1);
  expect(cautions('irc-2024')).toHaveLength(0);
});

describe('what was not looked for', () => {
  const assumedOf = (id: string, inputs: object) => evaluateCheck(id, { inputs }).assumed.map(({ input }) => input);

  test('in a stud is named: a notch alone says nothing of holes, and the other way round', () => {
    const stud = { depthIn: 3.5, bearing: true };
    expect(assumedOf('cut.stud', { ...stud, notchIn: 0.5 })).toEqual(['holeIn']);
    expect(assumedOf('cut.stud', { ...stud, holeIn: 1, edgeIn: 1 })).toEqual(['notchIn']);
    expect(assumedOf('cut.stud', { ...stud, notchIn: 0.5, holeIn: 0 })).toEqual([]);
  });
  test('in a joist is named, and so is the load nobody gave', () => {
    expect(assumedOf('cut.joist', { depthIn: 9.25, endNotchIn: 2 })).toEqual(['notchIn', 'holeIn', 'endShearLb']);
    expect(assumedOf('cut.joist', { depthIn: 9.25, notchIn: 0, endNotchIn: 0, holeIn: 3, edgeIn: 3 })).toEqual([
      'otherCutIn',
      'endShearLb',
    ]);
  });
  test('in a joist of which little is left, it is said that it is not taken for a beam', () => {
    const cut = (memberKind?: 'joist' | 'beam') =>
      evaluateCheck('cut.joist', { inputs: { depthIn: 9.25, notchIn: 5 }, context: { memberKind } });
    const takenOf = (memberKind?: 'joist' | 'beam') => cut(memberKind).assumed.map(({ input }) => input);
    expect(takenOf()).toContain('context.memberKind');
    expect(takenOf('joist')).not.toContain('context.memberKind');
    expect(cut('beam').severity).toBe('make-safe');
  });
  test('counts as in the worst place: a hole of unknown edge, a hole that may be beside a notch', () => {
    const bored = (edgeIn?: number) => joist({ depthIn: 5.5, holeIn: 1.75, ...(edgeIn !== undefined && { edgeIn }) });
    for (let eighths = 0; eighths <= 15; eighths++)
      expect(bored().remaining).toBeLessThanOrEqual(bored(eighths / 8).remaining ?? 0);
    const cuts = { depthIn: 3.5, bearing: true, notchIn: 1, holeIn: 1 };
    expect(studLeft(cuts)).toBe(studLeft({ ...cuts, sameSection: true }));
    expect(studLeft(cuts)).toBeLessThan(studLeft({ ...cuts, sameSection: false }));
  });
});
