import {
  atMost,
  type Complete,
  compareLengths,
  decimal,
  defineCheck,
  formatLength,
  type InputIssue,
  inchesOf,
  type Judgement,
  type Partials,
  pctOf,
  type Quantity,
  ratioOf,
  reasonThat,
  refuseSameName,
  type Source,
  slopeOf,
  type Text,
  text,
  wordOf,
} from '../../kernel/index.ts';
import {
  ENGINEERED_DEPTH_SOURCE,
  PANEL_EXPANSION_SOURCE,
} from '../../standards/common-practice/engineered-movement.ts';
import { MIXED_GRAIN_RULES } from '../../standards/mixed-grain-shrinkage/rules.ts';
import { EMC_SOURCE } from '../../standards/wood-handbook-gtr-190/equilibrium-moisture.ts';
import {
  COEFFICIENT_SOURCE,
  SHRINKAGE_SOURCE,
  WIDE_RANGE_SOURCE,
} from '../../standards/wood-handbook-gtr-190/shrinkage.ts';
import { type Moved, moveMember } from './member-movement.ts';
import { shrinkageCard } from './shrinkage.card.ts';
import { inputs } from './shrinkage.inputs.ts';

type Inputs = Complete<typeof inputs>;
const NO_TOLERANCE = text(
  'No code sets a limit; choose the difference you accept to get a verdict.',
  'Ningún código fija un límite; elija la diferencia que acepta para tener un veredicto.',
);
const MIXED_KINDS = text(
  'Sawn, engineered and upright-grain members should not share one bearing plane.',
  'La madera aserrada, la de ingeniería y la de veta vertical no deben compartir un mismo plano de apoyo.',
);
const NEIGHBOR_STILL = text(
  'One member alone is compared with a neighbor that does not move.',
  'Un solo elemento se compara con un vecino que no se mueve.',
);
const MIXED_GRAIN = text(
  'Real boards are of mixed grain: coefficients tell too much across the width and too little through the thickness.',
  'Las tablas reales tienen veta mixta: los coeficientes exageran a lo ancho y se quedan cortos en el grosor.',
);

function memberValues(moved: readonly Moved[]): Record<string, Quantity> {
  return Object.fromEntries(
    moved.flatMap((one) => [
      [`changeIn.${one.name}`, inchesOf(one.changeIn)],
      [`method.${one.name}`, wordOf(one.method)],
      [`fromPct.${one.name}`, pctOf(one.fromPct)],
      [`toPct.${one.name}`, pctOf(one.toPct)],
    ]),
  );
}

const memberWords = (one: Moved): Text => {
  const by = `${formatLength(Math.abs(one.changeIn))} (${decimal(Math.abs(one.changeIn), 3)} in)`;
  const pct = `${decimal(one.fromPct, 1)} to ${decimal(one.toPct, 1)}%`;
  const pctEs = `${decimal(one.fromPct, 1)} a ${decimal(one.toPct, 1)}%`;
  return one.changeIn > 0
    ? text(`${one.name} swells ${by} from ${pct}.`, `${one.name} se hincha ${by} de ${pctEs}.`)
    : text(`${one.name} shrinks ${by} from ${pct}.`, `${one.name} se encoge ${by} de ${pctEs}.`);
};

function movementCautions(given: Inputs, sources: ReadonlySet<Source>): Text[] {
  const kinds = new Set(
    given.members.map((one) => (one.kind === 'sawn' && one.grain === 'radial' ? 'upright' : one.kind)),
  );
  return [
    ...(kinds.size > 1 ? [MIXED_KINDS] : []),
    ...(given.members.length === 1 ? [NEIGHBOR_STILL] : []),
    ...(sources.has(SHRINKAGE_SOURCE) ? [MIXED_GRAIN] : []),
  ];
}

