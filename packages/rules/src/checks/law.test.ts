import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { checks } from '../all-checks.ts';
import { InputError, runCheck } from '../judging/run-check.ts';
import {
  assume,
  type Check,
  defineCheck,
  type Field,
  type Fields,
  flag,
  length,
  type Outcome,
  SEVERITIES,
  type Situation,
  text,
} from '../kernel/index.ts';

/**
 * No answer is kinder than what was seen: leaving an input out is never kinder than its worst value, unless the answer
 * lists what it assumes or asks for that input.
 */

type Step = string | number;
interface OptionalInput {
  readonly path: readonly Step[];
  readonly field: Field;
}

/** Every place of these inputs where a field may be left out without being asked for. */
function optionalInputs(
  fields: Fields,
  inputs: Readonly<Record<string, unknown>>,
  at: readonly Step[] = [],
): OptionalInput[] {
  return Object.entries(fields).flatMap(([name, field]): OptionalInput[] => {
    const path = [...at, name];
    const value = inputs[name];
    const here = (field.needed ?? 'always') !== 'always' || hasDefault(field) ? [{ path, field }] : [];
    if (field.kind === 'group' && isRecord(value)) return [...here, ...optionalInputs(field.fields, value, path)];
    if (field.kind === 'list' && Array.isArray(value))
      return [
        ...here,
        ...value.flatMap((item, nth) => (isRecord(item) ? optionalInputs(field.item, item, [...path, nth]) : [])),
      ];
    return here;
  });
}

const hasDefault = (field: Field): boolean => 'default' in field && field.default !== undefined;

const isRecord = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** The inputs with one value set, or left out. */
function withValue(inputs: unknown, [step, ...rest]: readonly Step[], value: unknown): unknown {
  if (step === undefined) return value;
  if (Array.isArray(inputs)) return inputs.map((item, at) => (at === step ? withValue(item, rest, value) : item));
  return { ...(inputs as object), [step]: withValue((inputs as Record<string, unknown>)[String(step)], rest, value) };
}

/** Values to try: every answer of a choice, the ends of a range and much between. */
function valuesOf(field: Field): unknown[] {
  switch (field.kind) {
    case 'choice':
      return field.options.map(({ value }) => value);
    case 'flag':
      return [true, false];
    case 'count':
      return [...new Set([field.min ?? 0, 0, 1, 2, 3, 5, 20, field.max ?? 60])].filter(
        (value) => value >= (field.min ?? 0) && value <= (field.max ?? 100_000),
      );
    case 'length':
    case 'number':
      if (field.kind === 'length' && field.oneOf) return [...field.oneOf];
      return [field.min, 0, 0.05, 0.25, 0.5, 1, 1.5, 2, 3.5, 6, 9, 12, 28, 60, 120, 400, 1200, 5000, field.max].filter(
        (value) => value >= field.min && value <= field.max,
      );
    case 'list':
      return [[], ...itemsOf(field.item).map((item) => [item])];
    case 'group':
      return itemsOf(field.fields);
    case 'name':
      return ['A'];
  }
}

/** The first, second, … value of every field together, as an item of a list or a group. */
function itemsOf(fields: Fields): Record<string, unknown>[] {
  const columns = Object.entries(fields).map(([name, field]) => ({ name, values: valuesOf(field) }));
  const most = Math.max(...columns.map(({ values }) => values.length));
  return Array.from({ length: most }, (_, at) =>
    Object.fromEntries(columns.map(({ name, values }) => [name, values[Math.min(at, values.length - 1)]])),
  );
}

function outcomeOf(check: Check, inputs: unknown, edition: string | undefined, context: Situation | undefined) {
  try {
    return runCheck(check, { inputs, edition, context }).toJSON();
  } catch (error) {
    if (error instanceof InputError) return undefined;
    throw error;
  }
}

const HARDNESS = { fails: 0, undetermined: 1, meets: 2, 'not-applicable': 2 } as const;

/** It fails already, where with the input it only cannot be told until something else is measured. */
const failsAtOnce = (without: Outcome, given: Outcome): boolean =>
  without.verdict === 'fails' && given.verdict === 'undetermined' && given.missing.length > 0;

/** In what an answer without the input is kinder than one with it. */
function kindness(without: Outcome, given: Outcome): string[] {
  if (failsAtOnce(without, given)) return [];
  return [
    ...(HARDNESS[without.verdict] > HARDNESS[given.verdict] ? [`${without.verdict} for ${given.verdict}`] : []),
    ...(SEVERITIES.indexOf(without.severity) > SEVERITIES.indexOf(given.severity)
      ? [`${without.severity} for ${given.severity}`]
      : []),
    ...(without.remaining !== null && given.remaining !== null && without.remaining > given.remaining + 1e-9
      ? [`${without.remaining} left for ${given.remaining}`]
      : []),
  ];
}

/** Whether the input that this one stands in for is asked for while both are left out. */
const asksInstead = (without: Outcome, given: Outcome): boolean =>
  without.missing.some((name) => !given.missing.includes(name));

