import {
  atMost,
  type Complete,
  choice,
  compareLoad,
  count,
  defineCheck,
  inchesOf,
  type Judgement,
  pounds,
  poundsOf,
  type Quantity,
  type Reason,
  ratioOf,
  reasonThat,
  type Source,
  shareMet,
  text,
} from '../../kernel/index.ts';
import { DOWEL_BEARING_SOURCE, nailBearingPsi } from '../../standards/nds-2018/dowel-bearing.ts';
import { demandField, loadDurationField, speciesField, yieldValues } from '../../standards/nds-2018/fields.ts';
import { NAIL_DIAMETER_IN, NAIL_LENGTH_IN, NAIL_SOURCES, nailSource } from '../../standards/nds-2018/nails.data.ts';
import {
  DURATION_SOURCE,
  NAIL_YIELD_SOURCE,
  nailLateral,
  nailYieldPsi,
  TOE_NAIL_FACTOR,
  TOE_NAIL_GEOMETRY_SOURCE,
  TOE_NAIL_SOURCE,
  toeNailGeometry,
  WITHDRAWAL_SOURCE,
  withdrawalLbPerIn,
} from '../../standards/nds-2018/nails.ts';
import { GRAVITY_MEMORY_SOURCE, GRAVITY_SOURCE, SPECIFIC_GRAVITY } from '../../standards/nds-2018/species.data.ts';
import { YIELD_SOURCE, type YieldLoads } from '../../standards/nds-2018/yield-limit.ts';
import { NAIL_OPTIONS } from './nail.inputs.ts';
import { toeNailCard } from './toe-nail.card.ts';

const inputs = {
  nail: choice({
    options: NAIL_OPTIONS,
    label: text('Nail', 'Clavo'),
    howToMeasure: text('From the box, or pull one and measure it.', 'De la caja, o saque uno y mídalo.'),
  }),
  count: count({
    max: 100,
    label: text('Toe-nails that hold this end', 'Clavos en ángulo en esta punta'),
    howToMeasure: text('Only sound ones that split nothing.', 'Solo los buenos que no rajaron la madera.'),
  }),
  species: speciesField(text('Species of the wood', 'Especie de la madera')),
  loadDuration: loadDurationField,
  direction: choice({
    options: [
      { value: 'lateral', label: text('Across the nails', 'De lado a los clavos') },
      { value: 'withdrawal', label: text('Pulling them out', 'Sacándolos') },
    ],
    label: text('The load pushes', 'La carga empuja'),
  }),
  reactionLb: demandField(text('Load on this end, if known', 'Carga en esta punta, si se sabe')),
} as const;

type ToeNailInputs = Complete<typeof inputs>;

/** What one toe-nail takes before the load duration, how, and where it was read. */
interface OneNail {
  readonly referenceLb: number;
  readonly factor: number;
  readonly sideIn: number;
  readonly penetrationIn: number;
  readonly yielding: YieldLoads | undefined;
  readonly sources: readonly Source[];
}

function oneToeNail(given: ToeNailInputs): OneNail {
  const diameterIn = NAIL_DIAMETER_IN[given.nail];
  const { gravity, source } = SPECIFIC_GRAVITY[given.species];
  const { sideIn, lateralIn, withdrawalIn } = toeNailGeometry(NAIL_LENGTH_IN[given.nail]);
  const read = [TOE_NAIL_SOURCE, TOE_NAIL_GEOMETRY_SOURCE, DURATION_SOURCE, nailSource(given.nail), source];
  if (given.direction === 'withdrawal')
    return {
      referenceLb: withdrawalLbPerIn(gravity, diameterIn) * withdrawalIn,
      factor: TOE_NAIL_FACTOR.withdrawal,
      sideIn,
      penetrationIn: withdrawalIn,
      yielding: undefined,
      sources: [WITHDRAWAL_SOURCE, ...read],
    };
  const psi = nailBearingPsi(gravity);
  const yieldPsi = nailYieldPsi(diameterIn);
  const { referenceLb, yielding } = nailLateral(
    { diameterIn, sideBearingIn: sideIn, mainPsi: psi, sidePsi: psi, yieldPsi },
    lateralIn,
  );
  return {
    referenceLb,
    factor: TOE_NAIL_FACTOR.lateral,
    sideIn,
    penetrationIn: lateralIn,
    yielding,
    sources: [YIELD_SOURCE, DOWEL_BEARING_SOURCE, NAIL_YIELD_SOURCE, ...read],
  };
}

