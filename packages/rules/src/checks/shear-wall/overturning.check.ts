import {
  atMost,
  type Complete,
  decimal,
  defineCheck,
  factorOf,
  feetOf,
  footPoundsOf,
  type InputIssue,
  type Judgement,
  length,
  list,
  number,
  type Partials,
  plfOf,
  pounds,
  poundsOf,
  ratioOf,
  shareOf,
  type Text,
  text,
} from '../../kernel/index.ts';
import { DEAD_LOAD_SOURCE, seismicDeadFactor } from '../../standards/asce-7/overturning.data.ts';
import { LA_HOLD_DOWN_SOURCE, LA_NOT_CYCLIC_PCT } from '../../standards/lamc-91.2305/hold-downs.data.ts';
import {
  CHORD_SOURCE,
  LEVER_SOURCE,
  USUAL_HOLD_DOWN_OFFSET_FT,
} from '../../standards/sdpws-common/overturning.data.ts';

const shear = (label: Text) => number({ unit: 'lb', min: 0, max: 1_000_000, label });
const height = (label: Text) => length({ unit: 'ft', min: 0.5, max: 60, label });
const dead = { unit: 'plf', min: 0, max: 100_000 } as const;

const inputs = {
  shearLb: {
    ...shear(text('Shear in this wall, from all stories above', 'Cortante en este muro, de todos los pisos de arriba')),
    howToMeasure: text('From the engineer, ASD.', 'Del ingeniero, ASD.'),
  },
  heightFt: height(text('Wall height', 'Altura del muro')),
  lengthFt: length({ unit: 'ft', min: 0.5, max: 400, label: text('Wall length', 'Largo del muro') }),
  leverFt: length({
    unit: 'ft',
    min: 0.25,
    max: 400,
    needed: 'optional',
    label: text('Hold-down to the far post', 'Del anclaje al poste del otro extremo'),
    howToMeasure: text(
      'From the rod to the middle of the post that is pressed down. Left out: the wall length.',
      'De la varilla al centro del poste comprimido. Si falta: el largo del muro.',
    ),
  }),
  deadLoadPlf: number({ ...dead, label: text('Dead load on this wall', 'Carga muerta sobre este muro') }),
  deadFactor: number({
    unit: 'factor',
    min: 0,
    max: 1,
    needed: { when: { input: 'sds', known: false } },
    label: text('Share of dead load that counts', 'Parte de la carga muerta que cuenta'),
    howToMeasure: text('0.6 for wind.', '0.6 para viento.'),
  }),
  sds: number({
    unit: 'g',
    min: 0,
    max: 3,
    needed: 'optional',
    label: text('Or, for earthquakes: S_DS of the site', 'O, por sismo: S_DS del sitio'),
  }),
  stories: list({
    needed: 'optional',
    maxItems: 10,
    label: text('Walls stacked above', 'Muros apilados arriba'),
    item: {
      shearLb: shear(text('Shear in that wall', 'Cortante en ese muro')),
      heightFt: height(text('Its height', 'Su altura')),
      deadLoadPlf: number({
        ...dead,
        default: 0,
        label: text('Dead load not counted below', 'Carga muerta no contada abajo'),
      }),
    },
  }),
  holdDownCapacityLb: number({
    unit: 'lb',
    min: 0,
    max: 1_000_000,
    needed: 'optional',
    label: text('Hold-down capacity, published', 'Capacidad publicada del anclaje'),
    howToMeasure: text('For its model, post and species.', 'Para su modelo, poste y especie.'),
  }),
  holdDownRemaining: number({
    unit: 'share',
    min: 0,
    max: 1,
    needed: 'optional',
    label: text('Share of the hold-down that is left', 'Parte del anclaje que queda'),
    howToMeasure: text('From the rod and nut check.', 'De la revisión de varilla y tuerca.'),
  }),
} as const;

type OverturningInputs = Complete<typeof inputs>;

/** Moments and uplift at the foot of the wall. Pounds and feet. */
interface Uplift {
  readonly overturningFtLb: number;
  readonly deadLoadPlf: number;
  readonly deadMomentFtLb: number;
  readonly deadFactor: number;
  readonly resistingFtLb: number;
  readonly leverFt: number;
  readonly upliftLb: number;
}

