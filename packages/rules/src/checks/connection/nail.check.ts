import {
  atMost,
  type Complete,
  compareLoad,
  compareNumbers,
  countOf,
  decimal,
  defineCheck,
  factorOf,
  formatLength,
  inchesOf,
  type Judgement,
  poundsOf,
  psiOf,
  type Quantity,
  type Reason,
  ratioOf,
  reasonThat,
  type Source,
  text,
} from '../../kernel/index.ts';
import {
  DOWEL_BEARING_MEMORY_SOURCE,
  DOWEL_BEARING_SOURCE,
  nailBearingPsi,
  SIDE_PLATE_PSI,
} from '../../standards/nds-2018/dowel-bearing.ts';
import { yieldValues } from '../../standards/nds-2018/fields.ts';
import { NAIL_DIAMETER_IN, NAIL_LENGTH_IN, NAIL_SOURCES, nailSource } from '../../standards/nds-2018/nails.data.ts';
import {
  DURATION_SOURCE,
  FULL_PENETRATION_DIAMETERS,
  LEAST_PENETRATION_DIAMETERS,
  NAIL_YIELD_SOURCE,
  type NailLateral,
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
import { type DowelJoint, governingMode, YIELD_SOURCE } from '../../standards/nds-2018/yield-limit.ts';
import { nailCard } from './nail.card.ts';
import { inputs, nailIssues } from './nail.inputs.ts';

type NailInputs = Complete<typeof inputs>;

/** The nail, the woods on either side of the joint, and where each number was read. */
interface Joint extends DowelJoint {
  readonly gravity: number;
  /** Into the main member, tip included: for a load across the nail, and along it. */
  readonly lateralIn: number;
  readonly withdrawalIn: number;
  readonly sources: readonly Source[];
}

/** Specific gravity of either member; the side is as the main one unless another species is named. */
function woodOf(given: NailInputs): { gravity: number; sideGravity: number; sources: Source[] } {
  const main = given.G === undefined ? SPECIFIC_GRAVITY[given.mainSpecies ?? 'spruce-pine-fir-south'] : undefined;
  const gravity = main?.gravity ?? given.G ?? 0;
  const side = given.sideMaterial === 'sawn' && given.sideSpecies ? SPECIFIC_GRAVITY[given.sideSpecies] : undefined;
  const sources = [main?.source, side?.source].filter((source) => source !== undefined);
  return { gravity, sideGravity: side?.gravity ?? gravity, sources };
}

function jointOf(given: NailInputs): Joint {
  const { nail, sideMaterial, penetrationIn } = given;
  const diameterIn = nail ? NAIL_DIAMETER_IN[nail] : (given.diameterIn ?? 0);
  const nailIn = nail ? NAIL_LENGTH_IN[nail] : given.lengthIn;
  const { gravity, sideGravity, sources } = woodOf(given);
  const plate = sideMaterial === 'sawn' ? undefined : SIDE_PLATE_PSI[sideMaterial];
  const toe = given.toeNailed && nailIn !== undefined ? toeNailGeometry(nailIn) : undefined;
  const sideIn = toe?.sideIn ?? given.sideThicknessIn ?? 0;
  const straightIn = Math.max(0, (nailIn ?? 0) - sideIn);
  return {
    diameterIn,
    yieldPsi: given.fybPsi ?? nailYieldPsi(diameterIn),
    sideBearingIn: sideIn,
    gravity,
    mainPsi: nailBearingPsi(gravity),
    sidePsi: plate?.psi ?? nailBearingPsi(sideGravity),
    lateralIn: penetrationIn ?? toe?.lateralIn ?? straightIn,
    withdrawalIn: penetrationIn ?? toe?.withdrawalIn ?? straightIn,
    sources: [
      ...(nail ? [nailSource(nail)] : []),
      ...sources,
      ...(plate ? [plate.source] : []),
      ...(toe ? [TOE_NAIL_SOURCE, TOE_NAIL_GEOMETRY_SOURCE] : []),
    ],
  };
}

function judgeNail(given: NailInputs): Judgement {
  const joint = jointOf(given);
  const lateral = nailLateral(joint, joint.lateralIn);
  const leastIn = LEAST_PENETRATION_DIAMETERS * joint.diameterIn;
  const factor = given.loadDuration * (given.toeNailed ? TOE_NAIL_FACTOR.lateral : 1);
  const lateralLb = lateral.referenceLb * factor;
  const { demandLb } = given;
  const tooShort = lateral.yielding === undefined;
  const toTell = !tooShort && demandLb === undefined;
  const meets = !tooShort && demandLb !== undefined && atMost(demandLb, lateralLb);
  const hangsOn = [NAIL_YIELD_SOURCE, YIELD_SOURCE, DOWEL_BEARING_SOURCE, DURATION_SOURCE, ...joint.sources];
  return {
    verdict: toTell ? 'undetermined' : meets ? 'meets' : 'fails',
    ratio: tooShort ? ratioOf(leastIn, joint.lateralIn) : ratioOf(demandLb, lateralLb),
    remaining: lateral.keptShare,
    values: () => nailValues(given, joint, lateral, lateralLb),
    reasons: () => nailReasons(given, joint, lateral, lateralLb),
    ...(toTell && { missing: ['demandLb'], facts: { calculationOnly: true } }),
    hangsOn: tooShort ? [NAIL_YIELD_SOURCE] : hangsOn,
    sources: [...hangsOn, WITHDRAWAL_SOURCE],
    repairs: toTell || meets ? [] : ['add-nails'],
  };
}

function nailValues(
  given: NailInputs,
  joint: Joint,
  lateral: NailLateral,
  lateralLb: number,
): Record<string, Quantity> {
  const perIn = withdrawalLbPerIn(joint.gravity, joint.diameterIn);
  const factor = given.loadDuration * (given.toeNailed ? TOE_NAIL_FACTOR.withdrawal : 1);
  return {
    diameterIn: inchesOf(joint.diameterIn),
    penetrationIn: inchesOf(joint.lateralIn),
    penetrationDiameters: countOf(joint.lateralIn / joint.diameterIn),
    penetrationFactor: factorOf(lateral.penetrationFactor),
    mainPsi: psiOf(joint.mainPsi),
    sidePsi: psiOf(joint.sidePsi),
    yieldPsi: psiOf(joint.yieldPsi),
    sideBearingIn: inchesOf(joint.sideBearingIn),
    ...(lateral.yielding && {
      mainBearingIn: inchesOf(lateral.mainBearingIn),
      ...yieldValues(lateral.yielding),
    }),
    referenceLb: poundsOf(lateral.referenceLb),
    lateralLb: poundsOf(lateralLb),
    withdrawalLbPerIn: { value: perIn, unit: 'lb/in' },
    withdrawalLb: poundsOf(perIn * joint.withdrawalIn * factor),
  };
}

function nailReasons({ demandLb }: NailInputs, joint: Joint, lateral: NailLateral, lateralLb: number): Reason[] {
  const at = formatLength(joint.lateralIn);
  const { measured } = compareNumbers(
    joint.lateralIn / joint.diameterIn,
    LEAST_PENETRATION_DIAMETERS,
    'at-least',
    decimal,
    1,
  );
  const depth = text(
    `The nail goes in ${at}, ${measured.en} diameters; ${FULL_PENETRATION_DIAMETERS} count in full, under ${LEAST_PENETRATION_DIAMETERS} for nothing.`,
    `El clavo entra ${at}, ${measured.es} diámetros; ${FULL_PENETRATION_DIAMETERS} valen todo, menos de ${LEAST_PENETRATION_DIAMETERS} no valen nada.`,
  );
  if (!lateral.yielding) return [reasonThat(false, depth)];
  const governing = governingMode(lateral.yielding);
  const { takes, load } = compareLoad(demandLb, lateralLb);
  const carries = text(
    `It takes ${takes} across (mode ${governing} governs)${load.en}.`,
    `Resiste ${takes} de lado (rige el modo ${governing})${load.es}.`,
  );
  return [depth, reasonThat(demandLb === undefined || atMost(demandLb, lateralLb), carries)];
}

/** What one nail carries across and along its shank by the yield-limit equations. Inches, psi, pounds. */
export const nail = defineCheck({
  ...nailCard,
  editions: [{ id: 'nds-2018', title: text('NDS 2018', 'NDS 2018') }],
  defaultEdition: 'nds-2018',
  sources: [
    YIELD_SOURCE,
    DOWEL_BEARING_SOURCE,
    DOWEL_BEARING_MEMORY_SOURCE,
    NAIL_YIELD_SOURCE,
    ...NAIL_SOURCES,
    GRAVITY_SOURCE,
    GRAVITY_MEMORY_SOURCE,
    WITHDRAWAL_SOURCE,
    TOE_NAIL_SOURCE,
    TOE_NAIL_GEOMETRY_SOURCE,
    DURATION_SOURCE,
  ],
  inputs,
  refine: nailIssues,
  evaluate: judgeNail,
  repairs: ['add-nails'],
  client: {
    found: (_inputs, { verdict }) =>
      verdict === 'fails'
        ? text('A nail is too short or too weak for its load.', 'Un clavo es muy corto o débil para su carga.')
        : text('We looked at how well a nail holds.', 'Vimos qué tan bien sujeta un clavo.'),
    why: text(
      'Nails tie the wood of the house together. A short nail can pull out or bend.',
      'Los clavos unen la madera de la casa. Un clavo corto puede salirse o doblarse.',
    ),
    ifNot: text('The joint may slip under a hard push.', 'La unión puede ceder con un empuje fuerte.'),
  },
  doesNotCover: [
    text(
      'Wet wood, end grain, splitting, and pull and push at once.',
      'Madera mojada, testa, rajaduras, y jalar y empujar a la vez.',
    ),
    text('Screws, staples, ring-shank and hardened nails.', 'Tornillos, grapas, clavos anillados o templados.'),
  ],
  cases: () => import('./nail.cases.ts'),
});
