import {
  atMost,
  type Complete,
  count,
  countOf,
  defineCheck,
  type InputIssue,
  type Judgement,
  list,
  named,
  type Partials,
  percent,
  type Quantity,
  type Reason,
  reasonThat,
  refuse,
  refuseSameName,
  shareQuantity,
  type Text,
  text,
  wordOf,
} from '../../kernel/index.ts';
import { ODD_ONE_OUT_SOURCE } from '../../standards/common-practice/sampling.data.ts';
import { byLuck, EXACT_TEST_SOURCE, UNLIKELY } from '../../standards/fisher-1935/exact-test.ts';
import { likePartsCard } from './like-parts.card.ts';

const inputs = {
  groups: list({
    minItems: 1,
    maxItems: 100,
    label: text('Groups of similar places', 'Grupos de lugares iguales'),
    howToMeasure: text('Such as the wall ends of one floor.', 'Por ejemplo, los extremos de pared de un piso.'),
    item: {
      name: named({ label: text('Name', 'Nombre') }),
      count: count({ min: 1, max: 10_000, label: text('Places in the group', 'Lugares en el grupo') }),
      withHardware: count({ max: 10_000, label: text('Of these with the hardware', 'De estos, con el herraje') }),
    },
  }),
} as const;

type LikeInputs = Complete<typeof inputs>;
type Group = LikeInputs['groups'][number];

const missingIn = (group: Group): number => group.count - group.withHardware;
const shareIn = (group: Group): number => group.withHardware / group.count;

/** Groups that lack some, the oddest first: the smallest share, then the most missing, then by name. */
const oddFirst = (groups: readonly Group[]): Group[] =>
  groups
    .filter((group) => missingIn(group) > 0)
    .sort((a, b) => shareIn(a) - shareIn(b) || missingIn(b) - missingIn(a) || (a.name < b.name ? -1 : 1));

const sum = (numbers: readonly number[]): number => numbers.reduce((total, each) => total + each, 0);

/** Chance that a group has so few with the hardware if all there are were dealt out by luck. */
function luckOf(group: Group, groups: readonly Group[]): number {
  const places = sum(groups.map((each) => each.count));
  const having = sum(groups.map((each) => each.withHardware));
  return byLuck(group.withHardware, group.count, having, places);
}

function judgeLike({ groups }: LikeInputs): Judgement {
  const places = sum(groups.map((group) => group.count));
  const withHardware = sum(groups.map((group) => group.withHardware));
  const missing = places - withHardware;
  const noneHasIt = withHardware === 0;
  const odd = missing > 0 && !noneHasIt;
  return {
    verdict: noneHasIt ? 'undetermined' : odd ? 'fails' : 'meets',
    values: () => likeValues(groups, places, missing, odd),
    reasons: () => (noneHasIt ? [NONE_HAS_IT] : odd ? oddWords(groups, withHardware / places) : [ALL_ALIKE]),
    cautions: () => (missing > 0 ? [LOOK_BEHIND] : []),
    referrals: noneHasIt ? ['engineer'] : [],
    repairs: odd ? ['open-more'] : [],
  };
}

function likeValues(groups: readonly Group[], places: number, missing: number, odd: boolean): Record<string, Quantity> {
  const rest = oddFirst(groups);
  const [first] = rest;
  const answers: Record<string, Quantity> = { shareWith: shareQuantity((places - missing) / places) };
  for (const group of groups) answers[`shareWith.${group.name}`] = shareQuantity(shareIn(group));
  answers.openMore = countOf(missing);
  if (!odd || !first) return answers;
  for (const group of rest) {
    answers[`missing.${group.name}`] = countOf(missingIn(group));
    answers[`byLuck.${group.name}`] = shareQuantity(luckOf(group, groups));
  }
  answers.oddOnes = wordOf(rest.map((group) => group.name).join(', '));
  answers.openNext = wordOf(first.name);
  return answers;
}