/** Where both factors are given the lower counts. */
function deadFactorOf({ deadFactor, sds }: OverturningInputs): number {
  const bySite = sds === undefined ? 1 : seismicDeadFactor(sds);
  return Math.min(deadFactor ?? 1, bySite);
}

function upliftOf(given: OverturningInputs): Uplift {
  const { lengthFt, leverFt = lengthFt } = given;
  let overturningFtLb = given.shearLb * given.heightFt;
  let deadLoadPlf = given.deadLoadPlf;
  for (const story of given.stories ?? []) {
    overturningFtLb += story.shearLb * story.heightFt;
    deadLoadPlf += story.deadLoadPlf;
  }
  const deadMomentFtLb = (deadLoadPlf * lengthFt ** 2) / 2;
  const deadFactor = deadFactorOf(given);
  const resistingFtLb = deadFactor * deadMomentFtLb;
  const upliftLb = (overturningFtLb - resistingFtLb) / leverFt;
  return { overturningFtLb, deadLoadPlf, deadMomentFtLb, deadFactor, resistingFtLb, leverFt, upliftLb };
}

/** Uplift if the hold-down stood the usual distance inside the wall end; the same where the lever was measured. */
function shortLeverLb(given: OverturningInputs, { upliftLb, leverFt }: Uplift): number {
  const shortFt = leverFt - USUAL_HOLD_DOWN_OFFSET_FT;
  return given.leverFt !== undefined || upliftLb <= 0 || shortFt <= 0 ? upliftLb : (upliftLb * leverFt) / shortFt;
}

function judgeOverturning(given: OverturningInputs): Judgement {
  const found = upliftOf(given);
  const { upliftLb } = found;
  const tied = upliftLb > 0;
  const known = given.holdDownCapacityLb;
  const capacityLb = known === undefined ? undefined : known * (given.holdDownRemaining ?? 1);
  const missing = missingOf(given, found, capacityLb);
  const fails = tied && capacityLb !== undefined && !atMost(upliftLb, capacityLb);
  return {
    verdict: fails ? 'fails' : missing.length > 0 ? 'undetermined' : 'meets',
    ratio: ratioOf(Math.max(0, upliftLb), capacityLb),
    remaining: tied ? (capacityLb === undefined ? null : shareOf(capacityLb, upliftLb)) : 1,
    missing: fails ? [] : missing,
    values: () => ({
      overturningFtLb: footPoundsOf(found.overturningFtLb),
      totalDeadLoadPlf: plfOf(found.deadLoadPlf),
      deadMomentFtLb: footPoundsOf(found.deadMomentFtLb),
      deadFactor: factorOf(found.deadFactor),
      resistingFtLb: footPoundsOf(found.resistingFtLb),
      leverFt: feetOf(found.leverFt),
      upliftLb: poundsOf(upliftLb),
      ...(capacityLb !== undefined && { holdDownLb: poundsOf(capacityLb) }),
    }),
    reasons: () => upliftReasons(upliftLb, capacityLb),
    cautions: () => upliftCautions(given, found),
    hangsOn: [CHORD_SOURCE, ...(given.sds === undefined ? [] : [DEAD_LOAD_SOURCE])],
    sources: [CHORD_SOURCE, DEAD_LOAD_SOURCE, LEVER_SOURCE, LA_HOLD_DOWN_SOURCE],
    referrals: fails ? ['engineer'] : [],
    repairs: fails ? ['hold-down-new', 'rod-replace', 'engineer-letter'] : [],
  };
}

/** What must still be known: the capacity of a hold-down that is needed, and the lever where it decides. */
function missingOf(given: OverturningInputs, found: Uplift, capacityLb: number | undefined): string[] {
  if (found.upliftLb <= 0) return [];
  if (capacityLb === undefined) return ['holdDownCapacityLb'];
  return atMost(shortLeverLb(given, found), capacityLb) ? [] : ['leverFt'];
}

