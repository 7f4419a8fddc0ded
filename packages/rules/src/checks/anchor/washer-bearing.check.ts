import {
  atMost,
  type Complete,
  compareLoad,
  defineCheck,
  formatExact,
  type InputIssue,
  type Judgement,
  length,
  type Partials,
  poundsOf,
  psiOf,
  type Reason,
  ratioOf,
  reasonThat,
  refuse,
  shareMet,
  squareInchesOf,
  text,
} from '../../kernel/index.ts';
import { FC_PERP_PSI, FC_PERP_SOURCES } from '../../standards/nds-2018/bearing.ts';
import { demandField, speciesField } from '../../standards/nds-2018/fields.ts';
import { WASHER_BEARING_SOURCE, washerNetAreaIn2 } from '../../standards/nds-2018/washers.ts';
import { washerBearingCard } from './washer-bearing.card.ts';

const inputs = {
  sideIn: length({
    unit: 'in',
    min: 0.5,
    max: 12,
    label: text('Side of the square washer', 'Lado de la arandela cuadrada'),
  }),
  boltDiameterIn: length({ unit: 'in', min: 0.25, max: 2, label: text('Bolt diameter', 'Diámetro del perno') }),
  species: speciesField(text('Species of the plate', 'Especie de la solera')),
  demandLb: demandField(text('Pull on the bolt, if known', 'Tirón en el perno, si se sabe')),
} as const;

type WasherInputs = Complete<typeof inputs>;

/** A washer that its own hole swallows. */
function washerIssues({ sideIn, boltDiameterIn }: Partials<typeof inputs>): InputIssue[] {
  if (sideIn === undefined || boltDiameterIn === undefined || sideIn > boltDiameterIn) return [];
  return [
    refuse(
      ['sideIn'],
      `${sideIn} in`,
      text(`wider than the bolt, ${boltDiameterIn} in`, `más ancho que el perno, ${boltDiameterIn} in`),
      text(
        `A washer is wider than its bolt: ${formatExact(sideIn)} on ${formatExact(boltDiameterIn)}.`,
        `Una arandela es más ancha que su perno: ${formatExact(sideIn)} en ${formatExact(boltDiameterIn)}.`,
      ),
    ),
  ];
}

function judgeWasher({ sideIn, boltDiameterIn, species, demandLb }: WasherInputs): Judgement {
  const netAreaIn2 = Math.max(0, washerNetAreaIn2(sideIn, boltDiameterIn));
  const { psi, source } = FC_PERP_PSI[species];
  const capacityLb = psi * netAreaIn2;
  const meets = demandLb !== undefined && atMost(demandLb, capacityLb);
  const toTell = demandLb === undefined;
  return {
    verdict: toTell ? 'undetermined' : meets ? 'meets' : 'fails',
    ratio: ratioOf(demandLb, capacityLb),
    remaining: shareMet(capacityLb, demandLb),
    values: () => ({
      netAreaIn2: squareInchesOf(netAreaIn2),
      fcPerpPsi: psiOf(psi),
      capacityLb: poundsOf(capacityLb),
    }),
    reasons: () => washerReasons(capacityLb, demandLb),
    ...(toTell && { missing: ['demandLb'], facts: { calculationOnly: true } }),
    sources: [WASHER_BEARING_SOURCE, source],
    repairs: toTell || meets ? [] : ['plate-washer', 'engineer-letter'],
  };
}

function washerReasons(capacityLb: number, demandLb: number | undefined): Reason[] {
  const { takes, load } = compareLoad(demandLb, capacityLb);
  return [
    reasonThat(
      demandLb === undefined || atMost(demandLb, capacityLb),
      text(
        `The wood under the washer takes ${takes}${load.en}.`,
        `La madera bajo la arandela resiste ${takes}${load.es}.`,
      ),
    ),
  ];
}

/** What the wood under a square washer takes before it crushes. Inches, pounds. */
export const washerBearing = defineCheck({
  ...washerBearingCard,
  editions: [{ id: 'nds-2018', title: text('NDS 2018', 'NDS 2018') }],
  defaultEdition: 'nds-2018',
  sources: [WASHER_BEARING_SOURCE, ...FC_PERP_SOURCES],
  inputs,
  refine: washerIssues,
  evaluate: judgeWasher,
  repairs: ['plate-washer', 'engineer-letter'],
  client: {
    found: () => text('We measured a washer on a foundation bolt.', 'Medimos una arandela de un perno del cimiento.'),
    why: text(
      'The washer spreads the pull of the bolt over the wood. A small one sinks in.',
      'La arandela reparte el tirón del perno en la madera. Una pequeña se hunde.',
    ),
    ifNot: text('The bolt can go slack, and the wall could lift.', 'El perno puede aflojarse y la pared, levantarse.'),
  },
  doesNotCover: [
    text('Washer thickness and bending, slots, wet wood.', 'Grueso y doblez de la arandela, ranuras, madera mojada.'),
    text('Load duration: none is taken for crushing.', 'Duración de la carga: no se aplica al aplastamiento.'),
  ],
  cases: () => import('./washer-bearing.cases.ts'),
});
