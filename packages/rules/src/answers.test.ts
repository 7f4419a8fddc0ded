import { expect, test } from 'vitest';
import { checks } from './all-checks.ts';
import { runCheck } from './judging/run-check.ts';
import type { Check } from './kernel/index.ts';

/** Every answer a check gives to its own cases, in plain text: what is measured, found and said does not change unnoticed. */
async function answersOf(check: Check): Promise<string> {
  const { cases } = await check.cases();
  return cases
    .map((one) => {
      const outcome = runCheck(check, { edition: one.edition, inputs: one.inputs, context: one.situation });
      const { values, reasons, cautions, sources, rulesVersion: _version, ...rest } = outcome.toJSON();
      return [
        `# ${one.name}`,
        ...Object.entries(rest).map(([name, value]) => `${name}: ${JSON.stringify(value)}`),
        ...Object.entries(values).map(([name, { value, unit }]) => `  ${name} = ${tidy(value)} ${unit}`),
        ...[...reasons, ...cautions].map((words) => `  ${words.en} | ${words.es}`),
        ...sources.map(
          (source) => `  [${source.id}] ${source.title}, ${source.edition}, ${source.section} (${source.basis})`,
        ),
        `client: ${JSON.stringify(check.client.found(check.read(one.inputs).inputs, outcome))}`,
      ].join('\n');
    })
    .join('\n\n');
}

/** Twelve digits: the last few differ between processors' mathematics. */
const tidy = (value: number | string | boolean): string | boolean =>
  typeof value === 'number' ? String(Number(value.toPrecision(12))) : value;

for (const check of checks) {
  test(`${check.id} answers its cases as it did before`, async () => {
    await expect(await answersOf(check)).toMatchFileSnapshot(`./checks/${check.id.replace('.', '/')}.answers.txt`);
  });
}
