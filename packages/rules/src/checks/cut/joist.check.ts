import {
  atMost,
  type Complete,
  compareLoad,
  defineCheck,
  feetToInches,
  formatLength,
  type InputIssue,
  inchesOf,
  type Judgement,
  type Partials,
  percent,
  pounds,
  poundsOf,
  type Quantity,
  ratioOf,
  refuseLonger,
  type Situation,
  shareQuantity,
  type Text,
  text,
  type Verdict,
} from '../../kernel/index.ts';
import { JOIST_CUTS_IBC } from '../../standards/ibc-2018/cuts.data.ts';
import { JOIST_CUTS_2018, type JoistCutRule } from '../../standards/irc-2018/cuts.data.ts';
import { JOIST_CUTS_2021 } from '../../standards/irc-2021/cuts.data.ts';
import { JOIST_CUTS_2024 } from '../../standards/irc-2024/cuts.data.ts';
import {
  boredAnywhere,
  boredSection,
  CUT_SECTION_SOURCE,
  notchedSection,
} from '../../standards/mechanics/cut-section.ts';
import {
  endNotchShare,
  FV_PSI,
  FV_SOURCES,
  NOTCH_SHEAR_SOURCE,
  shearCapacityLb,
} from '../../standards/nds-2018/shear.ts';
import { joistCard } from './joist.card.ts';
import { inputs } from './joist.inputs.ts';
import {
  type CutLimit,
  cutAtMost,
  editionOfCode,
  forbidden,
  judgeLimits,
  largerThan,
  limitReasons,
  woodAtLeast,
} from './limits.ts';

const RULES: readonly JoistCutRule[] = [JOIST_CUTS_2018, JOIST_CUTS_2021, JOIST_CUTS_2024, JOIST_CUTS_IBC];

type JoistInputs = Complete<typeof inputs>;

const WORDS = {
  notch: text('Notch', 'Muesca'),
  notchLength: text('Length of the notch', 'Largo de la muesca'),
  toMidspan: text('Notch from the support', 'Muesca desde el apoyo'),
  endNotch: text('Notch at the end', 'Muesca en la punta'),
  hole: text('Hole', 'Perforación'),
  edge: text('Wood beside the hole', 'Madera junto a la perforación'),
  otherCut: text('Wood to the next cut', 'Madera hasta el otro corte'),
};
const REPAIRS = ['member-sister', 'member-replace', 'engineer-letter'];
const TENSION_FACE = text(
  'From 4 in nominal thickness the bottom face may be notched only at the ends.',
  'Desde 4 in nominales de grosor, la cara inferior solo admite muescas en las puntas.',
);
const NORMAL_DURATION = text(
  'Shear is for dry wood and normal duration of load.',
  'El cortante es para madera seca y carga de duración normal.',
);

interface Allowed {
  readonly notchIn: number;
  readonly notchLengthIn: number;
  readonly endNotchIn: number;
  readonly holeIn: number;
}

/** The largest cuts the rule allows in this depth; where the two edges leave less than its share, they govern a hole. */
const allowedCuts = (depthIn: number, rule: JoistCutRule): Allowed => ({
  notchIn: depthIn * rule.notchShare,
  notchLengthIn: depthIn * rule.notchLengthShare,
  endNotchIn: depthIn * rule.endNotchShare,
  holeIn: Math.max(0, Math.min(depthIn * rule.holeShare, depthIn - 2 * rule.edgeIn)),
});

/** What was measured against the rule, and what is still to be measured. */
interface Findings {
  readonly limits: CutLimit[];
  readonly unmeasured: string[];
}

function notchFindings(given: JoistInputs, allowed: Allowed, rule: JoistCutRule, { limits, unmeasured }: Findings) {
  const { notchIn = 0, notchLengthIn, distanceFromSupportFt, spanFt, notchFace, widthIn } = given;
  if (notchIn <= 0) return;
  limits.push(cutAtMost(WORDS.notch, notchIn, allowed.notchIn));
  if (notchLengthIn === undefined) unmeasured.push('notchLengthIn');
  else limits.push(cutAtMost(WORDS.notchLength, notchLengthIn, allowed.notchLengthIn));
  if (spanFt === undefined) unmeasured.push('spanFt');
  if (distanceFromSupportFt === undefined) unmeasured.push('distanceFromSupportFt');
  if (distanceFromSupportFt !== undefined && spanFt !== undefined) {
    const nearerFt = Math.min(distanceFromSupportFt, spanFt - distanceFromSupportFt);
    const zoneIn = feetToInches(spanFt * rule.notchZoneShare);
    limits.push(cutAtMost(WORDS.toMidspan, feetToInches(nearerFt), zoneIn));
  }
  if (widthIn === undefined || widthIn < rule.thickFromIn) return;
  if (notchFace === undefined) unmeasured.push('notchFace');
  if (notchFace === 'bottom') limits.push(forbidden(TENSION_FACE));
}

