import { atMost, type Source } from '../kernel/index.ts';
import type { LoadPathKind, Segment } from './load-path.ts';

/** A wall this many times as high as long has its full share; over the limit it does not count. */
const SLENDER = { fullAspect: 2, aspectLimit: 3.5 };
export const SLENDER_SOURCE: Source = {
  id: 'sdpws-narrow-walls-in-line',
  title: 'SDPWS, walls of different lengths that share a line',
  edition: '2015, 2021',
  section: '2021 4.3.3.2, 4.3.5.5.1 exception 1',
  basis: 'second-hand',
};

/** For each segment, the part 0..1 of the line's share that hangs on it; and what it was taken from. */
export interface Weights {
  readonly weights: readonly number[];
  readonly weighedBy: 'strength' | 'length' | 'count';
}

export const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);

/**
 * By what the segments were meant to carry, lb, when all of it is known; else by their lengths; else alike. A segment of a
 * wall counts for its length times 2 x length / height where it is over twice as high as long, and for nothing over 3.5.
 */
export function weighSegments(
  kind: LoadPathKind,
  segments: readonly Segment[],
  meantLb: readonly number[] | null,
): Weights {
  const lengthsFt = segments.map(({ lengthFt }) => lengthFt).filter((lengthFt) => lengthFt !== undefined);
  const allLong = lengthsFt.length === segments.length;
  const countedFt = kind === 'wall-line' ? segments.map(segmentLengthFt) : lengthsFt;
  const choices: readonly [Weights['weighedBy'], readonly number[] | null][] = [
    ['strength', meantLb],
    ['length', allLong ? countedFt : null],
    // Piers alone: none of them counts, and yet each has its part of what there is.
    ['length', allLong ? lengthsFt : null],
  ];
  const [weighedBy, values] = choices.find(([, some]) => some && sum(some) > 0) ?? ['count', null];
  const parts = values ?? segments.map(() => 1);
  const total = sum(parts);
  return { weights: parts.map((part) => part / total), weighedBy };
}

/** How many times as high as long a segment is; undefined while either is not known. */
const aspectOf = ({ lengthFt, heightFt }: Segment): number | undefined =>
  lengthFt === undefined || heightFt === undefined ? undefined : heightFt / lengthFt;

/** Length in ft that a segment of a wall counts for in its line; all of it while its height is not known. */
export function segmentLengthFt(segment: Segment): number {
  const { lengthFt = 0 } = segment;
  const aspect = aspectOf(segment);
  if (aspect === undefined) return lengthFt;
  return atMost(aspect, SLENDER.aspectLimit) ? lengthFt * Math.min(1, SLENDER.fullAspect / aspect) : 0;
}

/** Over the limit a panel wall is no wall to count on. */
export const isPier = (segment: Segment): boolean => !atMost(aspectOf(segment) ?? 0, SLENDER.aspectLimit);

/** Whether any segment counts for less than its length. */
export const anySlender = (segments: readonly Segment[]): boolean =>
  segments.some((segment) => segmentLengthFt(segment) < (segment.lengthFt ?? 0));
