import { atLeast, type Verdict } from '../kernel/index.ts';
import type { LoadPath } from './load-path.ts';
import type { LineWorth, SegmentWorth } from './strength.ts';

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
  if (path.demandLb !== undefined && line.atMostLb !== null) return known ? 'meets' : 'undetermined';
  if (anyLost(segments)) return 'fails';
  // A load was named and nothing in pounds holds against it: sound parts alone do not tell.
  return known && path.demandLb === undefined ? 'meets' : 'undetermined';
}
