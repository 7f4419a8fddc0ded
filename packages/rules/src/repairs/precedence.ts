import type { FindingTakeOff, ScopeLine } from './drawn.ts';
import { overlaps } from './extents.ts';
import { PHASES, WITHOUT_PAPER } from './operations.data.ts';
import { inOrder } from './schedule.ts';

/** Shared work has one step; a finding's own work has a step that names it. */
export function named(lines: readonly ScopeLine[]): { id: string; line: ScopeLine }[] {
  const count = (operation: string) => lines.filter((line) => line.operation === operation).length;
  return lines.map((line) => ({
    id: count(line.operation) > 1 ? `${line.operation}/${line.for[0]}` : line.operation,
    line,
  }));
}

export type Named = ReturnType<typeof named>[number];
const phaseOf = ({ line }: Named): number => PHASES.indexOf(line.phase);

/** Pairs of findings: the first waits for the second. */
export type Order = readonly (readonly [finding: string, after: string])[];

/** Paper decides what is opened and how it is mended; whoever holds a load up or lays sheets on the floor needs none. */
const mustWait = (step: Named, first: Named): boolean =>
  phaseOf(step) > phaseOf(first) && !(first.line.phase === 'decide' && WITHOUT_PAPER.includes(step.line.phase));

/** What stops a whole place: a hold point, and containment, without which nothing painted or moldy may be opened or cut (40 CFR 745.85(a)). */
const holdsPlace = ({ line }: Named): boolean => line.holdPoint || line.phase === 'protect';

const sharePlace = (one: Named, other: Named): boolean =>
  one.line.place === undefined || other.line.place === undefined || one.line.place === other.line.place;

/**
 * What must be done right before each step: within a finding every phase waits for the one before it; a new panel waits
 * for the work it closes in; containment and hold points hold everything later at the place; and own work waits for the
 * finding it was put after. Throws OrderLoopError.
 */
export function precedence(
  steps: readonly Named[],
  order: Order,
  takeOffs: readonly FindingTakeOff[],
): Map<string, string[]> {
  const after = new Map(steps.map(({ id }) => [id, new Set<string>()]));
  const findings = [...new Set(steps.flatMap(({ line }) => line.for))];
  for (const finding of findings) {
    const mine = steps.filter(({ line }) => line.for.includes(finding));
    for (const step of mine) {
      const earlier = mine.filter((one) => mustWait(step, one));
      const before = Math.max(...earlier.map(phaseOf));
      for (const one of earlier) if (phaseOf(one) === before) after.get(step.id)?.add(one.id);
    }
  }
  for (const panel of steps.filter(({ line }) => line.phase === 'panel'))
    for (const step of steps)
      if (phaseOf(step) < phaseOf(panel) && isClosedIn(step, panel, takeOffs)) after.get(panel.id)?.add(step.id);
  for (const hold of steps.filter(holdsPlace))
    for (const step of steps) if (mustWait(step, hold) && sharePlace(step, hold)) after.get(step.id)?.add(hold.id);
  const own = (finding: string) =>
    steps.filter(({ line }) => line.for.length === 1 && line.for[0] === finding && !line.sharedPer);
  for (const [finding, before] of order)
    for (const step of own(finding)) for (const one of own(before)) after.get(step.id)?.add(one.id);
  return onlyDirect(after);
}

/** Whether a step works, for a finding of its own, where a new panel will stand. */
const isClosedIn = (step: Named, panel: Named, takeOffs: readonly FindingTakeOff[]): boolean =>
  takeOffs.some(
    ({ finding, place, extents = [] }) =>
      step.line.for.includes(finding) &&
      step.line.place === place &&
      panel.line.place === place &&
      extents.some((rect) => panel.line.area?.some((area) => overlaps(area, rect))),
  );

/** Leaves out what another predecessor already waits for. Throws OrderLoopError. */
function onlyDirect(after: ReadonlyMap<string, ReadonlySet<string>>): Map<string, string[]> {
  const earlier = new Map<string, Set<string>>();
  const direct = new Map<string, string[]>();
  for (const { id, after: before } of inOrder([...after].map(([id, set]) => ({ id, after: [...set] })))) {
    const far = new Set(before.flatMap((one) => [...(earlier.get(one) ?? [])]));
    direct.set(
      id,
      before.filter((one) => !far.has(one)),
    );
    earlier.set(id, new Set([...before, ...far]));
  }
  return direct;
}
