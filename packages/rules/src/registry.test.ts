import { describe, expect, test } from 'vitest';
import { describeCheck } from './describe.ts';
import { type Check, type Fields, holds, type Text } from './kernel/index.ts';
import { checks } from './registry.ts';
import { repairs } from './repairs/registry.ts';

const verdictsOf = (check: Check) => new Set(check.cases.map((one) => one.expect.verdict));

/** What makes a check unfit for the registry. */
function faults(check: Check): string[] {
  const found: string[] = [];
  if (check.cases.length === 0) found.push('no cases');
  if (check.sources.length === 0) found.push('no sources');
  for (const one of check.cases) {
    if (one.source.trim() === '') found.push(`case without a source: ${one.name}`);
    if (one.tolerance && one.tolerance.reason.trim().length < 10) found.push(`unexplained tolerance: ${one.name}`);
  }
  return found;
}

function textsOf(value: unknown): Text[] {
  if (typeof value !== 'object' || value === null) return [];
  if (Array.isArray(value)) return value.flatMap(textsOf);
  const record = value as Record<string, unknown>;
  if (typeof record.en === 'string') return [record as unknown as Text];
  return Object.values(record).flatMap(textsOf);
}

function conditionInputs(fields: Fields): { field: string; asks: string[] }[] {
  const names = (condition: unknown): string[] => {
    if (typeof condition !== 'object' || condition === null) return [];
    if (Array.isArray(condition)) return condition.flatMap(names);
    return Object.entries(condition).flatMap(([key, value]) => (key === 'input' ? [String(value)] : names(value)));
  };
  return Object.entries(fields).flatMap(([field, spec]) => [
    { field, asks: [...names(spec.needed), ...names(spec.showWhen)] },
    ...(spec.kind === 'group' ? conditionInputs(spec.fields) : spec.kind === 'list' ? conditionInputs(spec.item) : []),
  ]);
}

test('every check has its own id, written element.aspect', () => {
  const ids = checks.map((check) => check.id);
  expect(new Set(ids).size).toBe(ids.length);
  for (const id of ids) expect(id).toMatch(/^[a-z-]+\.[a-z-]+$/);
});

for (const check of checks) {
  describe(check.id, () => {
    test('has cases, sources and explained tolerances', () => {
      expect(faults(check)).toEqual([]);
    });
    test('has a case that meets, one that fails and one that cannot be told', () => {
      const verdicts = verdictsOf(check);
      expect(verdicts).toContain('fails');
      expect(verdicts).toContain('meets');
      expect(verdicts).toContain('undetermined');
    });
    test('has words in both languages', () => {
      for (const words of [
        ...textsOf(check.inputs),
        ...textsOf(check.client),
        check.title,
        check.question,
        ...check.doesNotCover,
      ]) {
        expect(words.en.trim()).not.toBe('');
        expect(words.es.trim()).not.toBe('');
      }
    });
    test('asks in its conditions only about inputs that stand beside them', () => {
      const beside = (fields: Fields): void => {
        for (const spec of Object.values(fields)) {
          if (spec.kind === 'group') beside(spec.fields);
          if (spec.kind === 'list') beside(spec.item);
          for (const condition of [spec.showWhen, typeof spec.needed === 'object' ? spec.needed.when : undefined])
            if (condition) expect(() => holds(condition, {})).not.toThrow();
        }
      };
      beside(check.inputs);
      const known = new Set(conditionInputs(check.inputs).map((one) => one.field));
      for (const { asks } of conditionInputs(check.inputs)) for (const name of asks) expect(known).toContain(name);
    });
    test('names repairs that exist and its default edition', () => {
      for (const id of check.repairs) expect(repairs.map((repair) => repair.id)).toContain(id);
      expect(check.editions.map((edition) => edition.id)).toContain(check.defaultEdition);
    });
    test('describes itself as plain JSON', () => {
      const description = describeCheck(check, 'es');
      expect(JSON.parse(JSON.stringify(description))).toEqual(description);
      expect(description.cases.length).toBe(check.cases.length);
    });
  });
}

test('a check without cases, sources or a reason for its tolerance is refused', () => {
  const [good] = checks;
  if (!good) throw new Error('The registry is empty');
  const [firstCase] = good.cases;
  if (!firstCase) throw new Error('The first check has no case');
  expect(faults({ ...good, cases: [] })).toEqual(['no cases']);
  expect(faults({ ...good, sources: [] })).toEqual(['no sources']);
  const lax = { ...firstCase, tolerance: { within: 1, reason: '' } };
  expect(faults({ ...good, cases: [lax] })).toEqual([`unexplained tolerance: ${firstCase.name}`]);
});
