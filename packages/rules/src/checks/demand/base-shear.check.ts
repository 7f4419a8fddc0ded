import {
  atMost,
  type Complete,
  compareNumbers,
  decimal,
  defineCheck,
  factorOf,
  type InputIssue,
  type Judgement,
  largestRatio,
  type Partials,
  plfOf,
  pounds,
  poundsOf,
  type Quantity,
  ratioOf,
  reasonThat,
  refuse,
  refuseSameName,
  shareQuantity,
  type Text,
  text,
} from '../../kernel/index.ts';
import {
  ASD_EARTHQUAKE_SOURCE,
  ASD_SHARE,
  designAcceleration,
  REDUNDANCY,
  RESPONSE_FACTOR,
  SIMPLIFIED_STORY_LIMIT,
  SITE_SOURCE,
  STORY_FACTOR_SOURCE,
  SYSTEM_SOURCE,
  storyFactor,
} from '../../standards/asce-7/base-shear.data.ts';
import { UNKNOWN_SCHEDULE_PLF, UNKNOWN_SCHEDULE_SOURCE } from '../../standards/sdpws-common/unknown-schedule.data.ts';
import { baseShearCard } from './base-shear.card.ts';
import { inputs } from './base-shear.inputs.ts';

type DemandInputs = Complete<typeof inputs>;
type LineInputs = NonNullable<DemandInputs['lines']>[number];

const NEVER_A_DESIGN = text(
  'A screening load, never a design: an engineer decides what the house must resist.',
  'Una carga de revisión, nunca un diseño: un ingeniero decide qué debe resistir la casa.',
);

/** Share of a line: half of the width to each neighbor, over the whole, by flexible floors and roof. They sum to 1. */
function tributaryShare({ positionFt }: LineInputs, lines: readonly LineInputs[]): number {
  let [first, before, after, last] = [positionFt, Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY, positionFt];
  for (const { positionFt: otherFt } of lines) {
    first = Math.min(first, otherFt);
    last = Math.max(last, otherFt);
    if (otherFt < positionFt) before = Math.max(before, otherFt);
    if (otherFt > positionFt) after = Math.min(after, otherFt);
  }
  if (first === last) return 1;
  return (Math.min(after, last) - Math.max(before, first)) / 2 / (last - first);
}

/** What one line takes and how that compares with what it has. Pounds, plf; ASD. */
interface LineDemand {
  readonly line: LineInputs;
  readonly share: number;
  readonly loadLb: number;
  readonly unitPlf: number | undefined;
  readonly ratio: number | null;
}

function demandOf(line: LineInputs, share: number, asdLb: number): LineDemand {
  const loadLb = share * asdLb;
  const unitPlf = line.wallFt === undefined ? undefined : loadLb / line.wallFt;
  return { line, share, loadLb, unitPlf, ratio: ratioOf(unitPlf, line.capacityPlf) };
}

interface Demand {
  readonly sds: number;
  readonly factor: number;
  readonly response: number;
  readonly baseLb: number;
  readonly asdLb: number;
  readonly lines: readonly LineDemand[];
}

function measure(given: DemandInputs, factor: number): Demand {
  const sds = given.sds ?? designAcceleration(given.ss ?? 0, given.site ?? 'soil');
  const response = RESPONSE_FACTOR[given.system];
  const baseLb = (factor * sds * given.weightLb * given.importance) / response;
  const asdLb = ASD_SHARE * baseLb;
  const lines = given.lines ?? [];
  return {
    sds,
    factor,
    response,
    baseLb,
    asdLb,
    lines: lines.map((line) => demandOf(line, tributaryShare(line, lines), asdLb)),
  };
}

/** The lines, and their walls and strengths, that must be known before the load can be compared with anything. */
function missingOf({ lines }: Demand): string[] {
  if (lines.length === 0) return ['lines'];
  return lines.flatMap(({ line }, at) => [
    ...(line.wallFt === undefined ? [`lines.${at}.wallFt`] : []),
    ...(line.capacityPlf === undefined ? [`lines.${at}.capacityPlf`] : []),
  ]);
}

function judgeDemand(given: DemandInputs): Judgement {
  const factor = storyFactor(given.stories);
  if (factor === undefined) return tooManyStories();
  const demand = measure(given, factor);
  const ratio = largestRatio(demand.lines.map((line) => line.ratio));
  const fails = ratio !== null && !atMost(ratio, 1);
  const missing = fails ? [] : missingOf(demand);
  return {
    verdict: fails ? 'fails' : missing.length > 0 ? 'undetermined' : 'meets',
    ratio,
    missing,
    values: () => valuesOf(demand),
    reasons: () => demandReasons(demand),
    cautions: () => demandCautions(given, demand),
    hangsOn: [STORY_FACTOR_SOURCE, SYSTEM_SOURCE, ASD_EARTHQUAKE_SOURCE],
    referrals: ['engineer'],
    repairs: fails ? ['engineer-letter'] : [],
    // A screening figure that asks nothing of anybody yet is a calculation; the referral stands in every answer.
    facts: fails ? { engineerAlways: NEVER_A_DESIGN } : { calculationOnly: true },
  };
}

const tooManyStories = (): Judgement => ({
  verdict: 'not-applicable',
  reasons: () => [
    text(
      `The simplified procedure stops at ${SIMPLIFIED_STORY_LIMIT} stories.`,
      `El procedimiento simplificado llega a ${SIMPLIFIED_STORY_LIMIT} pisos.`,
    ),
  ],
  sources: [STORY_FACTOR_SOURCE],
  referrals: ['engineer'],
});