function holeFindings(given: JoistInputs, allowed: Allowed, rule: JoistCutRule, { limits, unmeasured }: Findings) {
  const { holeIn = 0, edgeIn, otherCutIn } = given;
  if (holeIn <= 0) return;
  limits.push(cutAtMost(WORDS.hole, holeIn, allowed.holeIn));
  if (edgeIn === undefined) unmeasured.push('edgeIn');
  else limits.push(woodAtLeast(WORDS.edge, edgeIn, rule.edgeIn));
  if (otherCutIn !== undefined) limits.push(woodAtLeast(WORDS.otherCut, otherCutIn, rule.edgeIn));
}

/**
 * What the worst cut leaves of bending, stiffness and shear, and the end notch alone of shear, 0..1. A hole not measured
 * from the edge counts as in the worst place it can have.
 */
function sectionLeft({ depthIn, notchIn = 0, endNotchIn = 0, holeIn = 0, edgeIn }: JoistInputs) {
  const notch = notchedSection(depthIn, notchIn);
  const end = notchedSection(depthIn, endNotchIn);
  const hole = edgeIn === undefined ? boredAnywhere(depthIn, holeIn) : boredSection(depthIn, holeIn, edgeIn);
  const endShear = endNotchShare(depthIn, depthIn - endNotchIn);
  return {
    moment: Math.min(notch.moment, end.moment, hole.moment),
    stiffness: Math.min(notch.stiffness, end.stiffness, hole.stiffness),
    shear: Math.min(notch.shear, endShear, hole.shear),
    endShear,
  };
}

/**
 * The share that may still be counted. What the code allows costs nothing, but for an end notch: the code allows a quarter
 * of the depth, of which the shear equation leaves 0.42.
 */
function remainingOf(verdict: Verdict, left: ReturnType<typeof sectionLeft>): number | null {
  if (verdict === 'fails') return Math.min(left.moment, left.shear);
  return verdict === 'meets' ? left.endShear : null;
}

/** The shear the cut joist carries, when its load, thickness and species are known. Pounds. */
function shearFindings({ endShearLb, widthIn, species, depthIn }: JoistInputs, shearLeft: number) {
  if (endShearLb === undefined || widthIn === undefined || species === undefined) return undefined;
  const { psi, source } = FV_PSI[species];
  const fullLb = shearCapacityLb(psi, widthIn, depthIn);
  const leftLb = fullLb * shearLeft;
  const ratio = ratioOf(endShearLb, leftLb);
  const ok = atMost(endShearLb, leftLb);
  const says = () => {
    const { takes, load } = compareLoad(endShearLb, leftLb);
    return text(
      `The end takes ${takes} of shear of ${pounds(fullLb)} whole${load.en}.`,
      `La punta resiste ${takes} de cortante, entera ${pounds(fullLb)}${load.es}.`,
    );
  };
  return { fullLb, leftLb, source, limit: { ratio, ok, says } };
}

function judgeJoist(given: JoistInputs, rule: JoistCutRule, situation: Situation): Judgement {
  const allowed = allowedCuts(given.depthIn, rule);
  const left = sectionLeft(given);
  const shear = shearFindings(given, left.shear);
  const { endNotchIn = 0 } = given;
  const found: Findings = { limits: [], unmeasured: [] };
  notchFindings(given, allowed, rule, found);
  if (endNotchIn > 0) found.limits.push(cutAtMost(WORDS.endNotch, endNotchIn, allowed.endNotchIn));
  holeFindings(given, allowed, rule, found);
  if (shear) found.limits.push(shear.limit);
  const { verdict, ratio, missing } = judgeLimits(found.limits, found.unmeasured);
  const fails = verdict === 'fails';
  return {
    verdict,
    ratio,
    missing,
    remaining: remainingOf(verdict, left),
    values: () => ({
      ...limitValues(allowed, rule),
      momentRatio: shareQuantity(left.moment),
      stiffnessRatio: shareQuantity(left.stiffness),
      shearRatio: shareQuantity(left.shear),
      ...(shear && { fullShearLb: poundsOf(shear.fullLb), notchedShearLb: poundsOf(shear.leftLb) }),
    }),
    reasons: () => joistReasons(found.limits, verdict, left),
    cautions: () => (shear ? [NORMAL_DURATION] : []),
    repairs: fails ? REPAIRS : [],
    hangsOn: shear ? [rule.source, NOTCH_SHEAR_SOURCE, shear.source] : [rule.source],
    sources: [
      rule.source,
      CUT_SECTION_SOURCE,
      ...(shear || endNotchIn > 0 ? [NOTCH_SHEAR_SOURCE] : []),
      ...(shear ? [shear.source] : []),
    ],
    facts: {
      // Only a load over what the wood carries says how unsafe it is; a notch over its limit does not.
      ratio: shear?.limit.ratio ?? null,
      // What an end notch within the code leaves of a beam is counted, and is no emergency.
      memberKind: verdict === 'meets' ? 'joist' : kindOf(situation.memberKind),
    },
  };
}

