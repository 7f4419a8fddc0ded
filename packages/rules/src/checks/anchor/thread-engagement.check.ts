import {
  assume,
  atLeast,
  type Complete,
  choice,
  compareLengths,
  countOf,
  decimal,
  defineCheck,
  formatLength,
  type InputIssue,
  inchesOf,
  type Judgement,
  largestRatio,
  length,
  number,
  type Partials,
  poundsOf,
  ratioOf,
  reasonThat,
  refuse,
  shareOf,
  shareQuantity,
  squareInchesOf,
  type Text,
  text,
  yesNoOf,
} from '../../kernel/index.ts';
import { ordinaryRodTensionLb, ROD_TENSION_SOURCE } from '../../standards/aisc-360/rod-tension.ts';
import { THREAD_SOURCE, threadStrength } from '../../standards/asme-b1.1/threads.ts';
import { NUT_SIZES_SOURCE, ROD_SIZES, type RodSize } from '../../standards/asme-b18.2.2/nuts.data.ts';
import {
  DESIGN_GUIDE_LEAST_SHARE,
  DESIGN_GUIDE_SOURCE,
  FHWA_ENGAGED_SHARE,
  FHWA_SOURCE,
  ROD_END_RULES,
  type RodEndRule,
} from '../../standards/rod-end-rules/rod-end.data.ts';
import { threadEngagementCard } from './thread-engagement.card.ts';

const [FLUSH] = ROD_END_RULES;
const inputs = {
  diameterIn: length({
    unit: 'in',
    min: 0.5,
    max: 1,
    oneOf: ROD_SIZES.map((size) => size.diameterIn),
    label: text('Rod diameter', 'Diámetro de la varilla'),
    howToMeasure: text('Across the threads.', 'A través de los hilos.'),
    picture: 'rod-diameter',
  }),
  nut: choice({
    options: [
      { value: 'hex', label: text('Regular hex nut', 'Tuerca hexagonal normal') },
      { value: 'heavy-hex', label: text('Heavy hex nut', 'Tuerca hexagonal pesada') },
    ],
    label: text('Nut', 'Tuerca'),
    howToMeasure: text('A heavy nut is wider across its flats.', 'La tuerca pesada es más ancha entre caras.'),
    picture: 'nut-kind',
  }),
  projectionIn: length({
    unit: 'in',
    min: -4,
    max: 24,
    needed: { when: { input: 'threadsShowing', known: false } },
    label: text('Rod end past the nut face', 'Punta de la varilla más allá de la tuerca'),
    belowZero: text('Rod stops short of the nut face by', 'La varilla no llega a la cara de la tuerca por'),
    howToMeasure: text(
      'From the outer nut face to the rod end. Below the face is negative, flush is 0.',
      'De la cara de la tuerca a la punta. Por debajo es negativo, a ras es 0.',
    ),
    picture: 'rod-projection',
  }),
  threadsShowing: number({
    unit: 'threads',
    min: 0,
    max: 200,
    needed: { when: { input: 'projectionIn', known: false } },
    showWhen: { input: 'projectionIn', known: false },
    label: text('Or: threads showing past the nut', 'O: hilos visibles más allá de la tuerca'),
    picture: 'rod-projection',
  }),
  rule: choice({
    options: ROD_END_RULES.map((row) => ({ value: row.rule, label: row.title })),
    default: 'flush',
    assumes: assume(
      text(
        'The rule taken is the rod end flush with the nut face or past it.',
        'La regla que se toma: la punta a ras de la cara de la tuerca o más.',
      ),
      FLUSH.source,
    ),
    label: text('Rule to hold it to', 'Regla a aplicar'),
  }),
} as const;

const sizeOf = (diameterIn: number): RodSize => {
  const size = ROD_SIZES.find((row) => row.diameterIn === diameterIn);
  if (!size) throw new RangeError(`No rod of ${diameterIn} in; the schema allows only listed sizes`);
  return size;
};

/** Two ways to tell where the rod ends. */
interface EndInputs {
  readonly projectionIn?: number | undefined;
  readonly threadsShowing?: number | undefined;
}

/** Where the rod end stands beyond the outer nut face, inches; undefined when no thread shows and it was not measured. */
function projectionOf(inputs: EndInputs, pitchIn: number) {
  if (inputs.projectionIn !== undefined) return inputs.projectionIn;
  return inputs.threadsShowing ? inputs.threadsShowing * pitchIn : undefined;
}

const UNDER_HALF = text(
  'The rod fills less than half of the nut: no credit, an engineer decides.',
  'La varilla llena menos de la mitad de la tuerca: no se cuenta, decide un ingeniero.',
);

