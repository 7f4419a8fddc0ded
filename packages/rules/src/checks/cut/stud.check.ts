import {
  assume,
  type Complete,
  type Condition,
  defineCheck,
  type ElementRole,
  factorOf,
  flag,
  formatLength,
  type InputIssue,
  inchesOf,
  type Judgement,
  length,
  type Partials,
  percent,
  shareQuantity,
  type Text,
  text,
} from '../../kernel/index.ts';
import { STUD_CUTS_IBC } from '../../standards/ibc-2018/cuts.data.ts';
import { STUD_CUTS_2018, type StudCutRule } from '../../standards/irc-2018/cuts.data.ts';
import { STUD_CUTS_2021 } from '../../standards/irc-2021/cuts.data.ts';
import { STUD_CUTS_2024 } from '../../standards/irc-2024/cuts.data.ts';
import { CUT_SECTION_SOURCE } from '../../standards/mechanics/cut-section.ts';
import {
  type CutLimit,
  cutAtMost,
  editionOfCode,
  forbidden,
  judgeLimits,
  largerThan,
  limitReasons,
  woodAtLeast,
} from './limits.ts';
import { studCard } from './stud.card.ts';

const RULES: readonly StudCutRule[] = [STUD_CUTS_2018, STUD_CUTS_2021, STUD_CUTS_2024, STUD_CUTS_IBC];

/** A cut that was measured and is there. */
const isCut = (input: string): Condition => ({ all: [{ input, known: true }, { not: { input, is: [0] } }] });
const HOLE = isCut('holeIn');
const NOTCH = isCut('notchIn');

const inputs = {
  depthIn: length({
    unit: 'in',
    min: 1,
    max: 24,
    label: text('Stud depth', 'Fondo del pie derecho'),
    howToMeasure: text(
      'From face to face of the wall: 3 1/2 for a 2x4.',
      'De cara a cara de la pared: 3 1/2 en un 2x4.',
    ),
  }),
  bearing: flag({ label: text('Outside or bearing wall?', '¿Pared exterior o de carga?') }),
  notchIn: length({
    unit: 'in',
    min: 0,
    max: 24,
    needed: { when: { input: 'holeIn', known: false } },
    assumes: assume(
      text(
        'Only the hole was measured: no notch is taken to be there.',
        'Solo se midió la perforación: se toma que no hay muesca.',
      ),
    ),
    label: text('Depth of the notch', 'Fondo de la muesca'),
    howToMeasure: text(
      'Into the depth of the stud. 0 when there is none.',
      'En el fondo del pie derecho. 0 si no hay.',
    ),
  }),
  holeIn: length({
    unit: 'in',
    min: 0,
    max: 24,
    needed: { when: { input: 'notchIn', known: false } },
    assumes: assume(
      text(
        'Only the notch was measured: no hole is taken to be there.',
        'Solo se midió la muesca: se toma que no hay perforación.',
      ),
    ),
    label: text('Diameter of the hole', 'Diámetro de la perforación'),
    howToMeasure: text('The largest one. 0 when there is none.', 'La mayor. 0 si no hay.'),
  }),
  edgeIn: length({
    unit: 'in',
    min: 0,
    max: 24,
    needed: 'optional',
    showWhen: HOLE,
    label: text('Wood between hole and edge', 'Madera entre perforación y canto'),
    howToMeasure: text('At the nearer edge of the stud.', 'En el canto más cercano.'),
  }),
  doubled: flag({
    default: false,
    showWhen: HOLE,
    label: text('Two studs nailed together?', '¿Dos pies derechos clavados juntos?'),
  }),
  sameSection: flag({
    needed: 'optional',
    showWhen: { all: [HOLE, NOTCH] },
    label: text('Hole and notch at the same height?', '¿Perforación y muesca a la misma altura?'),
  }),
} as const;

type StudInputs = Complete<typeof inputs>;

const NOTCH_WORDS = text('Notch', 'Muesca');
const HOLE_WORDS = text('Hole', 'Perforación');
const EDGE_WORDS = text('Wood beside the hole', 'Madera junto a la perforación');
const SAME_SECTION = text(
  'Hole and notch share one section of the stud.',
  'Perforación y muesca están en la misma sección.',
);
const NO_MORE_THAN_TWO = text(
  'Doubled studs may be bored to the larger limit in no more than two in a row.',
  'Los pies derechos dobles solo admiten el límite mayor en dos seguidos como máximo.',
);
const MISPRINT = text(
  'IRC 2018 prints "not more than 5/8 in" for the edge; editions before and after mean at least 5/8 in, used here.',
  'IRC 2018 imprime "no más de 5/8 in" para el canto; las demás ediciones dicen al menos 5/8 in, que se usa aquí.',
);

const BEARING_REPAIRS = ['stud-sister', 'engineer-letter'];
const OTHER_REPAIRS = ['stud-sister'];
const NO_REPAIRS: readonly string[] = [];

interface StudLimits {
  readonly notchIn: number;
  readonly holeIn: number;
}

/** The largest notch and hole the rule allows in this stud, inches. */
function allowedCuts({ depthIn, bearing, doubled }: StudInputs, rule: StudCutRule): StudLimits {
  const holeShare = !bearing ? rule.holeShare.nonBearing : doubled ? rule.holeShare.doubled : rule.holeShare.bearing;
  return {
    notchIn: depthIn * (bearing ? rule.notchShare.bearing : rule.notchShare.nonBearing),
    holeIn: depthIn * holeShare,
  };
}

