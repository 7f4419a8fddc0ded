import {
  atLeast,
  atMost,
  type Complete,
  compareLengths,
  compareLoad,
  defineCheck,
  factorOf,
  formatLength,
  inchesOf,
  type Judgement,
  type KnownAlready,
  largestRatio,
  type Partials,
  poundsOf,
  psiOf,
  type Reason,
  ratioOf,
  reasonThat,
  type Source,
  shareOf,
  shareQuantity,
  type Text,
  text,
} from '../../kernel/index.ts';
import {
  IRC_BEARING_SOURCE,
  LEAST_BEARING_IN,
  POSITIVE_CONNECTION_SOURCE,
} from '../../standards/irc-bearing/bearing.data.ts';
import {
  BEARING_FACTOR_SOURCE,
  bearingFactor,
  bearingLengthForLoad,
  FC_PERP_PSI,
  FC_PERP_SOURCES,
} from '../../standards/nds-2018/bearing.ts';
import { bearingSeatCard } from './seat.card.ts';
import { inputs, otherThanSpecies } from './seat.inputs.ts';

type SeatInputs = Complete<typeof inputs>;

const NOTHING_HOLDS = text(
  'No connection holds it and no seat is left after the expected movement.',
  'Ninguna conexión lo sujeta y no queda apoyo después del movimiento esperado.',
);
const MARGIN_GONE = text(
  'The expected movement takes the whole seat: only the connection would carry it.',
  'El movimiento esperado se lleva todo el apoyo: solo la conexión lo sostendría.',
);
const NOT_CONNECTED = text(
  'Nothing but weight and friction keeps it on the seat: it needs a positive connection.',
  'Solo el peso y la fricción lo mantienen en el apoyo: necesita una conexión positiva.',
);
const ONLY_DOWN = text(
  'Without a connection the seat counts for weight alone: sideways and against uplift it counts for nothing.',
  'Sin conexión el apoyo solo cuenta para el peso: de lado y contra el levantamiento no cuenta.',
);
const SILL_ON_MASONRY = text(
  'On masonry some officials also ask 3 in through a sill, others take 1-1/2 in on it; the sill is at least 48 square inches.',
  'Sobre mampostería algunos oficiales piden 3 in también a través de la solera, otros 1-1/2 in; la solera tiene al menos 48 pulgadas cuadradas.',
);

/** The design value across the grain, psi, with where it comes from. */
function acrossGrain(given: SeatInputs): { psi: number; source: Source | undefined } {
  if (given.fcPerpPsi !== undefined) return { psi: given.fcPerpPsi, source: undefined };
  const row = FC_PERP_PSI[given.species ?? 'hem-fir'];
  return { psi: row.psi, source: row.source };
}

/** The sources disagree on whether the 3 in of masonry reach through a sill; the one who measures chooses. */
const countsAs = ({ support, sillOnMasonry }: SeatInputs): SeatInputs['support'] =>
  support === 'wood' && sillOnMasonry === 'three-inches' ? 'masonry' : support;