/** Where an input left out is kinder than a value it can have, and nobody says so. */
function breaches(check: Check, inputs: Record<string, unknown>, edition?: string, context?: Situation): string[] {
  return optionalInputs(check.inputs, inputs).flatMap(({ path, field }) => {
    const without = outcomeOf(check, withValue(inputs, path, undefined), edition, context);
    const name = path.join('.');
    if (!without || without.missing.includes(name)) return [];
    if (without.assumed?.some((one) => one.input === name)) return [];
    const found = valuesOf(field).flatMap((value) => {
      const given = outcomeOf(check, withValue(inputs, path, value), edition, context);
      return given && !asksInstead(without, given)
        ? kindness(without, given).map((how) => `${name} left out: ${how} with ${JSON.stringify(value)}`)
        : [];
    });
    return found.slice(0, 1);
  });
}

/** Any value a field accepts, near those a tape would show. */
function anyValueOf(field: Field): fc.Arbitrary<unknown> {
  if (field.kind === 'group') return inputsOf(field.fields);
  if (field.kind === 'list')
    return fc.array(inputsOf(field.item), { minLength: Math.max(1, field.minItems ?? 0), maxLength: 3 });
  if (field.kind === 'name') return fc.constantFrom('A', 'B', 'C');
  return fc.constantFrom(...valuesOf(field));
}
const inputsOf = (fields: Fields): fc.Arbitrary<Record<string, unknown>> =>
  fc.record(Object.fromEntries(Object.entries(fields).map(([name, field]) => [name, anyValueOf(field)])), {
    requiredKeys: [],
  });

for (const check of checks) {
  describe(check.id, () => {
    test('no worked case becomes kinder when an input is left out', async () => {
      const { cases } = await check.cases();
      const found = cases.flatMap((one) =>
        breaches(check, one.inputs as Record<string, unknown>, one.edition, one.situation).map(
          (how) => `${one.name}: ${how}`,
        ),
      );
      expect(found).toEqual([]);
    });
    test('nothing its schema accepts becomes kinder when an input is left out', () => {
      fc.assert(
        fc.property(inputsOf(check.inputs), (inputs) => {
          expect(breaches(check, inputs)).toEqual([]);
        }),
      );
    });
  });
}

describe('a check of its own', () => {
  const [like] = checks;
  if (!like) throw new Error('The registry is empty');
  const isWet = { label: text('Wet?', '¿Mojado?'), needed: 'optional' } as const;
  /** Fails when it is wet; says nothing of what it takes while nobody looked, unless the field does. */
  const wetness = (field: ReturnType<typeof flag>) =>
    defineCheck({
      ...like,
      role: 'lateral',
      inputs: { depthIn: length({ unit: 'in', min: 0, max: 12, label: text('Depth', 'Fondo') }), isWet: field },
      refine: () => [],
      chooseEdition: () => like.defaultEdition,
      knownAlready: () => undefined,
      client: { ...like.client, found: () => text('Wet.', 'Mojado.') },
      evaluate: (given) => ({
        verdict: given.isWet ? 'fails' : 'meets',
        remaining: given.isWet ? 0.5 : 1,
        reasons: () => [text('Looked.', 'Se miró.')],
      }),
    });
  const dry = { depthIn: 3 };

  test('that is kinder while an input is left out is told apart from one that is not', () => {
    expect(breaches(wetness(flag(isWet)), dry)).toEqual(['isWet left out: meets for fails with true']);
    expect(breaches(wetness(flag({ ...isWet, hardest: true })), dry)).toEqual([]);
    expect(breaches(wetness(flag({ ...isWet, assumes: assume(text('Dry.', 'Seco.')) })), dry)).toEqual([]);
  });

  test('tries every answer of an input that takes the hardest, and says which it took', () => {
    const check = wetness(flag({ ...isWet, hardest: true }));
    const left = runCheck(check, { inputs: dry });
    expect(left).toMatchObject({ verdict: 'fails', remaining: 0.5, severity: 'engineer' });
    expect(left.assumed).toMatchObject([{ input: 'isWet', text: { en: expect.stringContaining('yes') } }]);
    expect(left.sources.map(({ id }) => id)).toContain('screening-practice');
    expect(runCheck(check, { inputs: { ...dry, isWet: false } })).toMatchObject({ verdict: 'meets', assumed: [] });
  });

  test('lists nothing it assumes once it fails as gravely as it can and nothing is left', () => {
    const check = wetness(flag({ ...isWet, assumes: assume(text('Dry.', 'Seco.')) }));
    const gone = { ...check, evaluate: () => ({ verdict: 'fails', remaining: 0, reasons: () => [] }) as const };
    expect(runCheck(gone, { inputs: dry })).toMatchObject({ severity: 'engineer', assumed: [] });
    const half = { ...check, evaluate: () => ({ verdict: 'fails', remaining: 0.5, reasons: () => [] }) as const };
    expect(runCheck(half, { inputs: dry }).assumed).toMatchObject([{ input: 'isWet' }]);
  });

  test('lists what it assumes only while the input is left out', () => {
    const check = wetness(flag({ ...isWet, assumes: assume(text('Dry.', 'Seco.')) }));
    expect(runCheck(check, { inputs: { ...dry, isWet: 'unknown' } }).assumed).toMatchObject([{ input: 'isWet' }]);
    expect(runCheck(check, { inputs: { ...dry, isWet: false } }).assumed).toEqual([]);
  });
});
