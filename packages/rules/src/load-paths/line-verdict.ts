import { atLeast, type Verdict } from '../kernel/index.ts';
import type { LoadPath } from './load-path.ts';
import type { LineWorth, SegmentWorth } from './strength.ts';
import { isPier, sum } from './weights.ts';

/** Whether nothing is left that could lower a figure: every usual link listed, seen, measured and charged with what stands above. */
export const isKnown = (segments: readonly SegmentWorth[]): boolean =>
  segments.every(
    ({ notListed, links }) =>
      notListed.length === 0 &&
      links.every(({ remaining, unmeasured, momentOpen }) => remaining !== null && !unmeasured && !momentOpen),
  );

const anyLost = (segments: readonly SegmentWorth[]): boolean =>
  segments.some(({ links }) => links.some(({ remaining }) => remaining !== null && remaining < 1));
const anyUsedUp = (segments: readonly SegmentWorth[]): boolean =>
  segments.some(({ links }) => links.some(({ usedUp }) => usedUp));

/** The most that the line could take, lb: what it was meant for while nobody has seen any of it. */
export const mostLb = ({ atMostLb, intendedLb }: LineWorth): number | null => atMostLb ?? intendedLb;

/** Whether even the most it could take falls short of what is asked. */
export function isOverloaded({ demandLb }: LoadPath, line: LineWorth): boolean {
  const most = mostLb(line);
  return demandLb !== undefined && most !== null && !atLeast(most, demandLb);
}

/**
 * Nothing left fails, whatever is asked. Against the engineer's demand an "at most" that falls short fails, and one that
 * covers it meets only when nothing could lower it. Without a demand a link that lost strength fails.
 */
export function verdictOf(path: LoadPath, line: LineWorth, segments: readonly SegmentWorth[]): Verdict {
  if (line.atMostLb === 0 || anyUsedUp(segments) || isOverloaded(path, line)) return 'fails';
  const known = isKnown(segments);
  const isTold = known && !hangsOnPiers(path, segments);
  if (path.demandLb !== undefined && line.atMostLb !== null) return isTold ? 'meets' : 'undetermined';
  if (anyLost(segments)) return 'fails';
  // A load was named and nothing in pounds holds against it: sound parts alone do not tell.
  return isTold && path.demandLb === undefined ? 'meets' : 'undetermined';
}

/** Whether only segments too narrow to count as panel walls make the line enough, or there are no others. */
export function hangsOnPiers({ kind, demandLb = 0, segments }: LoadPath, worth: readonly SegmentWorth[]): boolean {
  if (kind !== 'wall-line' || !segments.some(isPier)) return false;
  const walls = worth.filter((_one, at) => !isPier(segments[at] as LoadPath['segments'][number]));
  return walls.length === 0 || !atLeast(sum(walls.map(({ atMostLb }) => atMostLb ?? 0)), demandLb);
}