const ALL_ALIKE = text('Every like place has the hardware.', 'Todos los lugares iguales tienen el herraje.');
const NONE_HAS_IT = text(
  'No place shows it: it may be hidden, or never asked for. See the plans and ask the engineer.',
  'No se ve en ninguno: puede estar oculto o nunca pedirse. Vea los planos y pregunte al ingeniero.',
);
const LOOK_BEHIND = text(
  'Not seen is not missing: open it to know.',
  'No verlo no quiere decir que falte: ábralo para saber.',
);
const FEW_HAVE_IT = text(
  'Fewer than half have it: see the plans for where it was asked.',
  'Menos de la mitad lo tienen: vea en los planos dónde se pidió.',
);
const HALF = 0.5;
const skippedWords = (names: string): Text =>
  text(
    `So few there is hardly luck: look for another crew or another plan at ${names}.`,
    `Tan pocos ahí no parece casualidad: busque otra cuadrilla u otro plano en ${names}.`,
  );

function oddWords(groups: readonly Group[], share: number): Reason[] {
  const rest = oddFirst(groups);
  const names = rest.map((group) => `${group.name} (${missingIn(group)}/${group.count})`).join(', ');
  const [first] = rest;
  const skipped = rest.filter((group) => atMost(luckOf(group, groups), UNLIKELY)).map((group) => group.name);
  return [
    reasonThat(
      false,
      text(
        `${percent(share)} of the similar places have the hardware. Without it: ${names}.`,
        `El ${percent(share)} de los lugares iguales tiene el herraje. Sin él: ${names}.`,
      ),
    ),
    ...(first ? [text(`Open next: ${first.name}.`, `Abra primero: ${first.name}.`)] : []),
    ...(skipped.length > 0 ? [skippedWords(skipped.join(', '))] : []),
    ...(share < HALF ? [FEW_HAVE_IT] : []),
  ];
}

function wrongGroups({ groups = [] }: Partials<typeof inputs>): InputIssue[] {
  const seen = new Set<string>();
  return groups.flatMap(({ name, count: places, withHardware }, at) => {
    const issues: InputIssue[] = [];
    if (name !== undefined && seen.has(name)) issues.push(refuseSameName(['groups', at, 'name'], name));
    if (name !== undefined) seen.add(name);
    if (places !== undefined && withHardware !== undefined && withHardware > places)
      issues.push(
        refuse(
          ['groups', at, 'withHardware'],
          withHardware,
          text(`at most ${places}`, `hasta ${places}`),
          text(
            `There can't be more with the hardware than places in the group: ${withHardware} of ${places}.`,
            `No puede haber más con el herraje que lugares en el grupo: ${withHardware} de ${places}.`,
          ),
        ),
      );
    return issues;
  });
}

/** Which of several like places lack the hardware the others have, and which to open next. Counts. */
export const likeParts = defineCheck({
  ...likePartsCard,
  editions: [{ id: 'like-parts', title: text('Like places compared', 'Lugares iguales comparados') }],
  defaultEdition: 'like-parts',
  sources: [ODD_ONE_OUT_SOURCE, EXACT_TEST_SOURCE],
  inputs,
  refine: wrongGroups,
  evaluate: (given) => judgeLike(given),
  repairs: ['open-more'],
  client: {
    found: (_inputs, outcome) =>
      outcome.verdict === 'fails'
        ? text(
            'Some similar places have steel parts that others seem to lack.',
            'Unos lugares tienen piezas de acero que en otros no se ven.',
          )
        : text('We looked at places that should be built alike.', 'Revisamos lugares que deben estar hechos igual.'),
    why: text(
      'Places built alike need the same parts to hold.',
      'Lo que se hace igual necesita las mismas piezas para resistir.',
    ),
    ifNot: text('A weak spot may stay hidden.', 'Puede quedar oculto un punto débil.'),
  },
  doesNotCover: [text('Whether the plans asked for the hardware there.', 'Si los planos pedían el herraje ahí.')],
  cases: () => import('./like-parts.cases.ts'),
});
