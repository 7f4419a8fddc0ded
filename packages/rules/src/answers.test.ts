import { beforeAll, expect, test } from 'vitest';
import { checks } from './all-checks.ts';
import { runCheck } from './judging/run-check.ts';
import type { Check } from './kernel/index.ts';

/** One case of a check with its answer, a line a part. What several checks say alike stands in lines that begin with `common`. */
interface Answer {
  readonly own: string[];
  readonly common: string[];
  readonly client: string;
}

// Every answer a check gives to its own cases, in plain text: what is measured, found and said does not change unnoticed.
// Sentences and sources that more than one check gives are kept once, so that a reworded caution changes one file.
const answers = new Map<string, Answer[]>();
let shared: string[] = [];

beforeAll(async () => {
  for (const check of checks) answers.set(check.id, await answersOf(check));
  const saidBy = new Map<string, Set<string>>();
  for (const [id, all] of answers)
    for (const line of all.flatMap(({ common }) => common)) saidBy.set(line, (saidBy.get(line) ?? new Set()).add(id));
  shared = [...saidBy].filter(([, ids]) => ids.size > 1).map(([line]) => line);
});

async function answersOf(check: Check): Promise<Answer[]> {
  const { cases } = await check.cases();
  return cases.map((one) => {
    const outcome = runCheck(check, { edition: one.edition, inputs: one.inputs, context: one.situation });
    const { values, reasons, cautions, sources, assumed = [], rulesVersion: _version, ...rest } = outcome.toJSON();
    return {
      own: [
        `# ${one.name}`,
        ...Object.entries(rest).map(([name, value]) => `${name}: ${JSON.stringify(value)}`),
        ...Object.entries(values).map(([name, { value, unit }]) => `  ${name} = ${tidy(value)} ${unit}`),
      ],
      common: [
        ...(assumed ?? []).map((one) => `assumed ${JSON.stringify(one)}`),
        ...[...reasons, ...cautions].map((words) => `${words.en} | ${words.es}`),
        ...sources.map(
          (source) => `[${source.id}] ${source.title}, ${source.edition}, ${source.section} (${source.basis})`,
        ),
      ],
      client: `client: ${JSON.stringify(check.client.found(check.read(one.inputs).inputs, outcome))}`,
    };
  });
}

/** Twelve digits: the last few differ between processors' mathematics. */
const tidy = (value: number | string | boolean): string | boolean =>
  typeof value === 'number' ? String(Number(value.toPrecision(12))) : value;

/** By its place among the shared lines, which stays when its words change. */
const lineOf = (line: string): string => {
  const at = shared.indexOf(line);
  return at === -1 ? line : `shared ${at + 1}`;
};

test('what several checks say is said as it was before', async () => {
  const lines = shared.map((line, at) => `${at + 1}  ${line}`);
  await expect(`${lines.join('\n')}\n`).toMatchFileSnapshot('./checks/shared.answers.txt');
});

for (const check of checks) {
  test(`${check.id} answers its cases as it did before`, async () => {
    const text = answers
      .get(check.id)
      ?.map(({ own, common, client }) => [...own, ...common.map((line) => `  ${lineOf(line)}`), client].join('\n'))
      .join('\n\n');
    await expect(text).toMatchFileSnapshot(`./checks/${check.id.replace('.', '/')}.answers.txt`);
  });
}
