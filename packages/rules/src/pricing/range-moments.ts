import { type Bend, bendOf } from './open-minimum.ts';
import { type Percentiles, percentilesFor, quantileAt } from './percentiles.ts';
import { type Alike, byPlace, type OpenVisit, type VaryingLine } from './range-plan.ts';
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
  alike: Alike,
): { mean: number; variance: number; drivers: Driver[] } {
  const byVisit = linesByVisit(lines);
  const percentiles = percentilesFor(visits.reduce((sum, visit) => sum + (byVisit.get(visit)?.length ?? 0), 0));
  const bends = visits.map((visit) => bendOf(visit, byVisit.get(visit) ?? [], alike, percentiles));
  const straight = withFactors(lines, bends, ({ lines: [own] }) => own?.factor ?? 0);
  const parts = partsOf(byPlace(straight), alike);
  const moments = momentsOf(parts);
  if (bends.length === 0) return { ...moments, drivers: driversOf(parts) };
  const nearest = withFactors(lines, bends, (bend) => slopeOf(bend, alike));
  return {
    mean: bends.reduce((sum, { constant, factor, mean }) => sum + constant + factor * mean, moments.mean),
    variance: Math.max(0, moments.variance + varianceOf(bends, straight, alike, percentiles)),
    drivers: driversOf(partsOf(byPlace(nearest), alike)),
  };
}

function linesByVisit(lines: readonly VaryingLine[]): Map<OpenVisit, VaryingLine[]> {
  const groups = new Map<OpenVisit, VaryingLine[]>();
  for (const line of lines) {
    if (!line.visit) continue;
    const own = groups.get(line.visit);
    if (own) own.push(line);
    else groups.set(line.visit, [line]);
  }
  return groups;
}

/** The lines with what a cent of their labor comes to where their visit bends. */
function withFactors(lines: readonly VaryingLine[], bends: readonly Bend[], factorOf: (bend: Bend) => number) {
  const factors = new Map(bends.map((bend) => [bend.visit, factorOf(bend)]));
  return lines.map((line) => (line.visit ? { ...line, factor: factors.get(line.visit) ?? 0 } : line));
}

/**
 * What bends bring to the variance: each its own and with its labor, and through each percentile that they share with other
 * lines and bends: that of the whole work, and that of each place as far as it does not lean on the work. Two bends that
 * share more than one place are taken place by place.
 */
function varianceOf(
  bends: readonly Bend[],
  lines: readonly VaryingLine[],
  { follow, lean }: Alike,
  percentiles: Percentiles,
): number {
  const own = bends.reduce(
    (sum, { lines: [first], factor, variance, withLabor }) =>
      sum + factor ** 2 * variance + 2 * factor * (first?.factor ?? 0) * withLabor,
    0,
  );
  const throughWork = bends.map((bend) => ({ ...bend, curve: bend.atWork }));
  const byWork = sharedVariance(throughWork, lines, follow * lean, percentiles);
  const bent = new Map<string | undefined, Bent[]>();
  for (const { factor, places } of bends)
    for (const place of places) {
      const here = bent.get(place.location);
      if (here) here.push({ ...place, factor });
      else bent.set(place.location, [{ ...place, factor }]);
    }
  const byPlaces = byPlace(lines).reduce(
    (sum, here) => sum + sharedVariance(bent.get(here[0]?.location) ?? [], here, follow, percentiles),
    0,
  );
  return own + byWork + (1 - lean ** 2) * byPlaces;
}

/** A bend, or what of it lies at one place, as it moves with the percentile that is looked at. */
type Bent = Pick<Bend, 'lines' | 'factor'> & { readonly curve: Float64Array };