function judgeShrinkage(given: Inputs): Judgement {
  const moved = given.members.map((one) => moveMember(one, given.mixedGrainRule));
  const changes = moved.map((one) => one.changeIn);
  const compared = changes.length === 1 ? [...changes, 0] : changes;
  const differentialIn = Math.max(...compared) - Math.min(...compared);
  const slope = given.spacingIn === undefined ? undefined : differentialIn / given.spacingIn;
  const sources = new Set<Source>();
  for (const one of moved) for (const source of one.sources) sources.add(source);
  const { toleranceIn } = given;
  const meets = toleranceIn !== undefined && atMost(differentialIn, toleranceIn);
  return {
    verdict: toleranceIn === undefined ? 'undetermined' : meets ? 'meets' : 'fails',
    ratio: ratioOf(differentialIn, toleranceIn),
    repairs: meets || toleranceIn === undefined ? [] : ['re-shim', 'member-replace'],
    reasons: () => [
      ...moved.map(memberWords),
      reasonThat(meets || toleranceIn === undefined, differenceWords(differentialIn, slope, toleranceIn)),
      ...(toleranceIn === undefined ? [NO_TOLERANCE] : []),
    ],
    missing: toleranceIn === undefined ? ['toleranceIn'] : [],
    values: () => ({
      ...memberValues(moved),
      differentialIn: inchesOf(differentialIn),
      ...(slope !== undefined && { slope: slopeOf(slope) }),
      ...(slope !== undefined && !atMost(slope, 0) && { slopeOneIn: slopeOf(1 / slope) }),
    }),
    sources: [...sources],
    cautions: () => movementCautions(given, sources),
    facts: { ratio: null },
  };
}

function differenceWords(differentialIn: number, slope: number | undefined, toleranceIn: number | undefined): Text {
  const found = `${formatLength(differentialIn)} (${decimal(differentialIn, 3)} in)`;
  const beside = toleranceIn === undefined ? undefined : compareLengths(differentialIn, toleranceIn, 'at-most');
  const by = beside?.measured ?? text(found, found);
  const level = slope === undefined || atMost(slope, 0);
  const over = level
    ? text('', '')
    : text(`, a slope of 1/${decimal(1 / slope, 0)}`, `, pendiente de 1/${decimal(1 / slope, 0)}`);
  const most = beside ? text(`; ${beside.limit} is accepted`, `; se acepta ${beside.limit}`) : text('', '');
  return text(
    `The largest difference is ${by.en}${over.en}${most.en}.`,
    `La mayor diferencia es ${by.es}${over.es}${most.es}.`,
  );
}

function sameNames(given: Partials<typeof inputs>): InputIssue[] {
  const names = (given.members ?? []).map((one) => one.name);
  return names.flatMap((name, at) =>
    name !== undefined && names.indexOf(name) < at ? [refuseSameName(['members', at, 'name'], name)] : [],
  );
}

/** How far members side by side shrink or swell, and how much they differ. Inches, percent moisture. */
export const shrinkage = defineCheck({
  ...shrinkageCard,
  editions: [{ id: 'gtr-190', title: text('Wood Handbook, FPL-GTR-190', 'Wood Handbook, FPL-GTR-190') }],
  defaultEdition: 'gtr-190',
  sources: [
    SHRINKAGE_SOURCE,
    COEFFICIENT_SOURCE,
    WIDE_RANGE_SOURCE,
    ...MIXED_GRAIN_RULES.map((rule) => rule.source),
    EMC_SOURCE,
    ENGINEERED_DEPTH_SOURCE,
    PANEL_EXPANSION_SOURCE,
  ],
  inputs,
  refine: sameNames,
  evaluate: judgeShrinkage,
  repairs: ['re-shim', 'member-replace'],
  client: {
    found: (_inputs, outcome) => {
      const difference = outcome.values.differentialIn?.value;
      return typeof difference === 'number'
        ? text(
            `Pieces of wood side by side will differ by about ${formatLength(difference)} as they dry.`,
            `Piezas de madera vecinas tendrán una diferencia de cerca de ${formatLength(difference)} al secarse.`,
          )
        : text(
            'Pieces of wood side by side dry by different amounts.',
            'Piezas de madera vecinas se secan de forma distinta.',
          );
    },
    why: text(
      'Uneven drying makes a floor step, slope or squeak.',
      'Si no se seca parejo, el piso se inclina o cruje.',
    ),
    ifNot: text('The new finish may crack or slope.', 'El acabado nuevo puede agrietarse o quedar desnivelado.'),
  },
  doesNotCover: [
    text(
      'Redwood and cedar, glued laminated timber, and length along the grain.',
      'Secuoya, cedro, laminados y el largo.',
    ),
    text('Creep, crushing and settlement.', 'Fluencia, aplastamiento y asentamiento.'),
  ],
  cases: () => import('./shrinkage.cases.ts'),
});
