import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { checks, evaluateCheck } from '../all-checks.ts';
import { InputError, runCheck } from '../judging/run-check.ts';
import { type Check, ENGINEER_REPAIR, type Field, type Fields, type Outcome, toAnswer } from '../kernel/index.ts';

/** Any value a field's schema accepts. */
function anyValueOf(field: Field): fc.Arbitrary<unknown> {
  switch (field.kind) {
    case 'length':
    case 'number': {
      const { min, max } = field;
      if (field.kind === 'length' && field.oneOf) return fc.constantFrom(...field.oneOf);
      const edges = [min, max, 0, 0.125, 1.5, 3.5, 6, 9.25].filter((edge) => edge >= min && edge <= max);
      return fc.oneof(
        fc.constantFrom(...edges),
        fc.double({ min, max, noNaN: true }),
        fc.double({ min, max: Math.min(max, min + 12), noNaN: true }),
      );
    }
    case 'count':
      return fc.integer({ min: field.min ?? 0, max: field.min ? (field.max ?? 60) : Math.min(field.max ?? 60, 60) });
    case 'choice':
      return fc.constantFrom(...field.options.map((option) => option.value));
    case 'flag':
      return fc.constantFrom<unknown>(true, false, null, 'unknown');
    case 'name':
      return fc.string({ minLength: 1, maxLength: 8 }).filter((name) => name.trim() !== '');
    case 'group':
      return inputsOf(field.fields);
    case 'list':
      return fc.array(inputsOf(field.item), { minLength: field.minItems ?? 0, maxLength: 4 });
  }
}

const inputsOf = (fields: Fields): fc.Arbitrary<Record<string, unknown>> =>
  fc.record(Object.fromEntries(Object.entries(fields).map(([name, field]) => [name, anyValueOf(field)])), {
    requiredKeys: [],
  });

function expectFinite(value: unknown): void {
  if (typeof value === 'number') expect(Number.isFinite(value)).toBe(true);
  else if (typeof value === 'object' && value !== null) Object.values(value).forEach(expectFinite);
}

/** Anything JSON can carry: what a wrong client might send in place of a measurement. */
const nonsense = fc.oneof(
  fc.jsonValue({ maxDepth: 2 }),
  fc.constantFrom<unknown>(-1, 1e308, -1e308, 5e-324, 0.1 + 0.2, '', '1/8', [], {}, true, null, 'unknown'),
);

/** Inputs of the right shape in which some values are nonsense. */
const hostileInputsOf = (fields: Fields): fc.Arbitrary<Record<string, unknown>> =>
  fc
    .tuple(inputsOf(fields), fc.dictionary(fc.constantFrom(...Object.keys(fields), 'extra'), nonsense, { maxKeys: 3 }))
    .map(([inputs, wrong]) => ({ ...inputs, ...wrong }));

