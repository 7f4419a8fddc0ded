/**
 * Demand over capacity, or measured over limit; above 1 does not meet. Null when it has no finite value
 * (capacity or limit zero, or either one unknown): the outcome then says so in words, never Infinity or NaN.
 */
export function ratioOf(demand: number | undefined, capacity: number | undefined): number | null {
  if (demand === undefined || capacity === undefined || capacity <= 0) return null;
  const ratio = demand / capacity;
  return Number.isFinite(ratio) ? ratio : null;
}

/** Keeps a share of strength within 0..1; null stays unknown. */
export function shareOf(part: number, whole: number): number | null {
  if (!(whole > 0) || !Number.isFinite(part)) return null;
  return Math.min(1, Math.max(0, part / whole));
}