/** The same through one percentile, at which a line falls with some chance. */
function sharedVariance(
  bends: readonly Bent[],
  lines: readonly VaryingLine[],
  chance: number,
  percentiles: Percentiles,
): number {
  if (bends.length === 0) return 0;
  let sum = 0;
  const all = new Float64Array(percentiles.weights.length);
  for (const bend of bends) {
    const added = bend.curve.map((cents) => bend.factor * cents);
    for (const [order, cents] of added.entries()) all[order] = (all[order] as number) + cents;
    // A bend's own variance, and that with its own labor, were counted before.
    sum -= together(laborCurve(bend.lines, chance, percentiles), added, percentiles);
  }
  return sum + together(laborCurve(lines, chance, percentiles), all, percentiles);
}

/** Mean labor of lines, in the total, at each percentile they fall at with some chance; up to a constant. */
function laborCurve(lines: readonly VaryingLine[], chance: number, { shares }: Percentiles): Float64Array {
  const curve = new Float64Array(shares.length);
  for (const line of lines)
    for (const [order, share] of shares.entries())
      curve[order] = (curve[order] as number) + chance * line.factor * line.widthCents * quantileAt(line, share);
  return curve;
}

/** What a curve added to labor brings to the variance over the percentiles. */
const together = (labor: Float64Array, added: Float64Array, percentiles: Percentiles): number =>
  2 * covarianceOf(labor, added, percentiles) + covarianceOf(added, added, percentiles);

/** Over the percentiles. */
function covarianceOf(one: Float64Array, other: Float64Array, { weights }: Percentiles): number {
  let [products, ones, others] = [0, 0, 0];
  for (const [order, weight] of weights.entries()) {
    products += weight * (one[order] as number) * (other[order] as number);
    ones += weight * (one[order] as number);
    others += weight * (other[order] as number);
  }
  return products - ones * others;
}

/** Of the straight line nearest to what an open visit comes to for its labor; by it its lines share in the spread. */
function slopeOf({ lines, factor, withLabor }: Bend, alike: Alike): number {
  const plain = lines.map((line) => ({ ...line, factor: 1 }));
  return (lines[0]?.factor ?? 0) + (factor * withLabor) / momentsOf(partsOf(byPlace(plain), alike)).variance;
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
 * The parts of the variance. The covariance of two lines is the correlation times that of lines which always fall at the
 * same percentile; for like shapes that is correlation x sd x sd, so var(sum) = sum of var + 2 x correlation x sum of sd x sd
 * (published: R. Walker, correlation function). Within a place the correlation is one, across places the smaller one.
 */
function partsOf(
  groups: readonly (readonly VaryingLine[])[],
  { correlation, acrossPlaces }: Pick<Alike, 'correlation' | 'acrossPlaces'>,
): VariancePart[] {
  const curves = groups.map((group) => group.map(curveOf));
  const places = curves.map(sumOfCurves);
  const work = sumOfCurves(places.map((centered) => ({ centered })));
  return curves.flatMap((group, place) =>
    group.map(({ line, quantiles, stretch }) => {
      // Each sum's mean is 0, so that the line's own mean takes no part.
      const withPlace = stretch * integral(quantiles, places[place] ?? work);
      const withWork = groups.length > 1 ? stretch * integral(quantiles, work) : withPlace;
      return {
        line,
        covariance:
          (1 - correlation) * sdOf(line) ** 2 + (correlation - acrossPlaces) * withPlace + acrossPlaces * withWork,
      };
    }),
  );
}

/** A line's quantiles around 0, set to the deviation of the formula, so that like shapes correlate by exactly 1. */
function curveOf(line: VaryingLine) {
  const { quantiles } = line.spread;
  const mean = integral(quantiles, ONE);
  const stretch = sdOf(line) / Math.sqrt(integral(quantiles, quantiles) - mean * mean);
  const centered = new Float64Array(CELLS + 1);
  for (let at = 0; at <= CELLS; at++) centered[at] = stretch * ((quantiles[at] as number) - mean);
  return { line, quantiles, stretch, centered };
}

function sumOfCurves(curves: readonly { readonly centered: Float64Array }[]): Float64Array {
  const sum = new Float64Array(CELLS + 1);
  for (const { centered } of curves)
    for (let at = 0; at <= CELLS; at++) sum[at] = (sum[at] as number) + (centered[at] as number);
  return sum;
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
