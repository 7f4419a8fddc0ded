import { describe, expect, test } from 'vitest';
import { checks } from './all-checks.ts';
import { describeCheck } from './judging/describe.ts';
import { editionFamilies } from './judging/editions.ts';
import { runCheck } from './judging/run-check.ts';
import { type Check, type CheckEvidence, type Fields, holds, type Text } from './kernel/index.ts';
import { repairs } from './repairs/registry.ts';

/** By these words a source or a case says itself that somebody else's telling of the document was read. */
const NOT_READ = /second-hand|quote|transcri|summar|sum(s|med)? .*up|abstract|not read/i;

/** What makes a check unfit for the registry. Cases with a published origin are counted in the handbook, not asked for. */
function faults(check: Pick<Check, 'sources'>, { cases, values }: Pick<CheckEvidence, 'cases' | 'values'>): string[] {
  const found: string[] = [];
  const verdicts = new Set(cases.map((one) => one.expect.verdict));
  if (check.sources.length === 0) found.push('no sources');
  for (const source of check.sources)
    for (const part of ['id', 'title', 'edition', 'section', 'basis'] as const)
      if (!source[part]) found.push(`source ${source.title} without ${part}`);
  for (const { basis, title, edition, section } of check.sources)
    if (basis === 'published' && NOT_READ.test([title, edition, section].join()))
      found.push(`called published, and says it was not read: ${title}`);
  if (Object.keys(values).length === 0) found.push('no words for its values');
  if (!verdicts.has('undetermined')) found.push('no case that cannot be told');
  for (const one of cases) {
    if (one.source.trim() === '') found.push(`case without a source: ${one.name}`);
    if (one.origin === 'published' && NOT_READ.test(one.source))
      found.push(`called published, and says it was not read: ${one.name}`);
    if (one.tolerance && one.tolerance.reason.trim().length < 10) found.push(`unexplained tolerance: ${one.name}`);
  }
  return found;
}

/** Checks that can never meet or fail; each says why in its own words. */
const NEVER_DECIDES = new Set(['cut.engineered']);

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
  const evidence = await check.cases();
  const verdicts = evidence.cases.map((one) => one.expect.verdict);
  describe(check.id, () => {
    test('has sources, words for its values and explained tolerances, and calls published only what was read', () => {
      expect(faults(check, evidence)).toEqual([]);
    });
    test('has a case that meets, one that fails, and one exactly at a limit', () => {
      if (NEVER_DECIDES.has(check.id)) return expect(new Set(verdicts)).toEqual(new Set(['undetermined']));
      expect(verdicts).toContain('fails');
      expect(verdicts).toContain('meets');
      expect(evidence.cases.filter((one) => /exactly|just|at the limit|equal/i.test(one.name))).not.toEqual([]);
    });
    test('names every value it answers', () => {
      for (const one of evidence.cases) {
        const { values } = runCheck(check, { edition: one.edition, inputs: one.inputs, context: one.situation });
        for (const name of Object.keys(values)) expect(evidence.values).toHaveProperty([name.split('.')[0] ?? name]);
      }
    });
    test('has words in both languages', () => {
      for (const words of [
        ...textsOf(check.inputs),
        ...textsOf(check.client),
        check.title,
        check.question,
        ...textsOf(evidence.values),
        evidence.rule,
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
    test('is held to the newest edition of its document when nobody names one', () => {
      const family = editionFamilies([check]).find(({ editions }) =>
        editions.some(({ id }) => id === check.defaultEdition),
      );
      if (family) expect(check.defaultEdition).toBe(family.editions[0]?.id);
      else expect(check.editions.map(({ id }) => id)).toContain(check.defaultEdition);
    });
    test('describes itself as plain JSON', async () => {
      const description = await describeCheck(check, 'es');
      expect(JSON.parse(JSON.stringify(description))).toEqual(description);
      expect(description.cases.length).toBe(evidence.cases.length);
    });
  });
}

test('a check without sources, words or a reason for its tolerance is refused, and so is a quotation called published', async () => {
  const [good] = checks;
  if (!good) throw new Error('The registry is empty');
  const { cases, values } = await good.cases();
  const [first] = cases;
  if (!first) throw new Error('The first check has no case');
  expect(faults(good, { cases, values })).toEqual([]);
  expect(faults(good, { cases: [], values })).toEqual(['no case that cannot be told']);
  expect(faults({ sources: [] }, { cases, values })).toEqual(['no sources']);
  const [source] = good.sources;
  if (!source) throw new Error('The first check has no source');
  expect(faults({ sources: [{ ...source, section: '' }] }, { cases, values })).toEqual([
    `source ${source.title} without section`,
  ]);
  expect(faults(good, { cases, values: {} })).toEqual(['no words for its values']);
  const quoted = { ...source, basis: 'published', edition: '2018, as quoted' } as const;
  expect(faults({ sources: [quoted] }, { cases, values })).toEqual([
    `called published, and says it was not read: ${quoted.title}`,
  ]);
  expect(faults({ sources: [{ ...quoted, basis: 'second-hand' }] }, { cases, values })).toEqual([]);
  const told = { ...first, name: 'a case', origin: 'published', source: 'Table 1 (second-hand)' } as const;
  expect(faults(good, { cases: [...cases, told], values })).toEqual([
    'called published, and says it was not read: a case',
  ]);
  expect(faults(good, { cases: [...cases, { ...told, origin: 'second-hand' }], values })).toEqual([]);
  const lax = { ...first, tolerance: { within: 1, reason: '' } };
  expect(faults(good, { cases: [...cases, lax], values })).toEqual([`unexplained tolerance: ${first.name}`]);
});