function passingRules(projectionIn: number, pitchIn: number): Record<RodEndRule, boolean> {
  const passes = (rule: RodEndRule): boolean => {
    const row = ROD_END_RULES.find((candidate) => candidate.rule === rule);
    return row !== undefined && atLeast(projectionIn, row.pitchesBeyond * pitchIn);
  };
  return { flush: passes('flush'), 'two-pitches': passes('two-pitches'), 'three-threads': passes('three-threads') };
}

function measuredWords(projectionIn: number, askedIn: number, engagedIn: number, engagedThreads: number): Text {
  const below = projectionIn < 0;
  const { measured: at } = below
    ? compareLengths(-projectionIn, 0, 'at-most')
    : compareLengths(projectionIn, askedIn, 'at-least');
  const where = below
    ? text(`${at.en} below the nut face`, `${at.es} por debajo de la cara de la tuerca`)
    : projectionIn === 0
      ? text('flush with the nut face', 'a ras de la cara de la tuerca')
      : text(`${at.en} past the nut face`, `${at.es} más allá de la cara de la tuerca`);
  const engaged = `${decimal(engagedIn, 3)} in, ${decimal(engagedThreads, 1)}`;
  return text(
    `The rod ends ${where.en}; ${engaged} threads of the nut are engaged.`,
    `La varilla termina ${where.es}; la tuerca agarra ${engaged} hilos.`,
  );
}

type RodInputs = Complete<typeof inputs>;

/**
 * Where the rod ends is given by tape or by threads. Both are refused unless the end stands past the threads that show
 * by less than one more; with none showing it may also lie below the face.
 */
function endIssues({ projectionIn, threadsShowing, diameterIn }: Partials<typeof inputs>): InputIssue[] {
  if (projectionIn === undefined || threadsShowing === undefined || diameterIn === undefined) return [];
  const pitchIn = 1 / sizeOf(diameterIn).threadsPerInch;
  const showingIn = threadsShowing * pitchIn;
  const shortOf = threadsShowing > 0 && !atLeast(projectionIn, showingIn);
  if (!shortOf && projectionIn < showingIn + pitchIn) return [];
  const [at, past] = [formatLength(projectionIn), formatLength(showingIn)];
  const shows = decimal(threadsShowing);
  const words = text(
    `A rod end ${at} past the nut face does not agree with ${shows} threads showing, which is ${past}: measure its end again.`,
    `Una punta a ${at} de la cara de la tuerca no coincide con ${shows} hilos a la vista, que son ${past}: mida otra vez la punta.`,
  );
  const allowed = text('one of the two, or both where they agree', 'uno de los dos, o ambos si coinciden');
  const came = `${projectionIn} in and ${threadsShowing} threads`;
  return ['projectionIn', 'threadsShowing'].map((name) => refuse([name], came, allowed, words));
}

const DISAGREE = text(
  'The published rules disagree; the chosen one decides and the others are shown beside it.',
  'Las reglas publicadas no coinciden; decide la elegida y las demás se muestran al lado.',
);
const MEASURE_RECESS = text(
  'No thread shows: measure how far the rod end is below the nut face, or 0 when flush.',
  'No se ve ningún hilo: mida cuánto está la varilla por debajo de la tuerca, o 0 si está a ras.',
);

