import type { VaryingLine } from './range-plan.ts';
import { CELLS } from './spread.ts';

export interface Driver {
  readonly name: string;
  readonly location?: string;
  /** Share of the variance of the total, what moves together with it included. */
  readonly share: number;
}

const meanOf = ({ shiftCents, widthCents, spread, factor }: VaryingLine): number =>
  factor * (shiftCents + widthCents * spread.mean);
const sdOf = ({ widthCents, spread, factor }: VaryingLine): number => factor * widthCents * spread.sd;

/**
 * Mean and variance of how far the total lies from the printed one, by formula. In a location, the covariance of two lines is
 * the correlation times that of lines which always fall at the same percentile; for like shapes that is correlation x sd x sd,
 * so var(sum) = sum of var + 2 x correlation x sum of sd x sd (published: R. Walker, correlation function).
 */
export function momentsOf(
  groups: readonly (readonly VaryingLine[])[],
  correlation: number,
): { mean: number; variance: number } {
  let [mean, variance] = [0, 0];
  for (const group of groups)
    for (const { line, covariance } of covariances(group, correlation)) {
      mean += meanOf(line);
      variance += covariance;
    }
  return { mean, variance };
}

/** Each line's part in the variance of the whole, largest first; nothing where nothing varies. */
export function driversOf(groups: readonly (readonly VaryingLine[])[], correlation: number): Driver[] {
  const parts = groups.flatMap((group) => covariances(group, correlation));
  const variance = parts.reduce((sum, { covariance }) => sum + covariance, 0);
  if (variance <= 0) return [];
  return parts
    .map(({ line: { name, location }, covariance }) => ({
      name,
      ...(location !== undefined && { location }),
      share: covariance / variance,
    }))
    .sort((one, other) => other.share - one.share);
}

/** Covariance of each line with its location's sum. */
function covariances(group: readonly VaryingLine[], correlation: number) {
  const [only] = group;
  if (only && group.length === 1) return [{ line: only, covariance: sdOf(only) ** 2 }];
  const curves = group.map(standardCurve);
  const together = new Float64Array(CELLS + 1);
  for (const [order, line] of group.entries()) {
    const [curve, sd] = [curves[order] ?? together, sdOf(line)];
    for (let at = 0; at <= CELLS; at++) together[at] = (together[at] ?? 0) + sd * (curve[at] ?? 0);
  }
  return group.map((line, order) => {
    const sd = sdOf(line);
    const asOne = sd * integral(curves[order] ?? together, together);
    return { line, covariance: (1 - correlation) * sd ** 2 + correlation * asOne };
  });
}

/** A quantile curve moved and stretched to mean 0 and deviation 1, so that like shapes correlate by exactly 1. */
function standardCurve({ spread: { quantiles } }: VaryingLine): Float64Array {
  const one = new Float64Array(CELLS + 1).fill(1);
  const mean = integral(quantiles, one);
  const sd = Math.sqrt(integral(quantiles, quantiles) - mean ** 2);
  return one.map((_, at) => ((quantiles[at] ?? 0) - mean) / sd);
}

/** Integral of the product of two curves of straight pieces over 0 to 1, exactly. */
function integral(one: Float64Array, other: Float64Array): number {
  let sum = 0;
  for (let at = 0; at < CELLS; at++) {
    const [a, b] = [one[at] as number, one[at + 1] as number];
    const [c, d] = [other[at] as number, other[at + 1] as number];
    sum += 2 * (a * c + b * d) + a * d + b * c;
  }
  return sum / (6 * CELLS);
}
