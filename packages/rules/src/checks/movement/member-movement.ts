import type { Complete, Source } from '../../kernel/index.ts';
import {
  ENGINEERED_DEPTH_IN,
  ENGINEERED_DEPTH_SOURCE,
  PANEL_EXPANSION_SOURCE,
  panelExpansionPerPct,
} from '../../standards/common-practice/engineered-movement.ts';
import { type MixedGrainRuleId, mixedGrainRule } from '../../standards/mixed-grain-shrinkage/rules.ts';
import { EMC_SOURCE, equilibriumMoisturePct } from '../../standards/wood-handbook-gtr-190/equilibrium-moisture.ts';
import {
  COEFFICIENT_SOURCE,
  FIBER_SATURATION_PCT,
  movementAcrossGrain,
  SHRINKAGE_PCT,
  SHRINKAGE_SOURCE,
  WIDE_RANGE_SOURCE,
} from '../../standards/wood-handbook-gtr-190/shrinkage.ts';
import type { inputs } from './shrinkage.inputs.ts';

type Member = Complete<typeof inputs>['members'][number];
type Air = NonNullable<Member['fromAir']>;

export interface Moved {
  readonly name: string;
  readonly fromPct: number;
  readonly toPct: number;
  /** Negative shrinks, positive swells. */
  readonly changeIn: number;
  readonly method: string;
  readonly sources: readonly Source[];
}

const moistureOf = (pct: number | undefined, air: Air | undefined): number =>
  pct ?? (air ? equilibriumMoisturePct(air.temperatureF, air.humidityPct) : 0);

const belowSaturation = (pct: number): number => Math.min(pct, FIBER_SATURATION_PCT);

/** How far one member moves, by the method its kind and grain call for. */
export function moveMember(given: Member, rule: MixedGrainRuleId): Moved {
  const fromPct = moistureOf(given.fromPct, given.fromAir);
  const toPct = moistureOf(given.toPct, given.toAir);
  const [from, to] = [belowSaturation(fromPct), belowSaturation(toPct)];
  const air = given.fromAir || given.toAir ? [EMC_SOURCE] : [];
  const moved = (changeIn: number, method: string, ...sources: Source[]): Moved => ({
    name: given.name,
    fromPct,
    toPct,
    changeIn,
    method,
    sources: [...sources, ...air],
  });
  if (given.kind === 'i-joist' || given.kind === 'lvl')
    return moved(Math.sign(to - from) * ENGINEERED_DEPTH_IN, 'engineered-allowance', ENGINEERED_DEPTH_SOURCE);
  if (given.kind === 'panel')
    return moved(given.sizeIn * panelExpansionPerPct * (to - from), 'panel-expansion', PANEL_EXPANSION_SOURCE);
  if (given.grain === 'mixed' || given.species === undefined) {
    const { change, source } = mixedGrainRule(rule);
    return moved(change(given.sizeIn, from, to), rule === 'grading-rule' ? rule : 'rule-of-thumb', source);
  }
  const shrinkagePct = SHRINKAGE_PCT[given.species][given.grain];
  const { changeIn, method } = movementAcrossGrain(given.sizeIn, shrinkagePct, fromPct, toPct);
  return method === 'equation-13-3'
    ? moved(changeIn, method, SHRINKAGE_SOURCE, WIDE_RANGE_SOURCE)
    : moved(changeIn, method, SHRINKAGE_SOURCE, COEFFICIENT_SOURCE);
}