function judgeToeNails(given: ToeNailInputs): Judgement {
  const one = oneToeNail(given);
  const perNailLb = one.referenceLb * one.factor * given.loadDuration;
  const capacityLb = perNailLb * given.count;
  const { reactionLb } = given;
  const none = given.count === 0;
  const toTell = reactionLb === undefined && !none;
  const meets = !none && reactionLb !== undefined && atMost(reactionLb, capacityLb);
  return {
    verdict: toTell ? 'undetermined' : meets ? 'meets' : 'fails',
    ratio: ratioOf(reactionLb, capacityLb),
    remaining: none ? 0 : shareMet(capacityLb, reactionLb),
    values: () => toeNailValues(one, perNailLb, capacityLb),
    reasons: () => toeNailReasons(given, perNailLb, capacityLb),
    ...(toTell && { missing: ['reactionLb'], facts: { calculationOnly: true } }),
    sources: one.sources,
    repairs: toTell || meets ? [] : ['connector-add', 'add-nails', 'engineer-letter'],
  };
}

const toeNailValues = (one: OneNail, perNailLb: number, capacityLb: number): Record<string, Quantity> => ({
  sideBearingIn: inchesOf(one.sideIn),
  penetrationIn: inchesOf(one.penetrationIn),
  ...(one.yielding && yieldValues(one.yielding)),
  referenceLb: poundsOf(one.referenceLb),
  perNailLb: poundsOf(perNailLb),
  capacityLb: poundsOf(capacityLb),
});

function toeNailReasons(given: ToeNailInputs, perNailLb: number, capacityLb: number): Reason[] {
  const { count: nails, reactionLb } = given;
  if (nails === 0) return [reasonThat(false, text('No nail holds this end.', 'Ningún clavo sujeta esta punta.'))];
  const { takes, load } = compareLoad(reactionLb, capacityLb);
  const each = `${nails} x ${pounds(perNailLb)} = ${takes}`;
  return [
    reasonThat(
      reactionLb === undefined || atMost(reactionLb, capacityLb),
      text(`The toe-nails take ${each}${load.en}.`, `Los clavos en ángulo resisten ${each}${load.es}.`),
    ),
  ];
}

/** What a toe-nailed end carries across or along its nails. Inches, pounds. */
export const toeNail = defineCheck({
  ...toeNailCard,
  editions: [{ id: 'nds-2018', title: text('NDS 2018', 'NDS 2018') }],
  defaultEdition: 'nds-2018',
  sources: [
    TOE_NAIL_SOURCE,
    TOE_NAIL_GEOMETRY_SOURCE,
    YIELD_SOURCE,
    DOWEL_BEARING_SOURCE,
    NAIL_YIELD_SOURCE,
    WITHDRAWAL_SOURCE,
    ...NAIL_SOURCES,
    GRAVITY_SOURCE,
    GRAVITY_MEMORY_SOURCE,
    DURATION_SOURCE,
  ],
  inputs,
  evaluate: judgeToeNails,
  repairs: ['connector-add', 'add-nails', 'engineer-letter'],
  client: {
    found: ({ count: nails }) =>
      nails === 0
        ? text('Nothing holds the end of this piece.', 'Nada sujeta la punta de esta pieza.')
        : text('Slanted nails alone hold this piece.', 'Solo clavos en ángulo sujetan esta pieza.'),
    why: text(
      'Slanted nails hold less than straight nails or a metal hanger. Too much weight bends them or splits the wood.',
      'Los clavos en ángulo sujetan menos que los rectos o un estribo. Con mucho peso se doblan o rajan la madera.',
    ),
    ifNot: text('This end may drop or pull away.', 'Esta punta puede caer o separarse.'),
  },
  doesNotCover: [
    text('Split wood, wet wood, nails into end grain.', 'Madera rajada o mojada, clavos en la testa.'),
    text('Whether the code allows toe-nails here.', 'Si el código permite clavos en ángulo aquí.'),
  ],
  cases: () => import('./toe-nail.cases.ts'),
});
