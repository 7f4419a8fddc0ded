import { BASES, type Check, SEVERITIES, SEVERITY_WORDS } from '../kernel/index.ts';
import { table } from './markdown.ts';
import { countBases, ORIGINS, sumOf, type Tally, tallyCheck, tallyOf } from './tally.ts';

const NAMES = {
  published: 'published',
  'second-hand': 'second-hand',
  memory: 'from memory',
  'common-practice': 'common practice',
  'hand-worked': 'worked by hand',
} as const;

/** `published 12 (24%), second-hand 3 (6%)`; what does not occur is left out. */
function shares<K extends keyof typeof NAMES>(names: readonly K[], counts: Readonly<Record<K, number>>): string {
  const all = sumOf(counts);
  return names
    .filter((name) => counts[name] > 0)
    .map((name) => `${NAMES[name]} ${counts[name]} (${Math.round((100 * counts[name]) / all)}%)`)
    .join(', ');
}

/** How well one check is known and what its own cases come out with, in two lines. */
export function tallyWords({ bases, origins, severities }: Tally): string {
  const grave = SEVERITIES.filter((severity) => severities[severity] > 0).map(
    (severity) => `${SEVERITY_WORDS[severity].en.toLowerCase()} ${severities[severity]}`,
  );
  return `**How well it is known.** Sources: ${shares(BASES, bases)}. Cases: ${shares(ORIGINS, origins)}. Over its cases: ${grave.join(', ')}.`;
}

const row = (name: string, { bases, origins, severities }: Tally): string[] => [
  name,
  ...SEVERITIES.map((severity) => String(severities[severity])),
  `${bases.published} of ${sumOf(bases)}`,
  `${origins.published} of ${sumOf(origins)}`,
];

/** All checks side by side: an engineer who is called about everything is not heard about anything. */
export async function overview(checks: readonly Check[]): Promise<string> {
  const tallies = await Promise.all(checks.map(async (check) => tallyCheck(check, await check.cases())));
  const all = tallyOf(tallies, countBases(checks.flatMap(({ sources }) => sources)));
  return [
    '## How well it is known, and how often each severity comes out',
    `Sources, each counted once: ${shares(BASES, all.bases)}.`,
    `Worked cases, by where their numbers come from: ${shares(ORIGINS, all.origins)}.`,
    "How many of a check's own cases come out with each severity, and how much of it is published:",
    table(
      ['Check', ...SEVERITIES.map((severity) => SEVERITY_WORDS[severity].en), 'Sources published', 'Cases published'],
      [...checks.map(({ id }, at) => row(`\`${id}\``, tallies[at] as Tally)), row('All', all)],
    ),
    '',
  ].join('\n\n');
}
