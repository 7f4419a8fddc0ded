import { inputLabels, keysOf, letterAt } from '../drawing/lay-out.ts';
import { drawingToSvg } from '../drawing/svg.ts';
import { checksByElement } from '../elements.ts';
import {
  allowedWords,
  BASIS_WORDS,
  type Check,
  type CheckEvidence,
  type Drawing,
  type Field,
  type Fields,
  joinTexts,
  leftOutWords,
  type Source,
  type Text,
  VERDICT_WORDS,
} from '../kernel/index.ts';
import { bullets, table } from './markdown.ts';
import { overview, tallyWords } from './overview.ts';
import { runCase } from './run-case.ts';
import { tallyCheck } from './tally.ts';

/** A generated file: its path beside the handbook, and what stands in it. */
export interface HandbookFile {
  readonly path: string;
  readonly content: string;
}

const INTRODUCTION = `# Every check

Made by \`npm run handbook\` from the checks themselves; a test holds it to them. Each of these can be tried on the page \`/checks\` of the running program, without an account.

**Screening only.** These checks report measurements against rules. Structural decisions belong to a licensed engineer and the building official; local codes govern. Of each source it is said what was read: "published" is the document itself or an official reprint of it, "second-hand" a quotation, summary or abstract. A rule "from memory" has to be confirmed in its document first; one of "common practice" has no published source that is known.
`;

/** The handbook of these checks in English: \`CHECKS.md\` and one drawing for each check. */
export async function handbook(checks: readonly Check[]): Promise<HandbookFile[]> {
  const parts = [INTRODUCTION, await overview(checks)];
  const drawings: HandbookFile[] = [];
  for (const { name, checks: group } of checksByElement(checks)) {
    parts.push(`## ${name.en}\n`);
    for (const check of group) {
      const [evidence, { drawing }] = await Promise.all([check.cases(), check.drawing()]);
      const path = `drawings/${check.id}.svg`;
      const labels = inputLabels(check.inputs, 'en');
      drawings.push({ path, content: `${drawingToSvg(drawing, { locale: 'en', labels })}\n` });
      parts.push(sheet(check, evidence, drawing, path));
    }
  }
  return [{ path: 'CHECKS.md', content: parts.join('\n') }, ...drawings];
}

function sheet(check: Check, evidence: CheckEvidence, drawing: Drawing, picture: string): string {
  const keys = keysOf(drawing);
  const letterOf = (path: string): string => (keys.includes(path) ? letterAt(keys.indexOf(path)) : '');
  const values = Object.entries(evidence.values).map(([name, { label, how }]) => [`\`${name}\``, label.en, how.en]);
  return [
    `### ${check.title.en}`,
    `\`${check.id}\`. ${check.question.en}`,
    `![${drawing.title.en}](${picture})`,
    `**The rule.** ${evidence.rule.en} ${check.client.why.en}`,
    table(['On the drawing', 'Measurement', 'Takes', 'How'], measurements(check.inputs, letterOf)),
    table(['Value', 'What it is', 'How it is worked out'], values),
    `**Editions:** ${check.editions.map(({ title }) => title.en).join('; ')}.`,
    `**Sources**\n\n${bullets(check.sources.map(sourceWords))}`,
    tallyWords(tallyCheck(check, evidence)),
    `**Worked cases**\n\n${bullets(evidence.cases.map((one) => caseWords(check, one)))}`,
    `**What it does not cover**\n\n${bullets(check.doesNotCover.map(({ en }) => en))}`,
    '',
  ].join('\n\n');
}

/** Every input in a row, parts of groups and lists under their own with the path they have in the API. */
function measurements(fields: Fields, letterOf: (path: string) => string, before = ''): string[][] {
  return Object.entries(fields).flatMap(([name, field]) => {
    const path = before + name;
    const parts = field.kind === 'group' ? field.fields : field.kind === 'list' ? field.item : {};
    const label = `${field.label.en} (\`${path}\`)${field.needed === 'optional' ? ', if known' : ''}`;
    return [
      [letterOf(path), label, allowedWords(field).en, joinTexts(howWords(field)).en],
      ...measurements(parts, letterOf, `${path}.`),
    ];
  });
}

const howWords = (field: Field): Text[] =>
  [field.howToMeasure, leftOutWords(field)].filter((words) => words !== undefined);

const sourceWords = ({ title, edition, section, basis }: Source): string => {
  const words = BASIS_WORDS[basis].en;
  return `${[title, edition, section].filter(Boolean).join(', ')}: ${basis === 'published' ? words.toLowerCase() : `**${words}**`}`;
};

const ORIGINS = {
  published: 'published',
  'second-hand': '**second-hand**',
  memory: '**from memory, confirm**',
  'hand-worked': 'worked by hand',
  'common-practice': 'common practice',
} as const;

/** @throws Error when the case does not give what it says: the handbook lists no case that fails */
function caseWords(check: Check, one: CheckEvidence['cases'][number]): string {
  const { outcome, differences } = runCase(check, one);
  if (differences.length > 0) throw new Error(`${check.id}, "${one.name}": ${differences.join('; ')}`);
  return `${one.name}: ${VERDICT_WORDS[outcome.verdict].en.toLowerCase()} (${ORIGINS[one.origin]}: ${one.source})`;
}
