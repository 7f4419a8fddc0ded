import {
  atMost,
  type Complete,
  compareNumbers,
  decimal,
  defineCheck,
  factorOf,
  feetOf,
  footPoundsOf,
  type InputIssue,
  type Judgement,
  type Partials,
  plfOf,
  pounds,
  poundsOf,
  type Reason,
  ratioOf,
  reasonThat,
  refuse,
  refuseLonger,
  type Situation,
  sayCounted,
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
import { overturningCard } from './overturning.card.ts';
import { inputs } from './overturning.inputs.ts';

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

/** The share given, or that of the site; the inputs are refused where both are given and differ. */
function deadFactorOf({ deadFactor, sds }: OverturningInputs): number {
  if (deadFactor !== undefined) return deadFactor;
  if (sds === undefined) throw new RangeError('Neither dead load factor nor S_DS; the schema asks for one');
  return seismicDeadFactor(sds);
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

function judgeOverturning(given: OverturningInputs, { storiesAbove = 0 }: Situation): Judgement {
  const found = upliftOf(given);
  const { upliftLb } = found;
  const tied = upliftLb > 0;
  const known = given.holdDownCapacityLb;
  const capacityLb = known === undefined ? undefined : known * (given.holdDownRemaining ?? 1);
  // The place says that something stands on the wall, and nobody gave it.
  const unloaded = storiesAbove > 0 && given.stories === undefined;
  const missing = [...(unloaded ? ['stories'] : []), ...missingOf(given, found, capacityLb)];
  const fails = tied && capacityLb !== undefined && !atMost(upliftLb, capacityLb);
  return {
    verdict: fails ? 'fails' : missing.length > 0 ? 'undetermined' : 'meets',
    ratio: ratioOf(Math.max(0, upliftLb), capacityLb),
    remaining: fails || missing.length === 0 ? remainingOf(given, found, capacityLb) : null,
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

/** Share of the uplift that is held, by the usual lever where none was measured. */
function remainingOf(given: OverturningInputs, found: Uplift, capacityLb: number | undefined): number | null {
  if (found.upliftLb <= 0) return 1;
  return capacityLb === undefined ? null : shareOf(capacityLb, shortLeverLb(given, found));
}

/** What must still be known: the capacity of a hold-down that is needed, and the lever where it decides. */
function missingOf(given: OverturningInputs, found: Uplift, capacityLb: number | undefined): string[] {
  if (found.upliftLb <= 0) return [];
  if (capacityLb === undefined) return ['holdDownCapacityLb'];
  return atMost(shortLeverLb(given, found), capacityLb) ? [] : ['leverFt'];
}

function upliftReasons(upliftLb: number, capacityLb: number | undefined): Reason[] {
  if (upliftLb <= 0)
    return [
      text(
        'Its own dead load keeps the wall end down: no tie is needed.',
        'La carga muerta mantiene abajo el extremo de la pared: no necesita anclaje.',
      ),
    ];
  if (capacityLb === undefined)
    return [text(`The wall end lifts with ${pounds(upliftLb)}.`, `El extremo se levanta con ${pounds(upliftLb)}.`)];
  const { measured, limit } = compareNumbers(upliftLb, capacityLb, 'at-most', pounds);
  return [
    reasonThat(
      atMost(upliftLb, capacityLb),
      text(
        `The wall end lifts with ${measured.en}; the hold-down holds ${limit}.`,
        `El extremo se levanta con ${measured.es}; el anclaje resiste ${limit}.`,
      ),
    ),
  ];
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
            `Se toma como palanca el largo de la pared; con el anclaje 6 in adentro, levanta ${pounds(short)}.`,
          ),
        ]),
    text(
      `Los Angeles counts ${LA_NOT_CYCLIC_PCT}% of a hold-down not tested by cycles.`,
      `Los Ángeles cuenta el ${LA_NOT_CYCLIC_PCT}% de un anclaje no probado por ciclos.`,
    ),
  ];
}

function impossible({ leverFt, lengthFt, deadFactor, sds }: Partials<typeof inputs>): InputIssue[] {
  if (deadFactor !== undefined && sds !== undefined && ratioOf(deadFactor, seismicDeadFactor(sds)) !== 1)
    return ['deadFactor', 'sds'].map((input) => twoFactors(deadFactor, seismicDeadFactor(sds), input));
  return refuseLonger(['leverFt'], {
    what: inputs.leverFt.label,
    came: leverFt,
    most: lengthFt,
    ofWhat: text('the length of the wall', 'el largo de la pared'),
    unit: 'ft',
  });
}

const twoFactors = (given: number, bySite: number, input: string): InputIssue =>
  refuse(
    [input],
    text(
      `${decimal(given)} and ${decimal(bySite)} by the site`,
      `${decimal(given)} y ${decimal(bySite)} según el sitio`,
    ),
    text('the one for the load of this wall', 'la de la carga de esta pared'),
    text(
      `The share of dead load, ${decimal(given)}, and that of the site, ${decimal(bySite)}, do not agree: give the one for the load of this wall.`,
      `La parte de carga muerta, ${decimal(given)}, y la del sitio, ${decimal(bySite)}, no coinciden: dé la de la carga de esta pared.`,
    ),
  );

/** Uplift at the end of a shear wall and whether its hold-down holds it. Pounds, feet, plf; ASD; up to 10 stories above. */
export const overturning = defineCheck({
  ...overturningCard,
  editions: [{ id: 'sdpws-2021', title: text('SDPWS 2021 chord force, ASD', 'SDPWS 2021, fuerza de cuerda, ASD') }],
  defaultEdition: 'sdpws-2021',
  sources: [CHORD_SOURCE, DEAD_LOAD_SOURCE, LEVER_SOURCE, LA_HOLD_DOWN_SOURCE],
  inputs,
  refine: impossible,
  evaluate: (given, { situation }) => judgeOverturning(given, situation),
  repairs: ['hold-down-new', 'rod-replace', 'engineer-letter'],
  client: {
    found: (_inputs, { remaining }) =>
      remaining === null || remaining === 1
        ? text('We checked what keeps a wall end down.', 'Revisamos qué mantiene abajo el extremo de una pared.')
        : sayCounted(
            remaining,
            text(
              'what the steel tie at a wall end must hold',
              'lo que el anclaje del extremo de una pared debe resistir',
            ),
          ),
    why: text(
      'In an earthquake or strong wind the wall tries to tip. This tie keeps its end down.',
      'En un sismo o viento fuerte la pared tiende a volcarse. El anclaje mantiene abajo su extremo.',
    ),
    ifNot: text('The end of the wall could lift.', 'El extremo de la pared podría levantarse.'),
  },
  doesNotCover: [
    text('Crushing under the other post, and the footing.', 'El aplastamiento bajo el otro poste y el cimiento.'),
    text('Uplift of a roof by wind.', 'El levantamiento del techo por viento.'),
    text('Walls above that are not in line with this one.', 'Paredes de arriba que no están en línea con esta.'),
  ],
  cases: () => import('./overturning.cases.ts'),
});
