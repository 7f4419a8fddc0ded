import type { Source } from '../../kernel/index.ts';

/** What one job took for one kind of work. */
export interface JobActual {
  /** In the unit of the work, above 0. */
  readonly quantity: number;
  /** Crew hours, 0 or more. */
  readonly hours: number;
}

/** Hours one unit takes, low up to likely up to high. */
interface HoursPerUnit {
  readonly low: number;
  readonly likely: number;
  readonly high: number;
}

export interface HoursHistory {
  readonly jobs: number;
  /** All hours over all units, so that a large job counts for more than a small one. */
  readonly seenPerUnit: number;
  readonly lowestPerUnit: number;
  readonly highestPerUnit: number;
  /** How much the jobs count against the book, 0 to below 1. */
  readonly weight: number;
  /** What the book may say; null when the book has no hours and fewer than FULL_VOICE jobs are known. */
  readonly suggested: HoursPerUnit | null;
}

/** Below this many jobs a firm's own average is drawn toward the book; at this many both count alike. */
export const FULL_VOICE = 10;

export const HISTORY_SOURCE: Source = {
  id: 'job-history',
  title: 'A few jobs are drawn toward the trade’s figure until about ten are known',
  edition: 'practice',
  section: 'learning from jobs',
  basis: 'memory',
};

/**
 * What the jobs done say about the hours of one unit, beside what the book says. The book is never changed by it. Hours
 * per unit in and out; jobs without quantity are refused with RangeError. Source: HISTORY_SOURCE.
 */
export function hoursHistory(book: HoursPerUnit | null, jobs: readonly JobActual[]): HoursHistory | null {
  if (jobs.length === 0) return null;
  for (const { quantity, hours } of jobs)
    if (!(quantity > 0 && hours >= 0))
      throw new RangeError(`A job took ${hours} h for ${quantity} units; allowed is 0 h or more for more than 0`);
  const perUnit = jobs.map(({ quantity, hours }) => hours / quantity);
  const seen = {
    low: Math.min(...perUnit),
    likely: sum(jobs.map(({ hours }) => hours)) / sum(jobs.map(({ quantity }) => quantity)),
    high: Math.max(...perUnit),
  };
  const weight = jobs.length / (jobs.length + FULL_VOICE);
  return {
    jobs: jobs.length,
    seenPerUnit: seen.likely,
    lowestPerUnit: seen.low,
    highestPerUnit: seen.high,
    weight,
    suggested: book ? between(book, seen, weight) : jobs.length >= FULL_VOICE ? seen : null,
  };
}

const sum = (numbers: readonly number[]): number => numbers.toSorted((a, b) => a - b).reduce((a, b) => a + b, 0);

const between = (book: HoursPerUnit, seen: HoursPerUnit, weight: number): HoursPerUnit => {
  const mix = (name: keyof HoursPerUnit) => book[name] + weight * (seen[name] - book[name]);
  return { low: mix('low'), likely: mix('likely'), high: mix('high') };
};
