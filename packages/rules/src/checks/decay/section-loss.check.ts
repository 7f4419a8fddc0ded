import {
  assume,
  type Complete,
  choice,
  defineCheck,
  flag,
  formatLength,
  type InputIssue,
  inchesOf,
  type Judgement,
  joinTexts,
  length,
  type Partials,
  percent,
  ROUNDS_TO_NONE,
  reasonThat,
  refuseLonger,
  shareQuantity,
  type Text,
  text,
} from '../../kernel/index.ts';
import {
  DECAY_MARGIN_IN,
  DECAY_SOURCE,
  SECTION_LOSS_SOURCE,
  UNSOUND_SOURCE,
} from '../../standards/common-practice/section-loss.data.ts';
import { sectionLossCard } from './section-loss.card.ts';

const loss = (label: Text, howToMeasure: Text) =>
  length({ unit: 'in', min: 0, max: 48, label, howToMeasure, picture: 'decay-loss' });
const PROBE = text(
  'Probe until the tool meets hard wood. 0 when sound.',
  'Pinche hasta dar con madera dura. 0 si está sana.',
);

const inputs = {
  role: choice({
    options: [
      { value: 'bending', label: text('Joist or beam', 'Vigueta o viga') },
      { value: 'post', label: text('Post or stud', 'Poste o pie derecho') },
      { value: 'bearing', label: text('Where it bears', 'Donde se apoya') },
    ],
    label: text('What the wood does there', 'Qué hace la madera ahí'),
  }),
  widthIn: length({
    unit: 'in',
    min: 0.25,
    max: 48,
    label: text('Width when sound', 'Ancho cuando estaba sana'),
    howToMeasure: text('Where it bears: the width of the contact.', 'En un apoyo: el ancho del contacto.'),
    picture: 'section-size',
  }),
  depthIn: length({
    unit: 'in',
    min: 0.25,
    max: 48,
    label: text('Depth when sound', 'Altura cuando estaba sana'),
    howToMeasure: text('Where it bears: the length of the contact.', 'En un apoyo: el largo del contacto.'),
    picture: 'section-size',
  }),
  lossTopIn: loss(text('Lost from the top', 'Perdido por arriba'), PROBE),
  lossBottomIn: loss(text('Lost from the bottom', 'Perdido por abajo'), PROBE),
  lossSideIn: loss(
    text('Lost from the sides', 'Perdido por los lados'),
    text('The sum of both sides, each probed to hard wood.', 'La suma de ambos lados, cada uno hasta madera dura.'),
  ),
  oneSideOnly: flag({
    needed: 'optional',
    showWhen: { all: [{ input: 'lossSideIn', known: true }, { not: { input: 'lossSideIn', is: [0] } }] },
    label: text('Lost from one side only?', '¿Perdido por un solo lado?'),
    assumes: assume(
      text(
        'Wood is lost on both sides, so that each has its margin.',
        'Se perdió madera en ambos lados, así que cada uno lleva su margen.',
      ),
      SECTION_LOSS_SOURCE,
    ),
  }),
  marginIn: length({
    unit: 'in',
    min: 0,
    max: 6,
    default: DECAY_MARGIN_IN,
    assumes: assume(
      text(
        `${DECAY_MARGIN_IN} in of sound-looking wood beside the decay counts for nothing.`,
        `${DECAY_MARGIN_IN} in de madera de apariencia sana junto a la pudrición no cuenta.`,
      ),
      SECTION_LOSS_SOURCE,
    ),
    label: text('Margin given no credit beside the decay', 'Margen sin contar junto a la pudrición'),
  }),
} as const;

type DecayInputs = Complete<typeof inputs>;

