import type { Text } from '../kernel/index.ts';
import type { Rect } from '../places/extents.ts';
import type { Extent } from './operations.data.ts';
import type { OverrideMark, TypedRates } from './overrides.ts';
import type { NailSchedule } from './panel-layout.ts';
import { findOperation, type TakeOffLine } from './take-off.ts';

/** Work of one kind for one or more findings: what is shared counted once, with what the estimator set on it. */
export interface WorkLine extends TakeOffLine {
  readonly for: readonly string[];
  /** Absent where it is needed once a visit. */
  readonly place?: string;
  /** Where it is on the drawing. */
  readonly area?: readonly Rect[];
  /** Names of the studs, joists or plates it works on. */
  readonly members?: readonly Text[];
  /** Rates typed over the book's; with one that the book lacks, there is no gap. */
  readonly typed?: TypedRates;
  /** A quantity typed over the measured one, as it is shown. */
  readonly quantityMark?: OverrideMark;
}

/** The take-off of one finding at one place, and where it is drawn. */
export interface FindingTakeOff {
  readonly finding: string;
  readonly place: string;
  readonly lines: readonly TakeOffLine[];
  readonly extents?: readonly Rect[];
  /** Opened around the extents for hands and tools, inches. */
  readonly reachIn?: number;
  readonly schedule?: NailSchedule;
}

/** A finding that is drawn, on a place whose sizes are known. */
export interface Drawn extends FindingTakeOff {
  readonly extents: readonly Rect[];
}

/** What part of a drawn place a line works on. */
export const extentOf = (line: TakeOffLine): Extent | undefined => findOperation(line.operation)?.extent;

/** Whether a take-off has work of this kind whose amount the estimator has not set. */
export const has = (one: FindingTakeOff, extent: Extent): boolean =>
  one.lines.some((line) => extentOf(line) === extent && !line.set);

/** What the drawing says about one place: lines worked out from it, and the template lines they stand for. */
export interface Placed {
  readonly lines: WorkLine[];
  readonly stoodFor: Set<TakeOffLine>;
}

/** Puts things under their key, in the order they came. */
export function groupBy<T>(list: readonly T[], keyOf: (one: T) => string): Map<string, T[]> {
  const groups = new Map<string, T[]>();
  for (const one of list) {
    const group = groups.get(keyOf(one));
    if (group) group.push(one);
    else groups.set(keyOf(one), [one]);
  }
  return groups;
}