function valuesOf(demand: Demand): Record<string, Quantity> {
  const values: Record<string, Quantity> = {
    sds: factorOf(demand.sds),
    storyFactor: factorOf(demand.factor),
    responseFactor: factorOf(demand.response),
    baseShearLb: poundsOf(demand.baseLb),
    asdLb: poundsOf(demand.asdLb),
  };
  for (const { line, share, loadLb, unitPlf, ratio } of demand.lines) {
    values[`tributaryShare.${line.name}`] = shareQuantity(share);
    values[`lineLb.${line.name}`] = poundsOf(loadLb);
    if (unitPlf === undefined) continue;
    values[`linePlf.${line.name}`] = plfOf(unitPlf);
    if (ratio !== null) values[`lineRatio.${line.name}`] = factorOf(ratio);
    else values[`unverifiedRatio.${line.name}`] = factorOf(unitPlf / UNKNOWN_SCHEDULE_PLF);
  }
  return values;
}

function demandReasons({ baseLb, asdLb, lines }: Demand): Text[] {
  const whole = text(
    `An earthquake may push the base with ${pounds(baseLb)}, ${pounds(asdLb)} by ASD.`,
    `Un sismo puede empujar la base con ${pounds(baseLb)}, ${pounds(asdLb)} por ASD.`,
  );
  const worst = lines.reduce<LineDemand | undefined>(
    (most, line) => (line.ratio !== null && line.ratio > (most?.ratio ?? -1) ? line : most),
    undefined,
  );
  if (worst?.ratio == null) return [whole];
  const [name, load] = [worst.line.name, pounds(worst.loadLb)];
  const { measured } = compareNumbers(worst.ratio, 1, 'at-most', decimal, 2);
  return [
    whole,
    reasonThat(
      atMost(worst.ratio, 1),
      text(
        `Line ${name} takes ${load}: ${measured.en} of its strength; open it next.`,
        `La línea ${name} toma ${load}: ${measured.es} de su resistencia; ábrala primero.`,
      ),
    ),
  ];
}

function demandCautions({ importance, system }: DemandInputs, { lines }: Demand): Text[] {
  return [
    text(
      `The regular procedure may ask for ${REDUNDANCY} times as much.`,
      `El procedimiento regular puede pedir ${REDUNDANCY} veces más.`,
    ),
    ...(importance > 1
      ? [
          text(
            'The simplified procedure is for ordinary houses; importance is added as in the regular one.',
            'El procedimiento simplificado es para casas comunes; la importancia se suma como en el regular.',
          ),
        ]
      : []),
    ...(system === 'other-panels'
      ? [
          text(
            'Bracing of gypsum, stucco or the like is not permitted everywhere: ask the official.',
            'El arriostramiento de yeso, estuco o similar no se permite en todas partes: pregunte al oficial.',
          ),
        ]
      : []),
    ...(lines.some(({ line, unitPlf }) => unitPlf !== undefined && line.capacityPlf === undefined)
      ? [
          text(
            `Unverified: walls of unknown nailing are compared with ${UNKNOWN_SCHEDULE_PLF} plf.`,
            `Sin verificar: las paredes de clavado desconocido se comparan con ${UNKNOWN_SCHEDULE_PLF} plf.`,
          ),
        ]
      : []),
    ...(lines.length === 1
      ? [text('One line alone cannot keep a house from twisting.', 'Una sola línea no evita que la casa gire.')]
      : []),
  ];
}

/** Lines are told apart by name, and their shares by place. */
function impossible({ lines = [] }: Partials<typeof inputs>): InputIssue[] {
  const issues: InputIssue[] = [];
  lines.forEach((line, at) => {
    const before = lines.slice(0, at);
    const { name, positionFt } = line;
    if (name !== undefined && before.some((other) => other.name === name))
      issues.push(refuseSameName(['lines', at, 'name'], name));
    if (positionFt !== undefined && before.some((other) => other.positionFt === positionFt))
      issues.push(
        refuse(
          ['lines', at, 'positionFt'],
          text(`${positionFt} ft twice`, `${positionFt} ft dos veces`),
          text('each place once', 'cada lugar una vez'),
          text('Two wall lines stand in one place.', 'Dos líneas de pared están en un mismo lugar.'),
        ),
      );
  });
  return issues;
}

/**
 * A screening earthquake load for a light-frame house and its share on each wall line, pounds and plf. One to three
 * stories, flexible floors and roof, no irregularity. Never a design.
 */
export const baseShear = defineCheck({
  ...baseShearCard,
  editions: [{ id: 'asce-7', title: text('ASCE 7 simplified procedure', 'ASCE 7, procedimiento simplificado') }],
  defaultEdition: 'asce-7',
  sources: [STORY_FACTOR_SOURCE, SITE_SOURCE, SYSTEM_SOURCE, ASD_EARTHQUAKE_SOURCE, UNKNOWN_SCHEDULE_SOURCE],
  inputs,
  refine: impossible,
  evaluate: judgeDemand,
  repairs: ['engineer-letter'],
  client: {
    found: () =>
      text(
        'We made a rough estimate of the earthquake push on the house.',
        'Calculamos a grandes rasgos el empuje de un sismo sobre la casa.',
      ),
    why: text('It shows which walls matter most.', 'Muestra qué paredes importan más.'),
    ifNot: text('A weak wall may not be found in time.', 'Una pared débil puede no verse a tiempo.'),
  },
  doesNotCover: [
    text('Design of any kind; it replaces no engineer.', 'Diseño alguno; no reemplaza a un ingeniero.'),
    text(
      'Hillsides, open fronts, masonry chimneys or veneer, irregular shapes.',
      'Laderas, frentes abiertos, chimeneas o enchapes de mampostería, formas irregulares.',
    ),
    text('Wind, and how the load rises story by story.', 'El viento, y el reparto de la carga por piso.'),
  ],
  cases: () => import('./base-shear.cases.ts'),
});
