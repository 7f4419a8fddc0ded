import {
  atLeast,
  atMost,
  type Complete,
  choice,
  compareLengths,
  defineCheck,
  factorOf,
  formatLength,
  inchesOf,
  type Judgement,
  length,
  type Quantity,
  ratioOf,
  reasonThat,
  slopeOf,
  type Text,
  text,
  yesNoOf,
} from '../../kernel/index.ts';
import { REMEDIAL_SLOPE, SLOPE_RULES, TILT_SOURCE } from '../../standards/level-tolerances/floor-slope.data.ts';
import { floorSlopeCard } from './floor-slope.card.ts';

const inputs = {
  riseIn: length({
    unit: 'in',
    min: 0,
    max: 600,
    denominator: 32,
    label: text('Out of level or plumb', 'Desnivel o desplome'),
    howToMeasure: text('Height of one end over the other.', 'Altura de un extremo sobre el otro.'),
  }),
  runIn: length({
    unit: 'in',
    min: 1,
    max: 6000,
    label: text('Over this distance', 'En esta distancia'),
    howToMeasure: text('Along the floor, or up the wall.', 'A lo largo del piso o hacia arriba en la pared.'),
  }),
  rule: choice({
    options: SLOPE_RULES.map(({ id, title }) => ({ value: id, label: title })),
    default: 'half-in-20-ft',
    label: text('Tolerance to hold it to', 'Tolerancia a aplicar'),
    howToMeasure: text('From the contract, else the strictest.', 'La del contrato; si no, la más estricta.'),
  }),
} as const;

type SlopeInputs = Complete<typeof inputs>;

const NO_CODE = text(
  'No building code sets a level for house floors; the published tolerances disagree and none is about safety. The chosen one decides, the others are shown beside it.',
  'Ningún código fija el nivel de los pisos; las tolerancias publicadas no coinciden y ninguna trata de seguridad. Decide la elegida; las demás se muestran al lado.',
);
const FIND_CAUSE = text(
  'Measure at several points before blaming one joist: a whole floor that tilts points to the supports or the ground.',
  'Mida en varios puntos antes de culpar a una vigueta: un piso entero inclinado apunta a los apoyos o al suelo.',
);
const REMEDY = text(
  'From 1/100 the published advice is to remedy the cause: bring in an engineer.',
  'Desde 1/100 lo publicado pide corregir la causa: llame a un ingeniero.',
);

const DEGREES = 180 / Math.PI;

/** The N of a slope of 1 in N; undefined when level. */
function oneInOf({ riseIn, runIn }: SlopeInputs): number | undefined {
  return atMost(riseIn, 0) ? undefined : runIn / riseIn;
}

/** Whether the slope passes each of the named tolerances. */
function passing({ riseIn, runIn }: SlopeInputs): Record<string, Quantity> {
  return Object.fromEntries(
    SLOPE_RULES.map((rule) => [`passes.${rule.id}`, yesNoOf(atMost(riseIn * rule.runIn, rule.riseIn * runIn))]),
  );
}

function judgeSlope(given: SlopeInputs): Judgement {
  const { riseIn, runIn } = given;
  const rule = SLOPE_RULES.find((row) => row.id === given.rule);
  if (!rule) throw new RangeError(`No slope rule ${given.rule}`);
  const allowedIn = (rule.riseIn / rule.runIn) * runIn;
  const meets = atMost(riseIn, allowedIn);
  const tilts = atLeast(riseIn, REMEDIAL_SLOPE * runIn);
  const oneIn = oneInOf(given);
  return {
    verdict: meets ? 'meets' : 'fails',
    ratio: ratioOf(riseIn, allowedIn),
    values: () => ({
      slope: slopeOf(riseIn / runIn),
      ...(oneIn !== undefined && { slopeOneIn: factorOf(oneIn) }),
      angleDeg: { value: Math.atan(riseIn / runIn) * DEGREES, unit: 'deg' },
      allowedIn: inchesOf(allowedIn),
      ...passing(given),
    }),
    reasons: () => [reasonThat(meets, slopeWords(given, rule, allowedIn))],
    cautions: () => [NO_CODE, ...(meets ? [] : [FIND_CAUSE]), ...(tilts ? [REMEDY] : [])],
    referrals: tilts ? ['engineer'] : [],
    repairs: meets ? [] : tilts ? ['engineer-letter', 're-shim'] : ['re-shim'],
    hangsOn: [rule.source],
    sources: tilts ? [rule.source, TILT_SOURCE] : [rule.source],
    facts: { ratio: null },
  };
}

function slopeWords({ riseIn, runIn }: SlopeInputs, rule: (typeof SLOPE_RULES)[number], allowedIn: number): Text {
  const { measured, limit } = compareLengths(riseIn, allowedIn, 'at-most', 32);
  const run = formatLength(runIn);
  return text(
    `It is off ${measured.en} in ${run}; the tolerance chosen is ${rule.title.en}: ${limit} here.`,
    `Tiene ${measured.es} de diferencia en ${run}; la tolerancia elegida es ${rule.title.es}: aquí ${limit}.`,
  );
}

/** How far a floor is out of level, or a wall out of plumb, against the tolerance chosen. Inches. */
export const floorSlope = defineCheck({
  ...floorSlopeCard,
  editions: [{ id: 'named-tolerances', title: text('Named tolerances', 'Tolerancias con nombre') }],
  defaultEdition: 'named-tolerances',
  sources: [...new Set(SLOPE_RULES.map((rule) => rule.source))],
  inputs,
  evaluate: judgeSlope,
  repairs: ['re-shim', 'engineer-letter'],
  client: {
    found: ({ riseIn, runIn }) =>
      riseIn !== undefined && runIn !== undefined
        ? text(
            `The floor or wall is off by ${formatLength(riseIn)} over ${formatLength(runIn)}.`,
            `El piso o la pared tiene ${formatLength(riseIn)} de diferencia en ${formatLength(runIn)}.`,
          )
        : text('The floor slopes or a wall leans.', 'El piso está inclinado o una pared ladeada.'),
    why: text(
      'New tile, doors and cabinets need a floor that is close to level.',
      'Los azulejos, puertas y gabinetes nuevos necesitan un piso casi a nivel.',
    ),
    ifNot: text(
      'Finishes can crack and doors can swing by themselves.',
      'Puede agrietarse lo nuevo y moverse las puertas.',
    ),
  },
  doesNotCover: [
    text('What a wood floor or tile maker asks for.', 'Lo que pide el fabricante del piso.'),
    text('Why it slopes, and whether it still moves.', 'Por qué se inclina y si aún se mueve.'),
  ],
  cases: () => import('./floor-slope.cases.ts'),
});
