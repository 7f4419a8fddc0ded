import {
  assume,
  atMost,
  type Complete,
  choice,
  compareLoad,
  count,
  defineCheck,
  type Judgement,
  length,
  pounds,
  poundsOf,
  psiOf,
  type Quantity,
  type Reason,
  ratioOf,
  reasonThat,
  type Source,
  shareMet,
  text,
} from '../../kernel/index.ts';
import { DOWEL_BEARING_SOURCE, dowelBearingPsi } from '../../standards/nds-2018/dowel-bearing.ts';
import { demandField, loadDurationField, speciesField, yieldValues } from '../../standards/nds-2018/fields.ts';
import { DURATION_SOURCE } from '../../standards/nds-2018/nails.ts';
import { SILL_BOLT_SOURCE, SILL_THICKNESS_IN, sillBoltLoads } from '../../standards/nds-2018/sill-bolts.ts';
import { GRAVITY_MEMORY_SOURCE, GRAVITY_SOURCE, SPECIFIC_GRAVITY } from '../../standards/nds-2018/species.data.ts';
import { YIELD_SOURCE, type YieldLoads } from '../../standards/nds-2018/yield-limit.ts';
import { sillBoltShearCard } from './sill-bolt-shear.card.ts';

const BOLT_SIZES_IN = [0.5, 0.625, 0.75, 0.875, 1];
const GRAIN_ANGLE_DEG = { parallel: 0, perpendicular: 90 } as const;

const inputs = {
  count: count({
    max: 1000,
    label: text('Sound bolts', 'Pernos sanos'),
    howToMeasure: text(
      'Tight, with nut and washer, in unsplit wood.',
      'Apretados, con tuerca y arandela, sin rajadura.',
    ),
  }),
  diameterIn: length({
    unit: 'in',
    min: 0.5,
    max: 1,
    oneOf: BOLT_SIZES_IN,
    label: text('Bolt diameter', 'Diámetro del perno'),
  }),
  species: speciesField(text('Species of the sill', 'Especie de la solera')),
  sillThicknessIn: length({
    unit: 'in',
    min: 0.5,
    max: 6,
    default: SILL_THICKNESS_IN,
    assumes: assume(
      text('A sill 1-1/2 in thick is taken, as in the table.', 'Se toma una solera de 1-1/2 in, como en la tabla.'),
      SILL_BOLT_SOURCE,
    ),
    label: text('Sill thickness', 'Grueso de la solera'),
  }),
  direction: choice({
    options: [
      { value: 'parallel', label: text('Along the wall', 'A lo largo de la pared') },
      { value: 'perpendicular', label: text('Out of the wall', 'Hacia fuera de la pared') },
    ],
    default: 'parallel',
    assumes: assume(
      text('The load is taken to push along the wall.', 'Se toma que la carga empuja a lo largo de la pared.'),
    ),
    label: text('The load pushes', 'La carga empuja'),
  }),
  loadDuration: {
    ...loadDurationField,
    assumes: assume(
      text('A load of normal duration is taken, factor 1.', 'Se toma una carga de duración normal, factor 1.'),
      DURATION_SOURCE,
    ),
  },
  demandLb: demandField(text('Load on all bolts, if known', 'Carga en todos los pernos, si se sabe')),
} as const;

type BoltInputs = Complete<typeof inputs>;

function judgeBolts(given: BoltInputs): Judgement {
  const { diameterIn, demandLb } = given;
  const { gravity, source } = SPECIFIC_GRAVITY[given.species];
  const angleDeg = GRAIN_ANGLE_DEG[given.direction];
  const loads = sillBoltLoads(diameterIn, gravity, angleDeg, given.sillThicknessIn);
  const perBoltLb = loads.lateralLb * given.loadDuration;
  const capacityLb = perBoltLb * given.count;
  const none = given.count === 0;
  const toTell = demandLb === undefined && !none;
  const meets = !none && demandLb !== undefined && atMost(demandLb, capacityLb);
  const sidePsi = dowelBearingPsi(gravity, diameterIn, angleDeg);
  const sources: Source[] = [YIELD_SOURCE, DOWEL_BEARING_SOURCE, SILL_BOLT_SOURCE, source, DURATION_SOURCE];
  return {
    verdict: toTell ? 'undetermined' : meets ? 'meets' : 'fails',
    ratio: ratioOf(demandLb, capacityLb),
    remaining: none ? 0 : shareMet(capacityLb, demandLb),
    values: () => boltValues(loads, sidePsi, perBoltLb, capacityLb),
    reasons: () => boltReasons(given, perBoltLb, capacityLb),
    ...(toTell && { missing: ['demandLb'], facts: { calculationOnly: true } }),
    sources,
    repairs: toTell || meets ? [] : ['anchor-bolt-add', 'engineer-letter'],
  };
}

const boltValues = (
  loads: YieldLoads,
  sidePsi: number,
  perBoltLb: number,
  capacityLb: number,
): Record<string, Quantity> => ({
  sidePsi: psiOf(sidePsi),
  ...yieldValues(loads),
  referenceLb: poundsOf(loads.lateralLb),
  perBoltLb: poundsOf(perBoltLb),
  capacityLb: poundsOf(capacityLb),
});

function boltReasons(given: BoltInputs, perBoltLb: number, capacityLb: number): Reason[] {
  const { count: bolts, demandLb } = given;
  if (bolts === 0) return [reasonThat(false, text('No bolt holds the sill.', 'Ningún perno sujeta la solera.'))];
  const { takes, load } = compareLoad(demandLb, capacityLb);
  const each = `${bolts} x ${pounds(perBoltLb)} = ${takes}`;
  return [
    reasonThat(
      demandLb === undefined || atMost(demandLb, capacityLb),
      text(`The bolts take ${each}${load.en}.`, `Los pernos resisten ${each}${load.es}.`),
    ),
  ];
}

/** What the bolts of a sill carry in shear into the concrete. Inches, pounds; bolts 1/2 to 1 in. */
export const sillBoltShear = defineCheck({
  ...sillBoltShearCard,
  editions: [{ id: 'nds-2018', title: text('NDS 2018', 'NDS 2018') }],
  defaultEdition: 'nds-2018',
  sources: [
    YIELD_SOURCE,
    DOWEL_BEARING_SOURCE,
    SILL_BOLT_SOURCE,
    GRAVITY_SOURCE,
    GRAVITY_MEMORY_SOURCE,
    DURATION_SOURCE,
  ],
  inputs,
  evaluate: judgeBolts,
  repairs: ['anchor-bolt-add', 'engineer-letter'],
  client: {
    found: (_inputs, { verdict }) =>
      verdict === 'fails'
        ? text('Too few bolts hold the wall to the foundation.', 'Muy pocos pernos sujetan la pared al cimiento.')
        : text('We counted the bolts that hold the wall.', 'Contamos los pernos que sujetan la pared.'),
    why: text(
      'In an earthquake the house can slide off its foundation. These bolts hold it.',
      'En un sismo la casa puede salirse del cimiento. Estos pernos la sujetan.',
    ),
    ifNot: text('In an earthquake the wall could slide.', 'En un sismo la pared podría deslizarse.'),
  },
  doesNotCover: [
    text(
      'The concrete, its edge, rust, and bolts less than 6 in deep.',
      'El concreto, su borde, óxido, y pernos a menos de 6 in.',
    ),
    text(
      'Wet or split wood, uplift, and rows that share unevenly.',
      'Madera mojada o rajada, levantamiento, y filas desiguales.',
    ),
  ],
  cases: () => import('./sill-bolt-shear.cases.ts'),
});
