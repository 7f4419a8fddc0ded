import { describe, expect, test } from 'vitest';
import { checks } from '../all-checks.ts';
import { InputError, runCheck } from '../judging/run-check.ts';
import type { Check, CheckCase, Fields, Reason } from '../kernel/index.ts';

type Path = readonly (string | number)[];
interface Leaf {
  readonly path: Path;
  readonly min: number;
  readonly max: number;
}
type Judged = { readonly fails: boolean; readonly reasons: readonly Reason[] };

const DECIDED = new Set(['meets', 'fails']);
const MOST_CASES = 8;

/** Every measured number in the inputs of a case, with the range its field allows. */
function leavesOf(fields: Fields, inputs: unknown, path: Path = []): Leaf[] {
  return Object.entries(fields).flatMap(([name, field]): Leaf[] => {
    const value = (inputs as Record<string, unknown> | undefined)?.[name];
    const here = [...path, name];
    if (field.kind === 'group') return leavesOf(field.fields, value, here);
    if (field.kind === 'list')
      return Array.isArray(value) ? value.flatMap((item, at) => leavesOf(field.item, item, [...here, at])) : [];
    if (field.kind !== 'length' && field.kind !== 'number') return [];
    if ((field.kind === 'length' && field.oneOf) || typeof value !== 'number') return [];
    return [{ path: here, min: field.min, max: field.max }];
  });
}

function withValue(inputs: unknown, [step, ...rest]: Path, value: number): unknown {
  if (step === undefined) return value;
  const copy = (Array.isArray(inputs) ? [...inputs] : { ...(inputs as object) }) as Record<string | number, unknown>;
  copy[step] = withValue(copy[step], rest, value);
  return copy;
}

/** The verdict with one number changed; undefined where that number is refused or nothing can be told. */
function judgeWith(check: Check, one: CheckCase, leaf: Leaf, value: number): Judged | undefined {
  try {
    const inputs = withValue(one.inputs, leaf.path, value);
    const { verdict, reasons } = runCheck(check, { edition: one.edition, inputs, context: one.situation });
    return DECIDED.has(verdict) ? { fails: verdict === 'fails', reasons } : undefined;
  } catch (error) {
    if (error instanceof InputError) return undefined;
    throw error;
  }
}

/** Values spread over the range, close together near zero where limits mostly lie. */
const spread = ({ min, max }: Leaf): number[] =>
  Array.from({ length: 24 }, (_, at) => min + (max - min) * (at / 23) ** 3);

/** The values just past every limit that this number crosses. */
function justPast(check: Check, one: CheckCase, leaf: Leaf): number[] {
  const tried = spread(leaf).map((value) => ({ value, fails: judgeWith(check, one, leaf, value)?.fails }));
  return tried.slice(1).flatMap((after, at) => {
    const before = tried[at];
    if (before?.fails === undefined || after.fails === undefined || before.fails === after.fails) return [];
    let [holding, failing] = before.fails ? [after.value, before.value] : [before.value, after.value];
    for (let step = 0; step < 50; step++) {
      const middle = (holding + failing) / 2;
      if (judgeWith(check, one, leaf, middle)?.fails === true) failing = middle;
      else holding = middle;
    }
    const away = Math.sign(failing - holding) || 1;
    return [0, 1e-7, 1e-5, 1e-4, 1e-3, 1e-2].map((by) => failing + away * by * (1 + Math.abs(failing)));
  });
}

const FIGURE = /(?:\d+'-)?(?:\d+ )?(?:\d+\/\d+|\d[\d,]*(?:\.\d+)?)(?:"| ?%| ?(?:in|lb|plf|SF|ft)\b)?/g;
const JUST_PAST = new RegExp(`(?:a little (?:over|under)|un poco (?:más|menos) de) ${FIGURE.source}`, 'g');

/** The figures of a sentence, less those that stand in it twice without being a measure and its limit. */
function figuresIn(sentence: string): string[] {
  const plain = sentence
    .replace(/\d+ (of|de) \d+/g, '')
    .replace(/\d+ x [\d,.]+ lb = /g, '')
    .replace(/\d+% (confidence|de confianza)/g, '')
    .replace(JUST_PAST, '');
  return (plain.match(FIGURE) ?? []).map((figure) => figure.replace(/[,]/g, ''));
}

const repeated = (figures: readonly string[]): string[] =>
  figures.filter((figure, at) => figures.indexOf(figure) !== at);

const told = (reasons: readonly Reason[]): boolean[] => reasons.map((reason) => reason.fails === true);

let limitsFound = 0;
for (const check of checks) {
  const { cases } = await check.cases();
  describe(check.id, () => {
    test('says first what does not hold, and says it of nothing that meets', () => {
      for (const one of cases) {
        const { verdict, reasons } = runCheck(check, {
          edition: one.edition,
          inputs: one.inputs,
          context: one.situation,
        });
        const fails = told(reasons);
        expect(fails, one.name).toEqual(fails.toSorted((a, b) => Number(b) - Number(a)));
        if (DECIDED.has(verdict)) expect(fails[0], one.name).toBe(verdict === 'fails');
      }
    });
    test('says nothing twice, ends no question with a period, and asks only for what it names as missing', () => {
      for (const one of cases) {
        const { missing, reasons, verdict } = runCheck(check, {
          edition: one.edition,
          inputs: one.inputs,
          context: one.situation,
        });
        const said = reasons.map(({ en }) => en);
        expect(said, one.name).toEqual([...new Set(said)]);
        expect(
          reasons.filter(({ en, es }) => /[?!]\./.test(`${en} ${es}`)),
          one.name,
        ).toEqual([]);
        if (verdict !== 'undetermined') continue;
        const asks = said.some((words) => /measured|measure what is missing|give the load/.test(words));
        expect(asks, `${one.name}: ${said.join(' ')}`).toBe(missing.length > 0);
      }
    });
    test('prints no measure like the limit it just passes', () => {
      for (const one of cases.filter(({ expect: { verdict } }) => DECIDED.has(verdict)).slice(0, MOST_CASES))
        for (const leaf of leavesOf(check.inputs, one.inputs))
          for (const value of justPast(check, one, leaf)) {
            const judged = judgeWith(check, one, leaf, value);
            if (!judged?.fails) continue;
            limitsFound++;
            const wrong = judged.reasons.filter(({ fails }) => fails);
            expect(wrong, `${one.name}, ${leaf.path.join('.')} ${value}`).not.toEqual([]);
            for (const { en, es } of wrong)
              expect(
                [en, es].flatMap((said) => repeated(figuresIn(said))),
                `${en} | ${es}`,
              ).toEqual([]);
          }
    });
  });
}

test('a measure printed like its limit is found', () => {
  expect(repeated(figuresIn('Notch: 7/8"; at most 7/8".'))).toEqual(['7/8"']);
  expect(repeated(figuresIn('The bolts take 1 x 300 lb = 300 lb; the load is 300 lb.'))).toEqual(['300 lb']);
  expect(limitsFound).toBeGreaterThan(500);
});