/** What must hold of every outcome, whatever was put in. */
function expectSound(check: Check, outcome: Outcome): void {
  const answer = toAnswer(outcome, 'es');
  expectFinite(answer);
  expect(JSON.parse(JSON.stringify(answer))).toEqual(answer);
  expect(outcome.reasons.length).toBeGreaterThan(0);
  for (const words of [...outcome.reasons, ...outcome.cautions])
    expect(`${words.en} ${words.es}`).not.toMatch(/NaN|Infinity|undefined|\[object/);
  if (outcome.remaining !== null) {
    expect(outcome.remaining).toBeGreaterThanOrEqual(0);
    expect(outcome.remaining).toBeLessThanOrEqual(1);
  }
  if (outcome.verdict === 'meets' && outcome.ratio !== null) expect(outcome.ratio).toBeLessThanOrEqual(1);
  if (outcome.verdict === 'fails' && outcome.ratio !== null) expect(outcome.ratio).toBeGreaterThan(1);
  if (outcome.missing.length > 0) expect(outcome.verdict).toBe('undetermined');
  for (const id of outcome.repairs) expect(check.repairs).toContain(id);
}

/** The outcome, or undefined where the inputs were refused with a place and words for every issue. */
function outcomeOrRefusal(check: Check, inputs: unknown, edition?: string): Outcome | undefined {
  try {
    return runCheck(check, { inputs, edition });
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    expect(error.issues.length).toBeGreaterThan(0);
    for (const { message, words } of error.issues) {
      expect(message.en).toMatch(/allowed/);
      for (const said of [words.en, words.es]) {
        expect(said).toMatch(/^[^a-z].*\.$/);
        // The names of inputs are written in one word with a capital inside; names people gave stand in quotes.
        expect(said.replace(/ ".*"/gs, '')).not.toMatch(/\b(got|allowed|llegó|permite)\b|[a-z][A-Z]|undefined/);
      }
    }
    return undefined;
  }
}

/** Places that make the same measurement as grave as it can be for a part that carries load. */
const gravePlaces = fc.record({
  storiesAbove: fc.integer({ min: 0, max: 3 }),
  storyShare: fc.double({ min: 0, max: 1, noNaN: true }),
  shored: fc.boolean(),
  memberKind: fc.constantFrom('joist', 'beam', 'post', 'seat', 'engineered'),
} as const);

for (const check of checks) {
  describe(check.id, () => {
    test('an engineer decides only with an engineer among the repairs, wherever the part stands', () => {
      fc.assert(
        fc.property(inputsOf(check.inputs), gravePlaces, (inputs, context) => {
          try {
            const { severity, repairs } = runCheck(check, { inputs, context });
            if (severity === 'engineer') expect(repairs).toContain(ENGINEER_REPAIR);
            expect(new Set(repairs).size).toBe(repairs.length);
          } catch (error) {
            if (!(error instanceof InputError)) throw error;
          }
        }),
      );
    });
    test('any input its schema accepts has a finite outcome that says what the verdict says', () => {
      const editions = fc.constantFrom(undefined, ...check.editions.map((edition) => edition.id));
      fc.assert(
        fc.property(inputsOf(check.inputs), editions, (inputs, edition) => {
          // An edition that the inputs themselves contradict is refused like a wrong input.
          const outcome = outcomeOrRefusal(check, inputs, check.chooseEdition ? undefined : edition);
          if (outcome) expectSound(check, outcome);
        }),
      );
    });
    test('nonsense is refused with its place and what is allowed, and never judged or thrown on', () => {
      fc.assert(
        fc.property(hostileInputsOf(check.inputs), (inputs) => {
          const outcome = outcomeOrRefusal(check, inputs);
          if (outcome) expectSound(check, outcome);
        }),
      );
    });
    test('an unknown name and a wrong type are refused with the place they stand at', () => {
      const inputs = { surprise: 1 };
      expect(() => runCheck(check, { inputs })).toThrow(InputError);
      const [name] = Object.keys(check.inputs);
      try {
        runCheck(check, { inputs: { [name ?? '']: { wrong: 'type' } } });
        expect.unreachable('the wrong type was accepted');
      } catch (error) {
        expect(error).toBeInstanceOf(InputError);
        const [issue] = (error as InputError).issues;
        expect(issue?.path[0]).toBe(name);
        expect(issue?.message.en).toContain(String(name));
        expect(issue?.message.en).toContain('allowed');
      }
    });
  });
}

test('a negative gap, 7 nails of 5 and a length typed as text name the input, what came and what is allowed', () => {
  const hanger = {
    memberWidthIn: 1.5,
    hangerWidthIn: 1.5,
    seatGapIn: 0,
    endGapIn: 0,
    header: { specified: 5, installed: 7 },
    joist: { specified: 6, installed: 6 },
    rightFastener: true,
  };
  const issuesOf = (inputs: unknown) => {
    try {
      evaluateCheck('connection.hanger', { inputs });
    } catch (error) {
      if (error instanceof InputError) return error.issues;
      throw error;
    }
    return [];
  };
  expect(issuesOf(hanger)).toMatchObject([
    { path: ['header', 'installed'], message: { en: 'header.installed: got 7 nails of 5; allowed is at most 5.' } },
  ]);
  const fine = { ...hanger, header: { specified: 5, installed: 5 } };
  expect(issuesOf(fine)).toEqual([]);
  expect(issuesOf({ ...fine, seatGapIn: -1 })[0]?.message.en).toMatch(/seatGapIn .*got -1; allowed is a number from 0/);
  expect(issuesOf({ ...fine, seatGapIn: '1/8' })[0]?.message.en).toMatch(/got "1\/8"/);
});

const share = fc.double({ min: 0, max: 1, noNaN: true });

test('one more good nail never lowers what a panel edge keeps', () => {
  const counts = fc.record({
    flush: fc.nat(80),
    overdrivenSlight: fc.nat(20),
    overdriven: fc.nat(20),
    overdrivenDeep: fc.nat(5),
    nearEdge: fc.nat(10),
    missed: fc.nat(10),
  });
  fc.assert(
    fc.property(counts, fc.integer({ min: 12, max: 600 }), (given, surveyedLengthIn) => {
      const judge = (flush: number) =>
        evaluateCheck('shear-wall.nail-survey', {
          inputs: { panelThicknessIn: 0.5, specifiedSpacingIn: 4, surveyedLengthIn, counts: { ...given, flush } },
        }).remaining ?? 0;
      expect(judge(given.flush + 1)).toBeGreaterThanOrEqual(judge(given.flush));
    }),
  );
});

test('one more nail in a hanger never lowers what it keeps', () => {
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 30 }), fc.nat(29), fc.nat(6), (specified, installed, joistInstalled) => {
      fc.pre(installed < specified);
      const judge = (n: number) =>
        evaluateCheck('connection.hanger', {
          inputs: {
            memberWidthIn: 1.5,
            hangerWidthIn: 1.5,
            seatGapIn: 0,
            endGapIn: 0,
            header: { specified, installed: n },
            joist: { specified: 6, installed: joistInstalled },
            rightFastener: true,
          },
        }).remaining ?? 0;
      expect(judge(installed + 1)).toBeGreaterThanOrEqual(judge(installed));
    }),
  );
});

