import type { VaryingLine } from './range-plan.ts';
import { CELLS } from './spread.ts';

/** Percentiles a line, a place or the whole work is taken at, and what each stands for; the weights add up to 1. */
export interface Percentiles {
  readonly shares: readonly number[];
  readonly weights: readonly number[];
}

/** Up to so many lines under open minimums are taken at MANY percentiles, more at FEW: the work grows with lines x percentiles. */
const FEW_LINES = 64;
const MANY = percentilesOf(128);
const FEW = percentilesOf(64);

/** @param lines how many there are under all open minimums */
export const percentilesFor = (lines: number): Percentiles => (lines > FEW_LINES ? FEW : MANY);

/** Close together at both ends, where curves are steep. */
export function percentilesOf(count: number): Percentiles {
  const steps = Array.from({ length: count }, (_, order) => (order + 0.5) / count);
  const weights = steps.map((step) => step * (1 - step));
  const whole = weights.reduce((sum, weight) => sum + weight, 0);
  return {
    shares: steps.map((step) => step * step * (3 - 2 * step)),
    weights: weights.map((weight) => weight / whole),
  };
}

/** The value of a line at a percentile, 0 to 1 between its low and high. */
export function quantileAt({ spread: { quantiles } }: VaryingLine, share: number): number {
  const cell = Math.floor(share * CELLS);
  const from = quantiles[cell] ?? 1;
  return from + (share * CELLS - cell) * ((quantiles[cell + 1] ?? from) - from);
}