/** A beam where the place says so; left open where it says nothing, so that the answer tells what was taken. */
const kindOf = (kind: Situation['memberKind']): Situation['memberKind'] =>
  kind === undefined || kind === 'beam' ? kind : 'joist';

const limitValues = (allowed: Allowed, rule: JoistCutRule): Record<string, Quantity> => ({
  notchLimitIn: inchesOf(allowed.notchIn),
  notchLengthLimitIn: inchesOf(allowed.notchLengthIn),
  endNotchLimitIn: inchesOf(allowed.endNotchIn),
  holeLimitIn: inchesOf(allowed.holeIn),
  edgeLimitIn: inchesOf(rule.edgeIn),
});

function joistReasons(limits: readonly CutLimit[], verdict: Verdict, left: ReturnType<typeof sectionLeft>): Text[] {
  if (limits.length === 0) return [text('No cut was found.', 'No se halló ningún corte.')];
  const keeps = text(
    `The cut section keeps ${percent(left.moment)} in bending and ${percent(left.shear)} in shear.`,
    `La sección cortada conserva ${percent(left.moment)} en flexión y ${percent(left.shear)} en cortante.`,
  );
  const endCounts = text(
    `The code allows the notch at the end; ${percent(left.endShear)} of the shear strength is all that counts there.`,
    `El código permite la muesca en la punta; ahí solo cuenta el ${percent(left.endShear)} de la resistencia a cortante.`,
  );
  return [
    ...limitReasons(limits),
    ...(verdict === 'fails' ? [keeps] : verdict === 'meets' && left.endShear < 1 ? [endCounts] : []),
  ];
}

function impossible(given: Partials<typeof inputs>): InputIssue[] {
  const { depthIn, notchIn, endNotchIn, holeIn, edgeIn, distanceFromSupportFt, spanFt } = given;
  return [
    ...largerThan('notchIn', inputs.notchIn.label, notchIn, depthIn),
    ...largerThan('endNotchIn', inputs.endNotchIn.label, endNotchIn, depthIn),
    ...largerThan('holeIn', inputs.holeIn.label, holeIn, depthIn),
    ...largerThan(
      'edgeIn',
      inputs.edgeIn.label,
      edgeIn,
      depthIn === undefined ? undefined : Math.max(0, depthIn - (holeIn ?? 0)),
    ),
    ...refuseLonger(['distanceFromSupportFt'], {
      what: inputs.distanceFromSupportFt.label,
      came: distanceFromSupportFt,
      most: spanFt,
      ofWhat: text('the span', 'el claro'),
      unit: 'ft',
    }),
  ];
}

/** Whether a sawn joist, rafter or beam is notched or bored within the code, and what the cut leaves. Inches, feet, pounds. */
export const joist = defineCheck({
  ...joistCard,
  editions: RULES.map(editionOfCode),
  defaultEdition: JOIST_CUTS_2024.id,
  sources: [...RULES.map((rule) => rule.source), CUT_SECTION_SOURCE, NOTCH_SHEAR_SOURCE, ...FV_SOURCES],
  inputs,
  refine: impossible,
  evaluate: (given, { edition, situation }) => {
    const rule = RULES.find((row) => row.id === edition);
    if (!rule) throw new RangeError(`No joist cutting rule ${edition}`);
    return judgeJoist(given, rule, situation);
  },
  repairs: REPAIRS,
  client: {
    found: ({ notchIn = 0, endNotchIn = 0, holeIn = 0 }) => {
      const cutIn = Math.max(notchIn, endNotchIn, holeIn);
      return cutIn > 0
        ? text(
            `A joist that holds up the floor was cut ${formatLength(cutIn)} deep.`,
            `A una vigueta que sostiene el piso le cortaron ${formatLength(cutIn)}.`,
          )
        : text(
            'We looked for cuts in a joist that holds up the floor.',
            'Buscamos cortes en una vigueta que sostiene el piso.',
          );
    },
    why: text(
      'A cut takes away much more strength than wood: half the depth leaves a quarter of the strength.',
      'Un corte quita mucha más fuerza que madera: con media altura queda un cuarto de la fuerza.',
    ),
    ifNot: text('The joist can sag, split or break at the cut.', 'La vigueta puede combarse, rajarse o romperse ahí.'),
  },
  doesNotCover: [
    text(
      'I-joists, trusses, LVL and glulam: see the check for those.',
      'Vigas I, cerchas, LVL y laminados: tienen otra revisión.',
    ),
    text('Headers, and the strength of the whole floor.', 'Dinteles y la resistencia de todo el piso.'),
  ],
  cases: () => import('./joist.cases.ts'),
});