function judgeSeat(given: SeatInputs): Judgement {
  const { widthIn, bearingLengthIn: bearingIn, reactionLb } = given;
  const { psi, source } = acrossGrain(given);
  const byCodeIn = LEAST_BEARING_IN[countsAs(given)];
  const byLoadIn = reactionLb === undefined ? 0 : bearingLengthForLoad(reactionLb, widthIn, psi, given.atMemberEnd);
  const requiredIn = Math.max(byCodeIn, byLoadIn);
  const factor = bearingFactor(bearingIn, given.atMemberEnd);
  const capacityLb = psi * widthIn * bearingIn * factor;
  const marginIn = bearingIn - (given.expectedMovementIn ?? 0);
  const nothingHolds = !given.positiveConnection && atMost(marginIn, 0);
  // The seat must still be enough once the building has moved.
  const afterIn = Math.max(0, marginIn);
  const afterLb = psi * widthIn * afterIn * bearingFactor(afterIn, given.atMemberEnd);
  // From 6 in on there is no bearing factor, so that a little over 6 in may carry less than a little under it.
  const carries = reactionLb === undefined || atLeast(afterLb, reactionLb);
  const bears = atLeast(afterIn, requiredIn) && carries;
  const meets = bears && given.positiveConnection;
  const today = largestRatio([ratioOf(requiredIn, bearingIn), ratioOf(reactionLb, capacityLb)]);
  const shrinksAway = !bears && afterIn < bearingIn && atLeast(bearingIn, requiredIn);
  const bearsOn = [IRC_BEARING_SOURCE, ...(source && reactionLb !== undefined ? [source] : [])];
  return {
    verdict: meets ? 'meets' : 'fails',
    ratio: shrinksAway ? largestRatio([ratioOf(requiredIn, afterIn), ratioOf(reactionLb, afterLb)]) : today,
    remaining: nothingHolds ? 0 : shareOf(bearingIn, requiredIn),
    values: () => ({
      requiredIn: inchesOf(requiredIn),
      requiredByCodeIn: inchesOf(byCodeIn),
      ...(reactionLb !== undefined && { requiredByLoadIn: inchesOf(byLoadIn) }),
      ...(reactionLb !== undefined &&
        !atMost(bearingIn, 0) && { stressPsi: psiOf(reactionLb / (widthIn * bearingIn)) }),
      bearingFactor: factorOf(factor),
      capacityLb: poundsOf(capacityLb),
      seatMarginIn: inchesOf(marginIn),
      ...(!given.positiveConnection && { sidewaysShare: shareQuantity(0) }),
      ...(given.expectedMovementIn !== undefined && { capacityAfterLb: poundsOf(afterLb) }),
    }),
    reasons: () => [
      ...(nothingHolds
        ? [reasonThat(false, NOTHING_HOLDS)]
        : given.positiveConnection
          ? []
          : [reasonThat(false, NOT_CONNECTED)]),
      ...(shrinksAway && !nothingHolds ? [reasonThat(false, tooShortAfter(afterIn, requiredIn))] : []),
      ...bearingReasons(given, requiredIn, byLoadIn > byCodeIn, capacityLb),
    ],
    cautions: () => seatCautions(given, marginIn),
    hangsOn: given.positiveConnection || !bears ? bearsOn : [POSITIVE_CONNECTION_SOURCE],
    sources: [IRC_BEARING_SOURCE, POSITIVE_CONNECTION_SOURCE, ...(source ? [source] : []), BEARING_FACTOR_SOURCE],
    repairs: meets ? [] : seatRepairs(given.positiveConnection, bearingIn, requiredIn),
    // What it may come to does not make it unsafe today.
    facts: {
      ratio: today,
      memberKind: 'seat',
      positiveConnection: given.positiveConnection,
      nothingHolds,
      // A seat that bears enough lacks only the connector the code asks for.
      prescriptive: bears && !nothingHolds,
    },
  };
}

function bearingReasons(given: SeatInputs, requiredIn: number, loadRules: boolean, capacityLb: number): Reason[] {
  const { bearingLengthIn, reactionLb } = given;
  const { measured, limit } = compareLengths(bearingLengthIn, requiredIn, 'at-least');
  const by = loadRules ? text('by the load', 'por la carga') : text('by the code', 'por el código');
  const bears = text(
    `It bears ${measured.en}; ${limit} is required ${by.en}.`,
    `Se apoya ${measured.es}; se requiere ${limit} ${by.es}.`,
  );
  const reasons = [reasonThat(atLeast(bearingLengthIn, requiredIn), bears)];
  if (reactionLb !== undefined) {
    const { takes, load } = compareLoad(reactionLb, capacityLb);
    const carries = text(
      `The seat takes ${takes} across the grain${load.en}.`,
      `El apoyo resiste ${takes} perpendicular a la fibra${load.es}.`,
    );
    reasons.push(reasonThat(atMost(reactionLb, capacityLb), carries));
  }
  return reasons;
}

