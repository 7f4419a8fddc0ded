import { type Bend, bendOf, PERCENTILES, quantileAt, WEIGHTS } from './open-minimum.ts';
import { byPlace, type OpenVisit, type VaryingLine } from './range-plan.ts';
import { CELLS } from './spread.ts';

export interface Driver {
  readonly name: string;
  readonly location?: string;
  /** Share of the variance of the total, what moves together with it included. */
  readonly share: number;
}

/** A line and its covariance with the total: its part of the variance. */
interface VariancePart {
  readonly line: VaryingLine;
  readonly covariance: number;
}

const meanOf = ({ shiftCents, widthCents, spread, factor }: VaryingLine): number =>
  factor * (shiftCents + widthCents * spread.mean);
const sdOf = ({ widthCents, spread, factor }: VaryingLine): number => factor * widthCents * spread.sd;

/** Mean and variance, by formula, of how far the total lies from the printed one, and who makes the variance. */
export function formulaOf(
  lines: readonly VaryingLine[],
  visits: readonly OpenVisit[],
  correlation: number,
): { mean: number; variance: number; drivers: Driver[] } {
  const follow = Math.sqrt(correlation);
  const bends = visits.map((visit) =>
    bendOf(
      visit,
      lines.filter((line) => line.visit === visit),
      follow,
    ),
  );
  const straight = withFactors(lines, bends, ({ lines: [own] }) => own?.factor ?? 0);
  const parts = partsOf(byPlace(straight), correlation);
  const moments = momentsOf(parts);
  if (bends.length === 0) return { ...moments, drivers: driversOf(parts) };
  const nearest = withFactors(lines, bends, (bend) => slopeOf(bend, correlation));
  return {
    mean: bends.reduce((sum, { constant, factor, mean }) => sum + constant + factor * mean, moments.mean),
    variance: Math.max(0, moments.variance + varianceOf(bends, straight, follow)),
    drivers: driversOf(partsOf(byPlace(nearest), correlation)),
  };
}

/** The lines with what a cent of their labor comes to where their visit bends. */
function withFactors(lines: readonly VaryingLine[], bends: readonly Bend[], factorOf: (bend: Bend) => number) {
  const factors = new Map(bends.map((bend) => [bend.visit, factorOf(bend)]));
  return lines.map((line) => (line.visit ? { ...line, factor: factors.get(line.visit) ?? 0 } : line));
}

/**
 * What bends bring to the variance: each its own and with its labor, and in every location with the other lines and bends
 * there. Two bends that share more than one location are taken location by location.
 */
function varianceOf(bends: readonly Bend[], lines: readonly VaryingLine[], follow: number): number {
  let sum = 0;
  for (const {
    lines: [own],
    factor,
    variance,
    withLabor,
  } of bends)
    sum += factor ** 2 * variance + 2 * factor * (own?.factor ?? 0) * withLabor;
  const places = new Set(bends.flatMap(({ at }) => [...at.keys()]));
  for (const place of places) {
    const isHere = ({ location }: VaryingLine) => location === place;
    const all = zero();
    for (const { at, factor, lines: own } of bends) {
      const added = at.get(place)?.map((cents) => factor * cents);
      if (!added) continue;
      for (const [order, cents] of added.entries()) all[order] = (all[order] as number) + cents;
      // With its own labor it was counted above.
      sum -= together(laborCurve(own.filter(isHere), follow), added);
    }
    sum += together(laborCurve(lines.filter(isHere), follow), all);
  }
  return sum;
}

const zero = () => new Float64Array(PERCENTILES.length);

/** Mean labor of lines, in the total, at each percentile of their location; up to a constant. */
function laborCurve(lines: readonly VaryingLine[], follow: number): Float64Array {
  const curve = zero();
  for (const line of lines)
    for (const [order, share] of PERCENTILES.entries())
      curve[order] = (curve[order] as number) + follow * line.factor * line.widthCents * quantileAt(line, share);
  return curve;
}

/** What a curve added to labor brings to the variance over the percentiles. */
const together = (labor: Float64Array, added: Float64Array): number =>
  2 * covarianceOf(labor, added) + covarianceOf(added, added);

/** Over the percentiles of a location. */
function covarianceOf(one: Float64Array, other: Float64Array): number {
  let [products, ones, others] = [0, 0, 0];
  for (const [order, weight] of WEIGHTS.entries()) {
    products += weight * (one[order] as number) * (other[order] as number);
    ones += weight * (one[order] as number);
    others += weight * (other[order] as number);
  }
  return products - ones * others;
}

/** Of the straight line nearest to what an open visit comes to for its labor; by it its lines share in the spread. */
function slopeOf({ lines, factor, withLabor }: Bend, correlation: number): number {
  const plain = lines.map((line) => ({ ...line, factor: 1 }));
  return (lines[0]?.factor ?? 0) + (factor * withLabor) / momentsOf(partsOf(byPlace(plain), correlation)).variance;
}

const momentsOf = (parts: readonly VariancePart[]): { mean: number; variance: number } => ({
  mean: parts.reduce((sum, { line }) => sum + meanOf(line), 0),
  variance: parts.reduce((sum, { covariance }) => sum + covariance, 0),
});

/** Each line's share of the variance, largest first; nothing where nothing varies. */
function driversOf(parts: readonly VariancePart[]): Driver[] {
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
const partsOf = (groups: readonly (readonly VaryingLine[])[], correlation: number): VariancePart[] =>
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
