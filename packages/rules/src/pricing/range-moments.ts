import type { VaryingLine } from './range-plan.ts';
import { CELLS } from './spread.ts';

export interface Driver {
  readonly name: string;
  readonly location?: string;
  /** Share of the variance of the total, what moves together with it included. */
  readonly share: number;
}

/** A line and its covariance with the total: its part of the variance. */
export interface VariancePart {
  readonly line: VaryingLine;
  readonly covariance: number;
}

const meanOf = ({ shiftCents, widthCents, spread, factor }: VaryingLine): number =>
  factor * (shiftCents + widthCents * spread.mean);
const sdOf = ({ widthCents, spread, factor }: VaryingLine): number => factor * widthCents * spread.sd;

/** Mean and variance, by formula, of how far the total lies from the printed one. */
export const momentsOf = (parts: readonly VariancePart[]): { mean: number; variance: number } => ({
  mean: parts.reduce((sum, { line }) => sum + meanOf(line), 0),
  variance: parts.reduce((sum, { covariance }) => sum + covariance, 0),
});

/** Each line's share of the variance, largest first; nothing where nothing varies. */
export function driversOf(parts: readonly VariancePart[]): Driver[] {
  const { variance } = momentsOf(parts);
  if (variance <= 0) return [];
  return parts
    .map(({ line: { name, location }, covariance }) => ({
      name,
      ...(location !== undefined && { location }),
      share: covariance / variance,
    }))
    .sort((one, other) => other.share - one.share);
}

/**
 * The parts of the variance, location by location. There the covariance of two lines is the correlation times that of lines
 * which always fall at the same percentile; for like shapes that is correlation x sd x sd, so
 * var(sum) = sum of var + 2 x correlation x sum of sd x sd (published: R. Walker, correlation function).
 */
export const partsOf = (groups: readonly (readonly VaryingLine[])[], correlation: number): VariancePart[] =>
  groups.flatMap((group) =>
    group.length === 1
      ? group.map((line) => ({ line, covariance: sdOf(line) ** 2 }))
      : partsOfPlace(group, correlation),
  );

function partsOfPlace(group: readonly VaryingLine[], correlation: number): VariancePart[] {
  const together = new Float64Array(CELLS + 1);
  const curves = group.map((line) => {
    const { quantiles } = line.spread;
    const mean = integral(quantiles, ONE);
    // Set to the deviation of the formula, so that like shapes correlate by exactly 1.
    const stretch = sdOf(line) / Math.sqrt(integral(quantiles, quantiles) - mean * mean);
    for (let at = 0; at <= CELLS; at++)
      together[at] = (together[at] as number) + stretch * ((quantiles[at] as number) - mean);
    return { line, quantiles, stretch };
  });
  return curves.map(({ line, quantiles, stretch }) => {
    // The sum's mean is 0, so that the line's own mean takes no part.
    const asOne = stretch * integral(quantiles, together);
    return { line, covariance: (1 - correlation) * sdOf(line) ** 2 + correlation * asOne };
  });
}

const ONE = new Float64Array(CELLS + 1).fill(1);

/** Integral of the product of two curves of straight pieces over 0 to 1, exactly. */
function integral(one: Float64Array, other: Float64Array): number {
  let sum = 0;
  let [a, c] = [one[0] as number, other[0] as number];
  for (let at = 1; at <= CELLS; at++) {
    const b = one[at] as number;
    const d = other[at] as number;
    sum += 2 * (a * c + b * d) + a * d + b * c;
    a = b;
    c = d;
  }
  return sum / (6 * CELLS);
}