function upliftReasons(upliftLb: number, capacityLb: number | undefined): Text[] {
  if (upliftLb <= 0)
    return [
      text(
        'Its own dead load keeps the wall end down: no tie is needed.',
        'La carga muerta mantiene abajo el extremo del muro: no necesita anclaje.',
      ),
    ];
  const lifts = text(`The wall end lifts with ${pounds(upliftLb)}.`, `El extremo se levanta con ${pounds(upliftLb)}.`);
  if (capacityLb === undefined) return [lifts];
  return [lifts, text(`The hold-down holds ${pounds(capacityLb)}.`, `El anclaje resiste ${pounds(capacityLb)}.`)];
}

function upliftCautions(given: OverturningInputs, found: Uplift): Text[] {
  if (found.upliftLb <= 0) return [];
  const short = shortLeverLb(given, found);
  return [
    ...(short === found.upliftLb
      ? []
      : [
          text(
            `The lever is taken as the wall length; with the hold-down 6 in inside it, the uplift is ${pounds(short)}.`,
            `Se toma como palanca el largo del muro; con el anclaje 6 in adentro, levanta ${pounds(short)}.`,
          ),
        ]),
    ...(given.holdDownRemaining === undefined
      ? [text('The hold-down is counted whole: check its rod.', 'El anclaje se cuenta entero: revise su varilla.')]
      : []),
    text(
      `Los Angeles counts ${LA_NOT_CYCLIC_PCT} % of a hold-down not tested by cycles.`,
      `Los Ángeles cuenta el ${LA_NOT_CYCLIC_PCT} % de un anclaje no probado por ciclos.`,
    ),
  ];
}

function impossible({ leverFt, lengthFt }: Partials<typeof inputs>): InputIssue[] {
  if (leverFt === undefined || lengthFt === undefined || atMost(leverFt, lengthFt)) return [];
  return [
    {
      path: ['leverFt'],
      message: text(
        `leverFt: got ${leverFt} ft; allowed is at most the wall length, ${lengthFt} ft.`,
        `leverFt: llegó ${leverFt} ft; se permite hasta el largo del muro, ${lengthFt} ft.`,
      ),
    },
  ];
}

/** Uplift at the end of a shear wall and whether its hold-down holds it. Pounds, feet, plf; ASD; up to 10 stories above. */
export const overturning = defineCheck({
  id: 'shear-wall.overturning',
  title: text('Wall lifting at its end', 'Levantamiento del extremo del muro'),
  question: text('Does the hold-down keep this wall from tipping up?', '¿El anclaje evita que el muro se levante?'),
  element: 'hold-down',
  role: 'lateral',
  editions: [{ id: 'sdpws-2021', title: text('SDPWS 2021 chord force, ASD', 'SDPWS 2021, fuerza de cuerda, ASD') }],
  defaultEdition: 'sdpws-2021',
  sources: [CHORD_SOURCE, DEAD_LOAD_SOURCE, LEVER_SOURCE, LA_HOLD_DOWN_SOURCE],
  inputs,
  refine: impossible,
  evaluate: judgeOverturning,
  repairs: ['hold-down-new', 'rod-replace', 'engineer-letter'],
  client: {
    found: (_inputs, { remaining }) =>
      remaining === null || remaining === 1
        ? text('We checked what keeps a wall end down.', 'Revisamos qué mantiene abajo el extremo de un muro.')
        : text(
            `The steel tie at a wall end holds ${decimal(remaining * 100, 0)} % of what it must.`,
            `El anclaje del extremo de un muro resiste el ${decimal(remaining * 100, 0)} % de lo necesario.`,
          ),
    why: text(
      'In an earthquake or strong wind the wall tries to tip. This tie keeps its end down.',
      'En un sismo o viento fuerte el muro tiende a volcarse. El anclaje mantiene abajo su extremo.',
    ),
    ifNot: text('The wall end may lift.', 'El extremo del muro puede levantarse.'),
  },
  doesNotCover: [
    text('Crushing under the other post, and the footing.', 'El aplastamiento bajo el otro poste y el cimiento.'),
    text('Uplift of a roof by wind.', 'El levantamiento del techo por viento.'),
    text('Walls above that are not in line with this one.', 'Muros de arriba que no están en línea con este.'),
  ],
  cases: () => import('./overturning.cases.ts'),
  drawing: () => import('./overturning.drawing.ts'),
});
