import {
  atLeast,
  type Complete,
  decimal,
  defineCheck,
  flag,
  type InputIssue,
  inchesOf,
  type Judgement,
  length,
  type Partials,
  percent,
  type Quantity,
  ratioOf,
  reasonThat,
  refuseLonger,
  shareOf,
  shareQuantity,
  type Text,
  text,
} from '../../kernel/index.ts';
import { stressAreaIn2, THREAD_SOURCE, threadStrength } from '../../standards/asme-b1.1/threads.ts';
import { ROD_SIZES } from '../../standards/asme-b18.2.2/nuts.data.ts';
import {
  DEEP_PIT_SHARE,
  ROD_LOSS_SOURCE,
  ROD_PROTECTION_SOURCE,
} from '../../standards/common-practice/rod-loss.data.ts';
import { rodLossCard } from './rod-loss.card.ts';

const inputs = {
  diameterIn: length({
    unit: 'in',
    min: 0.5,
    max: 1,
    oneOf: ROD_SIZES.map((size) => size.diameterIn),
    label: text('Rod diameter when new', 'Diámetro de la varilla nueva'),
    howToMeasure: text('By its nut, or where it is sound.', 'Por su tuerca, o donde está sana.'),
  }),
  remainingIn: length({
    unit: 'in',
    min: 0,
    max: 1,
    denominator: 32,
    label: text('Diameter left at the worst place', 'Diámetro que queda en lo peor'),
    howToMeasure: text(
      'Brush the rust off to bright steel; calipers, in the pits.',
      'Cepille el óxido hasta el acero; con calibrador, en las picaduras.',
    ),
  }),
  pitted: flag({
    label: text(
      `Pits deeper than ${percent(DEEP_PIT_SHARE)} of the diameter?`,
      `¿Picaduras de más del ${percent(DEEP_PIT_SHARE)} del diámetro?`,
    ),
  }),
} as const;

const PITTED = text(
  'Deep pits: calipers tell too much of a pitted rod, an engineer decides.',
  'Picaduras hondas: el calibrador exagera en una varilla picada, decide un ingeniero.',
);
const AS_NEW = text('It measures no less than a new rod may.', 'No mide menos que una varilla nueva.');
const FIND_CAUSE = text(
  'Stop the water. In treated wood use hot-dip galvanized or stainless steel.',
  'Detenga el agua. En madera tratada use acero galvanizado en caliente o inoxidable.',
);

const squareInches = (value: number): Quantity => ({ value, unit: 'in2' });

function judgeRod({ diameterIn, remainingIn, pitted }: Complete<typeof inputs>): Judgement {
  const { tensionIn2, threadsPerInch, leastMajorIn } = threadStrength(diameterIn);
  const leftIn2 = stressAreaIn2(remainingIn, threadsPerInch);
  const areaRatio = shareOf(leftIn2, tensionIn2) ?? 0;
  const asNew = atLeast(remainingIn, leastMajorIn);
  const meets = asNew && !pitted;
  return {
    verdict: meets ? 'meets' : 'fails',
    ratio: ratioOf(leastMajorIn, Math.max(remainingIn, 0)),
    // Pits go deeper than calipers reach: what is left of the area is not known, only that it is no more.
    remaining: pitted && areaRatio > 0 ? null : areaRatio,
    values: () => ({
      areaRatio: shareQuantity(areaRatio),
      leftIn2: squareInches(leftIn2),
      newIn2: squareInches(tensionIn2),
      leastNewIn: inchesOf(leastMajorIn),
    }),
    reasons: () => [
      ...(pitted ? [reasonThat(false, PITTED)] : []),
      reasonThat(meets, leftWords(remainingIn, diameterIn, areaRatio, pitted)),
      ...(meets ? [AS_NEW] : []),
    ],
    cautions: () => (meets ? [] : [FIND_CAUSE]),
    referrals: meets ? [] : ['engineer'],
    repairs: meets ? [] : ['rod-replace', 'coupler-and-rod', ...(pitted ? ['engineer-letter'] : [])],
    hangsOn: [THREAD_SOURCE, ROD_LOSS_SOURCE],
    sources: [ROD_LOSS_SOURCE, THREAD_SOURCE, ROD_PROTECTION_SOURCE],
    facts: { ratio: null, ...(pitted && { engineerAlways: PITTED }) },
  };
}

function leftWords(remainingIn: number, diameterIn: number, areaRatio: number, pitted: boolean): Text {
  const [left, whole] = [`${decimal(remainingIn, 3)} in`, `${decimal(diameterIn, 3)} in`];
  const [most, mucho] = pitted ? ['at most ', 'cuando mucho '] : ['', ''];
  return text(
    `${left} is left of a ${whole} rod: ${most}${percent(areaRatio)} of its area in tension.`,
    `Quedan ${left} de una varilla de ${whole}: ${mucho}${percent(areaRatio)} de su área a tensión.`,
  );
}

/** The rod cannot have grown. */
const grown = ({ diameterIn, remainingIn }: Partials<typeof inputs>): InputIssue[] =>
  refuseLonger(['remainingIn'], {
    what: inputs.remainingIn.label,
    came: remainingIn,
    most: diameterIn,
    ofWhat: text('the diameter when new', 'el diámetro de la varilla nueva'),
  });

/** How much tension a rusted hold-down or anchor rod keeps. Inches; coarse-thread rods 1/2 to 1 in. */
export const rodLoss = defineCheck({
  ...rodLossCard,
  editions: [{ id: 'rod-loss', title: text('Stress area left', 'Área a tensión que queda') }],
  defaultEdition: 'rod-loss',
  sources: [ROD_LOSS_SOURCE, THREAD_SOURCE, ROD_PROTECTION_SOURCE],
  inputs,
  refine: grown,
  evaluate: judgeRod,
  repairs: ['rod-replace', 'coupler-and-rod', 'engineer-letter'],
  client: {
    found: (_inputs, outcome) =>
      outcome.remaining === null || outcome.remaining === 1
        ? text(
            'We checked the rust on a steel rod that ties the house down.',
            'Revisamos el óxido de una varilla que sujeta la casa.',
          )
        : text(
            `A steel rod that ties the house down is rusted. About ${percent(outcome.remaining)} of its strength is left.`,
            `Una varilla que sujeta la casa está oxidada. Queda cerca del ${percent(outcome.remaining)} de su fuerza.`,
          ),
    why: text(
      'In an earthquake or strong wind this rod keeps the wall from lifting.',
      'En un sismo o viento fuerte esta varilla evita que la pared se levante.',
    ),
    ifNot: text('It keeps rusting and can snap when it is needed.', 'Seguirá oxidándose y puede romperse.'),
  },
  doesNotCover: [
    text('Rust hidden in concrete or wood.', 'Óxido escondido en concreto o madera.'),
    text('Nails, hangers and straps.', 'Clavos, estribos y placas.'),
  ],
  cases: () => import('./rod-loss.cases.ts'),
});