/** Ratios of the credited section to the sound one, from mechanics of a rectangle. */
function sectionRatios(widthIn: number, depthIn: number, leftWidthIn: number, leftDepthIn: number) {
  const b = leftWidthIn / widthIn;
  const d = leftDepthIn / depthIn;
  const weakAxis = (w: number, h: number) => Math.min(w * h ** 3, h * w ** 3);
  return {
    area: b * d,
    moment: b * d ** 2,
    stiffness: b * d ** 3,
    buckling: weakAxis(leftWidthIn, leftDepthIn) / weakAxis(widthIn, depthIn),
  };
}

/** What is left of a dimension after the losses at its faces, each with the margin beside it; never below 0. */
const leftOf = (sizeIn: number, lossesIn: readonly number[], marginIn: number): number =>
  Math.max(0, sizeIn - lossesIn.reduce((sum, lossIn) => sum + (lossIn > 0 ? lossIn + marginIn : 0), 0));

const MEMBER_KIND = { bending: 'beam', post: 'post', bearing: 'seat' } as const;

const GOVERNS: Record<DecayInputs['role'], Text> = {
  bending: text('in bending', 'en flexión'),
  post: text('as a post, by area and buckling', 'como poste, por área y pandeo'),
  bearing: text('of the contact', 'del contacto'),
};
const SOUND = text('No loss was found.', 'No se encontró pérdida.');
const NO_LOOKS = text(
  'Decay takes strength before it shows, more than half of it at little weight loss; nobody can tell from looks. Replace or cut out where strength matters.',
  'La pudrición quita resistencia antes de verse, más de la mitad con poca pérdida de peso; no se sabe a simple vista. Reemplace o corte donde importe la resistencia.',
);
const FIND_WATER = text(
  'Find and stop the water before closing; below 20% moisture decay does not go on.',
  'Encuentre y detenga el agua antes de cerrar; con menos de 20% de humedad la pudrición no avanza.',
);

function judgeDecay(given: DecayInputs, memberKind: 'joist' | 'beam' | undefined): Judgement {
  const { widthIn, depthIn, lossTopIn, lossBottomIn, lossSideIn, marginIn, role } = given;
  // The loss of both sides is given in one; unless somebody saw a sound side, each of them has a margin of its own.
  const sidesIn = given.oneSideOnly === true ? [lossSideIn] : [lossSideIn / 2, lossSideIn / 2];
  const leftDepthIn = leftOf(depthIn, [lossTopIn, lossBottomIn], marginIn);
  const leftWidthIn = leftOf(widthIn, sidesIn, marginIn);
  const ratios = sectionRatios(widthIn, depthIn, leftWidthIn, leftDepthIn);
  const remaining = {
    bending: ratios.moment,
    post: Math.min(ratios.area, ratios.buckling),
    bearing: ratios.area,
  }[role];
  const sound = lossTopIn === 0 && lossBottomIn === 0 && lossSideIn === 0;
  return {
    verdict: sound ? 'meets' : 'fails',
    ratio: null,
    remaining,
    values: () => ({
      leftWidthIn: inchesOf(leftWidthIn),
      leftDepthIn: inchesOf(leftDepthIn),
      areaRatio: shareQuantity(ratios.area),
      momentRatio: shareQuantity(ratios.moment),
      stiffnessRatio: shareQuantity(ratios.stiffness),
      bucklingRatio: shareQuantity(ratios.buckling),
    }),
    reasons: () =>
      sound ? [SOUND] : lossWords(given, leftWidthIn, leftDepthIn, remaining).map((words) => reasonThat(false, words)),
    cautions: () => (sound ? [] : [NO_LOOKS, FIND_WATER]),
    referrals: sound ? [] : ['engineer'],
    repairs: sound ? [] : decayRepairs(role),
    facts: { memberKind: role === 'bending' ? (memberKind ?? 'beam') : MEMBER_KIND[role] },
  };
}