function judgeRodEnd(given: RodInputs): Judgement {
  const size = sizeOf(given.diameterIn);
  const thread = threadStrength(given.diameterIn);
  const pitchIn = 1 / size.threadsPerInch;
  const projectionIn = projectionOf(given, pitchIn);
  if (projectionIn === undefined)
    return { verdict: 'undetermined', reasons: () => [MEASURE_RECESS], missing: ['projectionIn'] };
  const rule = ROD_END_RULES.find((row) => row.rule === given.rule) ?? FLUSH;
  const nutIn = size.nutMinIn[given.nut];
  const engagedIn = Math.min(nutIn, Math.max(0, nutIn + projectionIn));
  const share = shareOf(engagedIn, nutIn) ?? 0;
  const credited = atLeast(share, DESIGN_GUIDE_LEAST_SHARE);
  const passes = passingRules(projectionIn, pitchIn);
  const meets = passes[given.rule];
  return {
    verdict: meets ? 'meets' : 'fails',
    ratio: largestRatio([ratioOf(nutIn + rule.pitchesBeyond * pitchIn, nutIn + projectionIn)]),
    remaining: credited ? share : 0,
    values: () => ({
      threadsBeyond: countOf(projectionIn / pitchIn),
      engagedIn: inchesOf(engagedIn),
      engagedThreads: countOf(engagedIn / pitchIn),
      engagedShare: shareQuantity(share),
      nutMinIn: inchesOf(nutIn),
      rodStripIn2: squareInchesOf(thread.rodStripIn2 * engagedIn),
      nutStripIn2: squareInchesOf(thread.nutStripIn2 * engagedIn),
      equalStrengthIn: inchesOf(thread.equalStrengthIn),
      geometricShare: shareQuantity(shareOf(engagedIn, thread.equalStrengthIn) ?? 0),
      ordinaryRodLb: poundsOf(ordinaryRodTensionLb(given.diameterIn)),
      passesFlush: yesNoOf(passes.flush),
      passesTwoPitches: yesNoOf(passes['two-pitches']),
      passesThreeThreads: yesNoOf(passes['three-threads']),
      passesThreeQuarterNut: yesNoOf(atLeast(share, FHWA_ENGAGED_SHARE)),
      passesHalfNut: yesNoOf(credited),
    }),
    reasons: () => [
      reasonThat(meets, measuredWords(projectionIn, rule.pitchesBeyond * pitchIn, engagedIn, engagedIn / pitchIn)),
      text(`The rule asks for a rod end ${rule.title.en}.`, `La regla pide que la varilla termine ${rule.title.es}.`),
      ...(credited ? [] : [UNDER_HALF]),
    ],
    cautions: () => [DISAGREE],
    hangsOn: [NUT_SIZES_SOURCE, rule.source],
    sources: [NUT_SIZES_SOURCE, rule.source, DESIGN_GUIDE_SOURCE, FHWA_SOURCE, THREAD_SOURCE, ROD_TENSION_SOURCE],
    referrals: meets ? [] : ['engineer'],
    repairs: meets ? [] : credited ? ['coupler-and-rod'] : ['coupler-and-rod', 'engineer-letter'],
    facts: { ratio: null, ...(credited ? {} : { engineerAlways: UNDER_HALF }) },
  };
}

/** Whether a hold-down or anchor rod fills its nut. Inches; rods 1/2 to 1 in, coarse thread. */
export const threadEngagement = defineCheck({
  ...threadEngagementCard,
  editions: [
    {
      id: 'asme-b18.2.2',
      title: text('ASME B18.2.2 nut sizes, with the rule chosen', 'Tuercas ASME B18.2.2, con la regla elegida'),
    },
  ],
  defaultEdition: 'asme-b18.2.2',
  sources: [
    NUT_SIZES_SOURCE,
    ...ROD_END_RULES.map((row) => row.source),
    DESIGN_GUIDE_SOURCE,
    FHWA_SOURCE,
    THREAD_SOURCE,
    ROD_TENSION_SOURCE,
  ],
  inputs,
  refine: endIssues,
  evaluate: judgeRodEnd,
  repairs: ['coupler-and-rod', 'engineer-letter'],
  client: {
    found: (inputs, { verdict }) =>
      verdict === 'meets'
        ? text(
            'A steel rod that ties the wall to the foundation fills its nut.',
            'Una varilla de acero que sujeta la pared al cimiento llena su tuerca.',
          )
        : text(
            `A steel rod that ties the wall to the foundation does not fill its nut${recessWords(inputs.projectionIn).en}.`,
            `Una varilla de acero que sujeta la pared al cimiento no llena su tuerca${recessWords(inputs.projectionIn).es}.`,
          ),
    why: text(
      'In an earthquake or strong wind this rod keeps the wall from lifting. Threads that are not engaged cannot hold.',
      'En un sismo o viento fuerte esta varilla evita que la pared se levante. La parte de la rosca fuera de la tuerca no sostiene nada.',
    ),
    ifNot: text(
      'In an earthquake or strong wind this end of the wall could lift.',
      'En un sismo o viento fuerte este extremo de la pared podría levantarse.',
    ),
  },
  doesNotCover: [
    text('Rod steel grade, tension, and the concrete around it.', 'El acero de la varilla, su tensión y el concreto.'),
    text('Fine threads, metric rods, coupler nuts.', 'Roscas finas, varillas métricas, tuercas de acople.'),
  ],
  cases: () => import('./thread-engagement.cases.ts'),
});

function recessWords(projectionIn: number | undefined): Text {
  if (projectionIn === undefined || projectionIn >= 0) return text('', '');
  const by = formatLength(-projectionIn);
  return text(`: it stops ${by} short`, `: le falta ${by}`);
}
