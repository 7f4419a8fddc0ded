/** Two numbers this close, relative to their size, are the same number after binary arithmetic. */
const SAME_WITHIN = 1e-9;

const same = (a: number, b: number): boolean => Math.abs(a - b) <= SAME_WITHIN * Math.max(1, Math.abs(a), Math.abs(b));

/** Greater than or equal, so that a measurement equal to its limit meets it. */
export const atLeast = (value: number, limit: number): boolean => value >= limit || same(value, limit);
/** Less than or equal, so that a measurement equal to its limit meets it. */
export const atMost = (value: number, limit: number): boolean => value <= limit || same(value, limit);

/**
 * Demand over capacity, or measured over limit; above 1 does not meet. Null when it has no finite value
 * (capacity or limit zero, or either one unknown): the outcome then says so in words, never Infinity or NaN.
 */
export function ratioOf(demand: number | undefined, capacity: number | undefined): number | null {
  if (demand === undefined || capacity === undefined || capacity <= SAME_WITHIN) return null;
  return same(demand, capacity) ? 1 : demand / capacity;
}

/** Keeps a share of strength within 0..1; null stays unknown. */
export function shareOf(part: number, whole: number): number | null {
  if (!(whole > 0) || !Number.isFinite(part)) return null;
  return Math.min(1, Math.max(0, part / whole));
}

/** Share 0..1 of a demand that a capacity meets: 1 of one it carries, null of one that is not known. */
export function shareMet(capacity: number, demand: number | undefined): number | null {
  if (demand === undefined) return null;
  return atMost(demand, capacity) ? 1 : shareOf(capacity, demand);
}

/** The largest of several ratios, null when none is known. */
export function largestRatio(ratios: readonly (number | null)[]): number | null {
  const known = ratios.filter((ratio) => ratio !== null);
  return known.length === 0 ? null : Math.max(...known);
}

/** The smallest whole number not below a value, forgiving binary arithmetic: 12.000000001 is 12. */
export const wholeUp = (value: number): number => Math.ceil(value - SAME_WITHIN * Math.max(1, Math.abs(value)));