function tooShortAfter(afterIn: number, requiredIn: number): Text {
  const { measured } = compareLengths(afterIn, requiredIn, 'at-least');
  return text(
    `After the movement expected ${measured.en} is left: too little.`,
    `Tras el movimiento esperado quedan ${measured.es}: muy poco.`,
  );
}

function seatCautions(given: SeatInputs, marginIn: number): Text[] {
  return [
    ...(given.positiveConnection && atMost(marginIn, 0) ? [MARGIN_GONE] : []),
    ...(given.positiveConnection ? [] : [ONLY_DOWN]),
    ...(given.support === 'masonry' || given.sillOnMasonry !== undefined ? [SILL_ON_MASONRY] : []),
  ];
}

const seatRepairs = (connected: boolean, bearingIn: number, requiredIn: number): string[] =>
  !connected && atLeast(bearingIn, requiredIn) ? ['seat-connect'] : ['seat-restore', 'seat-connect', 'engineer-letter'];

/** A seat with neither connection nor bearing left is unsafe whatever else is still to be measured. */
function alreadyUnsafe(given: {
  bearingLengthIn?: number | undefined;
  expectedMovementIn?: number | undefined;
  positiveConnection?: boolean | undefined;
}): KnownAlready | undefined {
  if (given.bearingLengthIn === undefined || given.positiveConnection !== false) return undefined;
  if (!atMost(given.bearingLengthIn - (given.expectedMovementIn ?? 0), 0)) return undefined;
  return {
    reasons: () => [NOTHING_HOLDS],
    facts: { memberKind: 'seat', nothingHolds: true },
    repairs: ['seat-restore', 'seat-connect', 'engineer-letter'],
  };
}

function foundWords({ bearingLengthIn, positiveConnection }: Partials<typeof inputs>): Text {
  const loose =
    positiveConnection === false
      ? text(' Nothing but its weight holds it there.', ' Solo su peso la sujeta ahí.')
      : text('', '');
  if (bearingLengthIn === undefined)
    return text(`A beam may not sit well on its support.${loose.en}`, `Una viga puede no apoyarse bien.${loose.es}`);
  const length = formatLength(bearingLengthIn);
  return text(`A beam sits on ${length} of its support.${loose.en}`, `Una viga se apoya en ${length}.${loose.es}`);
}

/** Whether a joist or beam end bears enough, by code length and by stress across the grain. Inches, pounds. */
export const bearingSeat = defineCheck({
  ...bearingSeatCard,
  editions: [{ id: 'irc-r502.6', title: text('IRC R502.6 with NDS 2018', 'IRC R502.6 con NDS 2018') }],
  defaultEdition: 'irc-r502.6',
  sources: [IRC_BEARING_SOURCE, POSITIVE_CONNECTION_SOURCE, ...FC_PERP_SOURCES, BEARING_FACTOR_SOURCE],
  inputs,
  refine: otherThanSpecies,
  evaluate: judgeSeat,
  knownAlready: alreadyUnsafe,
  repairs: ['seat-restore', 'seat-connect', 'engineer-letter'],
  client: {
    found: foundWords,
    why: text(
      'All the weight above goes through this small spot. With too little wood touching, or nothing tying it down, it crushes or slips off.',
      'Todo el peso de arriba pasa por este punto. Con poca madera apoyada, o sin nada que la sujete, se aplasta o se sale.',
    ),
    ifNot: text('The floor above can drop.', 'El piso de arriba puede caer.'),
  },
  doesNotCover: [
    text('The post or wall under the seat.', 'El poste o la pared bajo el apoyo.'),
    text('Wet service and glued or engineered members.', 'Servicio húmedo y elementos laminados o de ingeniería.'),
  ],
  cases: () => import('./seat.cases.ts'),
});