/**
 * Share of the stud that may be counted at its worst cut: bending strength beside a notch, area beside a hole, or what
 * is left of a section that has both, or may have as far as was seen.
 */
function shareLeft({ depthIn, notchIn = 0, holeIn = 0, sameSection }: StudInputs): number {
  const left = (cutIn: number) => Math.max(0, 1 - cutIn / depthIn);
  return Math.min(left(notchIn) ** 2, left(holeIn), sameSection === false ? 1 : left(notchIn + holeIn));
}

function judgeStud(given: StudInputs, rule: StudCutRule, placeRole: ElementRole | undefined): Judgement {
  const { notchIn = 0, holeIn = 0, edgeIn, sameSection, bearing } = given;
  const allowed = allowedCuts(given, rule);
  const both = notchIn > 0 && holeIn > 0;
  const notch = cutAtMost(NOTCH_WORDS, notchIn, allowed.notchIn);
  const hole = cutAtMost(HOLE_WORDS, holeIn, allowed.holeIn);
  const edge = holeIn > 0 && edgeIn !== undefined ? woodAtLeast(EDGE_WORDS, edgeIn, rule.edgeIn) : undefined;
  const limits: CutLimit[] = [];
  const unmeasured: string[] = [];
  if (notchIn > 0) limits.push(notch);
  if (holeIn > 0) limits.push(hole);
  if (edge) limits.push(edge);
  else if (holeIn > 0) unmeasured.push('edgeIn');
  if (both && sameSection) limits.push(forbidden(SAME_SECTION));
  if (both && sameSection === undefined) unmeasured.push('sameSection');
  const { verdict, ratio, missing } = judgeLimits(limits, unmeasured);
  const fails = verdict === 'fails';
  const left = shareLeft(given);
  return {
    verdict,
    ratio,
    missing,
    remaining: verdict === 'meets' ? 1 : fails ? left : null,
    values: () => ({
      notchLimitIn: inchesOf(allowed.notchIn),
      holeLimitIn: inchesOf(allowed.holeIn),
      edgeLimitIn: inchesOf(rule.edgeIn),
      notchRatio: factorOf(notch.ratio ?? 0),
      holeRatio: factorOf(hole.ratio ?? 0),
      ...(typeof edge?.ratio === 'number' && { edgeRatio: factorOf(edge.ratio) }),
      shareLeft: shareQuantity(left),
    }),
    reasons: () => studReasons(limits, left, fails),
    cautions: () => [
      ...(rule.edgeMisprinted && holeIn > 0 ? [MISPRINT] : []),
      ...(given.doubled && bearing ? [NO_MORE_THAN_TWO] : []),
    ],
    repairs: fails ? (bearing ? BEARING_REPAIRS : OTHER_REPAIRS) : NO_REPAIRS,
    hangsOn: [rule.source],
    sources: [rule.source, CUT_SECTION_SOURCE],
    facts: { ratio: null, memberKind: 'stud', role: placeRole ?? (bearing ? 'gravity' : 'finish') },
  };
}

function studReasons(limits: readonly CutLimit[], left: number, fails: boolean): Text[] {
  return [
    ...(limits.length > 0 ? limitReasons(limits) : [text('No cut was found.', 'No se halló ningún corte.')]),
    ...(fails
      ? [text(`About ${percent(left)} of the stud is left there.`, `Ahí queda cerca del ${percent(left)}.`)]
      : []),
  ];
}

const tooLarge = ({ depthIn, notchIn, holeIn, edgeIn }: Partials<typeof inputs>): InputIssue[] => [
  ...largerThan('notchIn', inputs.notchIn.label, notchIn, depthIn),
  ...largerThan('holeIn', inputs.holeIn.label, holeIn, depthIn),
  ...largerThan(
    'edgeIn',
    inputs.edgeIn.label,
    edgeIn,
    depthIn === undefined ? undefined : Math.max(0, depthIn - (holeIn ?? 0)),
  ),
];

/** Whether a stud is notched or bored within the code's shares of its depth. Inches. */
export const stud = defineCheck({
  ...studCard,
  editions: RULES.map(editionOfCode),
  defaultEdition: STUD_CUTS_2024.id,
  sources: [...RULES.map((rule) => rule.source), CUT_SECTION_SOURCE],
  inputs,
  refine: tooLarge,
  evaluate: (given, { edition, situation }) => {
    const rule = RULES.find((row) => row.id === edition);
    if (!rule) throw new RangeError(`No stud cutting rule ${edition}`);
    return judgeStud(given, rule, situation.role);
  },
  repairs: ['stud-sister', 'engineer-letter'],
  client: {
    found: ({ notchIn = 0, holeIn = 0 }) => {
      const cutIn = Math.max(notchIn, holeIn);
      return cutIn > 0
        ? text(
            `A stud in the wall was cut ${formatLength(cutIn)} deep.`,
            `A un pie derecho de la pared le cortaron ${formatLength(cutIn)}.`,
          )
        : text('We looked for cuts in a stud of the wall.', 'Buscamos cortes en un pie derecho de la pared.');
    },
    why: text('The studs in a wall hold up what is above it.', 'Los pies derechos sostienen lo de arriba.'),
    ifNot: text('The stud can bend or split at the cut.', 'El pie derecho puede doblarse o rajarse en el corte.'),
  },
  doesNotCover: [
    text('Headers and posts: no table lets them be cut.', 'Dinteles y postes: ninguna tabla permite cortarlos.'),
    text('Engineered studs and cuts along the stud.', 'Pies derechos de ingeniería y cortes a lo largo.'),
  ],
  cases: () => import('./stud.cases.ts'),
});
