import { type Alike, byPlace, type OpenVisit, type VaryingLine } from './range-plan.ts';
import { CELLS } from './spread.ts';
import {
  addKnown,
  addWeighted,
  meanOf,
  nothing,
  one,
  seriesOf,
  times,
  timesEither,
  timesMixed,
  type Waves,
} from './waves.ts';

/**
 * A visit whose hours may or may not reach its minimum, as a straight part and a bend. Where the minimum is mostly passed the
 * bend is what the minimum adds; where it mostly is not, what the labor adds above it, so that the bend is the smaller part.
 * Money in cents.
 */
export interface Bend {
  readonly visit: OpenVisit;
  /** Those of the visit, with the factor of the straight part. */
  readonly lines: readonly VaryingLine[];
  /** What a cent of the bend comes to in the total. */
  readonly factor: number;
  /** In the total: what straight part and bend leave out, which does not vary. */
  readonly constant: number;
  readonly mean: number;
  readonly variance: number;
  /** Its covariance with the visit's labor. */
  readonly withLabor: number;
  /** By location: its mean at each of its PERCENTILES, the other locations anywhere. */
  readonly at: ReadonlyMap<string | undefined, Float64Array>;
  /** Its mean at each percentile of the whole work, to which every location leans. */
  readonly atWork: Float64Array;
}

const NODES = 128;
const steps = Array.from({ length: NODES }, (_, order) => (order + 0.5) / NODES);
/** Percentiles a location or a line is taken at, close together at both ends, where curves are steep. */
export const PERCENTILES = steps.map((step) => step * step * (3 - 2 * step));
/** What each stands for; they add up to 1. */
export const WEIGHTS = evened(steps.map((step) => step * (1 - step)));

function evened(weights: readonly number[]): number[] {
  const whole = weights.reduce((sum, weight) => sum + weight, 0);
  return weights.map((weight) => weight / whole);
}

/** The lines of one location: their sum at each of its percentiles, and wherever it falls. */
interface Part {
  readonly location: string | undefined;
  readonly at: readonly Waves[];
  readonly all: Waves;
}

/**
 * Moments of a bend, max(0, short - s), by its cosine series over the sums s can reach: the mean of each wave is the
 * characteristic function of s, a product over lines, which at one percentile of their location are independent, as the
 * locations are at one of the whole work. Where the minimum mostly is not passed, s is the labor counted down from its highest.
 * @param own lines of the visit, as the plan sorts them
 */
export function bendOf(visit: OpenVisit, own: readonly VaryingLine[], { follow, lean }: Alike): Bend {
  const { shortCents, laborFactor, minimumFactor } = visit;
  const reach = own.reduce((sum, line) => sum + line.widthCents, 0);
  const least = own.reduce((sum, line) => sum + line.shiftCents, 0);
  const labor = own.reduce((sum, line) => sum + line.widthCents * line.spread.mean, 0);
  const down = shortCents - least > labor;
  const parts = byPlace(own).map((group) => partOf(group, follow, reach, down));
  const series = seriesOf(down ? least + reach - shortCents : shortCents - least, reach);
  const wholes = atWorkOf(parts, lean);
  const whole = average(wholes);
  const mean = meanOf(series.bend, whole, one());
  const bySum = meanOf(series.bySum, whole, one()) - mean * (down ? reach - labor : labor);
  const straight = down ? laborFactor - minimumFactor : laborFactor;
  return {
    visit,
    lines: own.map((line) => ({ ...line, factor: straight })),
    factor: minimumFactor,
    constant: minimumFactor * ((down ? shortCents : 0) - Math.max(0, shortCents)),
    mean,
    variance: Math.max(0, meanOf(series.squared, whole, one()) - mean ** 2),
    withLabor: down ? 0 - bySum : bySum,
    at: byPercentile(parts, series.bend),
    atWork: Float64Array.from(wholes, (waves) => meanOf(series.bend, waves, one())),
  };
}

/** The sum of all locations at each percentile of the whole work; a location falls there with a chance of `lean`. */
function atWorkOf(parts: readonly Part[], lean: number): Waves[] {
  return PERCENTILES.map((_, order) => {
    const product = one();
    for (const { at, all } of parts) timesMixed(product, at[order] ?? all, lean, all);
    return product;
  });
}

function byPercentile(parts: readonly Part[], series: Float64Array): Map<string | undefined, Float64Array> {
  const before = running(parts);
  const behind = running(parts.toReversed()).reverse();
  return new Map(
    parts.map(({ location, at }, order) => {
      const others = times(before[order] ?? one(), behind[order] ?? one());
      return [location, Float64Array.from(at, (waves) => meanOf(series, waves, others))];
    }),
  );
}

/** For each part the product of those before it. */
function running(parts: readonly Part[]): Waves[] {
  let product = one();
  return parts.map(({ all }) => {
    const before = product;
    product = times(product, all);
    return before;
  });
}

function partOf(group: readonly VaryingLine[], follow: number, reach: number, down: boolean): Part {
  const shareOf = (line: VaryingLine, at: number) =>
    (line.widthCents * (down ? 1 - quantileAt(line, at) : quantileAt(line, at))) / reach;
  const location = group[0]?.location;
  const alone = group.map((line) => {
    const sum = nothing();
    for (const [order, share] of PERCENTILES.entries()) addKnown(sum, shareOf(line, share), WEIGHTS[order] ?? 0);
    return sum;
  });
  if (follow === 0) {
    const all = alone.reduce(times, one());
    return { location, at: PERCENTILES.map(() => all), all };
  }
  const at = PERCENTILES.map((share) => {
    const product = one();
    for (const [order, line] of group.entries())
      timesEither(product, shareOf(line, share), follow, alone[order] ?? product);
    return product;
  });
  return { location, at, all: average(at) };
}

/** The value of a line at a percentile, 0 to 1 between its low and high. */
export function quantileAt({ spread: { quantiles } }: VaryingLine, share: number): number {
  const cell = Math.floor(share * CELLS);
  const from = quantiles[cell] ?? 1;
  return from + (share * CELLS - cell) * ((quantiles[cell + 1] ?? from) - from);
}

/** The mean over the percentiles. */
function average(each: readonly Waves[]): Waves {
  const sum = nothing();
  for (const [order, waves] of each.entries()) addWeighted(sum, waves, WEIGHTS[order] ?? 0);
  return sum;
}
