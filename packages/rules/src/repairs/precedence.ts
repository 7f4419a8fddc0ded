import { overlaps } from '../places/extents.ts';
import type { FindingTakeOff, WorkLine } from './drawn.ts';
import { PHASES, WITHOUT_PAPER } from './operations.data.ts';
import { inOrder } from './schedule.ts';

/** Shared work has one step; a finding's own work has a step that names it. */
export function named(lines: readonly WorkLine[]): { id: string; line: WorkLine }[] {
  const count = new Map<string, number>();
  for (const { operation } of lines) count.set(operation, (count.get(operation) ?? 0) + 1);
  return lines.map((line) => ({
    id: (count.get(line.operation) ?? 0) > 1 ? `${line.operation}/${line.for[0]}` : line.operation,
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
  const stepsOf = new Map<string, Named[]>();
  for (const step of steps)
    for (const finding of step.line.for) stepsOf.set(finding, [...(stepsOf.get(finding) ?? []), step]);
  for (const mine of stepsOf.values()) {
    for (const step of mine) {
      const earlier = mine.filter((one) => mustWait(step, one));
      const before = Math.max(...earlier.map(phaseOf));
      for (const one of earlier) if (phaseOf(one) === before) after.get(step.id)?.add(one.id);
    }
  }
  for (const panel of steps.filter(({ line }) => line.phase === 'panel'))
    for (const finding of closedIn(panel, takeOffs))
      for (const step of stepsOf.get(finding) ?? [])
        if (phaseOf(step) < phaseOf(panel) && step.line.place === panel.line.place) after.get(panel.id)?.add(step.id);
  for (const hold of steps.filter(holdsPlace))
    for (const step of steps) if (mustWait(step, hold) && sharePlace(step, hold)) after.get(step.id)?.add(hold.id);
  const own = (finding: string) =>
    (stepsOf.get(finding) ?? []).filter(({ line }) => line.for.length === 1 && !line.sharedPer);
  for (const [finding, before] of order)
    for (const step of atEnd(own(finding), -1))
      for (const one of atEnd(own(before), 1)) after.get(step.id)?.add(one.id);
  return onlyDirect(after);
}

/** The steps of a finding's first phase (-1) or last (1): the others lie between them. */
function atEnd(own: readonly Named[], end: -1 | 1): Named[] {
  const phase = Math.max(...own.map((step) => end * phaseOf(step)));
  return own.filter((step) => end * phaseOf(step) === phase);
}

/** Findings that are drawn where a new panel will stand. */
const closedIn = ({ line: { place, area = [] } }: Named, takeOffs: readonly FindingTakeOff[]): string[] =>
  takeOffs
    .filter((one) => one.place === place && one.extents?.some((rect) => area.some((part) => overlaps(part, rect))))
    .map(({ finding }) => finding);

/** Leaves out what another predecessor already waits for. Throws OrderLoopError. */
function onlyDirect(after: ReadonlyMap<string, ReadonlySet<string>>): Map<string, string[]> {
  const steps = inOrder([...after].map(([id, set]) => ({ id, after: [...set] })));
  const rank = new Map(steps.map(({ id }, order) => [id, order]));
  // One bit for each step that must be done before, so that thousands of waits stay cheap.
  const earlier = steps.map(() => new Uint32Array(Math.ceil(steps.length / WORD_BITS)));
  const direct = new Map<string, string[]>();
  for (const [order, { id, after: before }] of steps.entries()) {
    const mine = earlier[order] as Uint32Array;
    const kept = new Set<string>();
    // The last to be done first: what waits for others stands for them.
    for (const one of [...before].sort((a, b) => (rank.get(b) ?? 0) - (rank.get(a) ?? 0))) {
      const at = rank.get(one) as number;
      if (hasBit(mine, at)) continue;
      kept.add(one);
      for (const [word, bits] of (earlier[at] as Uint32Array).entries()) mine[word] = (mine[word] as number) | bits;
      mine[at >>> 5] = (mine[at >>> 5] as number) | (1 << (at & 31));
    }
    direct.set(
      id,
      before.filter((one) => kept.has(one)),
    );
  }
  return direct;
}

const WORD_BITS = 32;
const hasBit = (bits: Uint32Array, at: number): boolean => (((bits[at >>> 5] as number) >>> (at & 31)) & 1) === 1;