test('deeper decay, a deeper recess and a deeper plate cut never raise what is kept', () => {
  fc.assert(
    fc.property(share, share, fc.constantFrom('bending', 'post', 'bearing'), (a, b, role) => {
      const [less, more] = a < b ? [a, b] : [b, a];
      const decay = (by: number) =>
        evaluateCheck('decay.section-loss', {
          inputs: { widthIn: 5.5, depthIn: 7.25, lossTopIn: 0, lossBottomIn: by * 7.25, lossSideIn: 0, role },
        }).remaining ?? 0;
      expect(decay(more)).toBeLessThanOrEqual(decay(less));
      const rod = (by: number) =>
        evaluateCheck('anchor.thread-engagement', {
          inputs: { diameterIn: 0.75, nut: 'hex', projectionIn: -by, rule: 'flush' },
        }).remaining ?? 0;
      expect(rod(more)).toBeLessThanOrEqual(rod(less));
      const plate = (by: number) =>
        evaluateCheck('cut.top-plate', {
          inputs: { widthIn: 5.5, cutIn: by * 5.5, bearingOrBraced: true, inShearWall: true },
        }).remaining ?? 0;
      expect(plate(more)).toBeLessThanOrEqual(plate(less));
    }),
  );
});

test('the order of members changes neither verdict nor difference', () => {
  const members = fc.uniqueArray(
    fc.record({ name: fc.constantFrom('A', 'B', 'C', 'D', 'E'), sizeIn: fc.double({ min: 1, max: 20, noNaN: true }) }),
    { minLength: 2, selector: (one) => one.name },
  );
  fc.assert(
    fc.property(members, (given) => {
      const judge = (list: typeof given) => {
        const { verdict, values } = evaluateCheck('movement.shrinkage', {
          inputs: { members: list.map((one) => ({ ...one, kind: 'sawn', fromPct: 19, toPct: 9 })), toleranceIn: 0.125 },
        });
        return { verdict, differential: values.differentialIn };
      };
      expect(judge([...given].reverse())).toEqual(judge(given));
    }),
  );
});

test('removing any needed measurement leaves the verdict undetermined and names it', async () => {
  for (const check of checks) {
    const { cases } = await check.cases();
    const decided = cases.find((one) => one.expect.verdict === 'fails') ?? cases[0];
    const full = decided?.inputs as Record<string, unknown>;
    for (const [name, field] of Object.entries(check.inputs)) {
      if (field.needed !== undefined || 'default' in field) continue;
      const { [name]: _gone, ...rest } = full;
      const outcome = runCheck(check, { inputs: rest });
      expect(outcome.verdict, `${check.id} without ${name}`).toBe('undetermined');
      expect(outcome.missing).toContain(name);
    }
  }
});

test('an input left out takes its default', () => {
  const outcome = evaluateCheck('anchor.thread-engagement', {
    inputs: { diameterIn: 0.625, nut: 'hex', projectionIn: 0 },
  });
  expect(outcome.verdict).toBe('meets');
});
