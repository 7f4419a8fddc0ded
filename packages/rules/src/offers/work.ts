import { clip, type Ground, onTicks, overlaps, wholeGround } from '../places/extents.ts';
import type { RepairFacts } from '../repairs/define-repair.ts';
import type { FindingTakeOff } from '../repairs/drawn.ts';
import type { Existing } from '../repairs/existing.ts';
import type { NailSchedule } from '../repairs/panel-layout.ts';
import { type TakeOffLine, takeOff } from '../repairs/take-off.ts';
import { ASSUMED_SCHEDULE } from '../repairs/unite.ts';
import { type FindingWork, type PriceableFinding, setByHand, type WorkPlace } from './finding.ts';

/** Opened around a defect for hands and tools, inches (common practice, no source). */
const REACH_IN = 12;

/** The places of these findings that have sizes, by id. */
export const groundsOf = (findings: readonly PriceableFinding[]): Map<string, Ground> =>
  new Map(findings.flatMap(({ place: { id, ground } }) => (ground ? [[id, ground] as const] : [])));

/** What the base contract does already, by place. */
export const existingOf = (findings: readonly PriceableFinding[]): Map<string, readonly Existing[]> =>
  new Map(findings.map(({ place: { id, existing } }) => [id, existing]));

/** The work that the chosen repairs of a finding take, each as its template says. */
export function takeOffFinding({ finding: { judged }, content: { choices, overrides } }: FindingWork): TakeOffLine[] {
  const facts: RepairFacts = { inputs: judged?.inputs ?? {}, outcome: judged?.outcome ?? { values: {} } };
  const overLines = overrides.flatMap(({ operation, quantity, why }) =>
    quantity === undefined ? [] : [[operation, { value: quantity, why }] as const],
  );
  return choices.flatMap(({ repairId, quantities }) => {
    const set = { ...quantities, ...Object.fromEntries(overLines) };
    const values = Object.fromEntries(Object.entries(set).map(([operation, { value }]) => [operation, value]));
    return takeOff(repairId, facts, values).map((line) => {
      const why = set[line.operation]?.why;
      return why ? { ...line, how: setByHand(`Set by the estimator: ${why}`) } : line;
    });
  });
}

/** The work of a finding with its drawn extent, kept inside its place. */
export function drawnTakeOff(work: FindingWork): FindingTakeOff {
  const { id, place, extent } = work.finding;
  const { ground } = place;
  const isInside = ground && extent && overlaps(extent, wholeGround(ground));
  const extents = isInside ? [clip(onTicks(extent), wholeGround(ground))] : [];
  return {
    finding: id,
    place: place.id,
    lines: takeOffFinding(work),
    extents,
    reachIn: REACH_IN,
    ...scheduleOf(place),
  };
}

function scheduleOf({ nailing: { edgeSpacingIn, fieldSpacingIn } }: WorkPlace): { schedule?: NailSchedule } {
  if (edgeSpacingIn === null && fieldSpacingIn === null) return {};
  return {
    schedule: {
      edgeSpacingIn: edgeSpacingIn ?? ASSUMED_SCHEDULE.edgeSpacingIn,
      fieldSpacingIn: fieldSpacingIn ?? ASSUMED_SCHEDULE.fieldSpacingIn,
    },
  };
}