function lossWords(
  { marginIn, role }: DecayInputs,
  leftWidthIn: number,
  leftDepthIn: number,
  remaining: number,
): Text[] {
  const size = `${formatLength(leftWidthIn)} x ${formatLength(leftDepthIn)}`;
  return [
    text(
      `Without the decay and ${formatLength(marginIn)} beside it on each face that lost wood, ${size} is left.`,
      `Sin la pudrición y ${formatLength(marginIn)} al lado en cada cara que perdió madera, quedan ${size}.`,
    ),
    text(
      `${percent(remaining)} may be counted ${GOVERNS[role].en}.`,
      `Se puede contar el ${percent(remaining)} ${GOVERNS[role].es}.`,
    ),
  ];
}

const decayRepairs = (role: DecayInputs['role']): string[] =>
  role === 'bending'
    ? ['member-sister', 'member-replace', 'engineer-letter']
    : role === 'post'
      ? ['member-replace', 'engineer-letter']
      : ['seat-restore', 'member-replace', 'engineer-letter'];

/** What an owner reads of the wood that may be counted. */
function countedWords(remaining: number): Text {
  if (remaining === 1)
    return text(
      'We checked wood that carries the house for decay.',
      'Revisamos si hay pudrición en madera que carga la casa.',
    );
  const decayed = text('Wood that carries the house is decayed.', 'Madera que carga la casa está podrida.');
  return joinTexts([
    decayed,
    remaining < ROUNDS_TO_NONE
      ? text(
          'By this check none of it can be counted. An engineer may find more.',
          'Según esta revisión no se puede contar con ella. Un ingeniero puede encontrar más.',
        )
      : text(
          `By this check about ${percent(remaining, 0)} of it can be counted.`,
          `Según esta revisión se puede contar con cerca del ${percent(remaining, 0)}.`,
        ),
  ]);
}

function moreThanThere(given: Partials<typeof inputs>): InputIssue[] {
  const over = (path: string, lostIn: number, sizeIn: number | undefined): InputIssue[] =>
    refuseLonger([path], {
      what: text('Decay in all', 'Pudrición en total'),
      came: lostIn,
      most: sizeIn,
      ofWhat: text('the wood there was', 'la madera que había'),
    });
  const topAndBottomIn = (given.lossTopIn ?? 0) + (given.lossBottomIn ?? 0);
  return [
    ...over(given.lossBottomIn ? 'lossBottomIn' : 'lossTopIn', topAndBottomIn, given.depthIn),
    ...over('lossSideIn', given.lossSideIn ?? 0, given.widthIn),
  ];
}

/** How much of a decayed member may still be counted, by what it does. Inches; ratios 0..1. */
export const sectionLoss = defineCheck({
  ...sectionLossCard,
  editions: [{ id: 'section-loss', title: text('Section-loss screening', 'Revisión por pérdida de sección') }],
  defaultEdition: 'section-loss',
  sources: [SECTION_LOSS_SOURCE, DECAY_SOURCE, UNSOUND_SOURCE],
  inputs,
  refine: moreThanThere,
  evaluate: (given, { situation }) =>
    judgeDecay(
      given,
      situation.memberKind === 'joist' || situation.memberKind === 'beam' ? situation.memberKind : undefined,
    ),
  repairs: ['member-sister', 'member-replace', 'seat-restore', 'engineer-letter'],
  client: {
    found: (_inputs, outcome) =>
      outcome.remaining === null
        ? text('Wood that carries the house is decayed.', 'Madera que carga la casa está podrida.')
        : countedWords(outcome.remaining),
    why: text(
      'Decayed wood loses strength before it looks bad, and it spreads while it is wet.',
      'La madera podrida pierde fuerza antes de verse mal y avanza mientras está mojada.',
    ),
    ifNot: text('It keeps getting weaker and can give way.', 'Seguirá debilitándose y puede ceder.'),
  },
  doesNotCover: [
    text('Insects, fire, and decay nobody probed.', 'Insectos, fuego y pudrición que nadie pinchó.'),
    text('Engineered members.', 'Elementos de ingeniería.'),
  ],
  cases: () => import('./section-loss.cases.ts'),
});
