import { decimal, roundCents, type Text, text } from '../../kernel/index.ts';
import type { Estimate } from '../estimate/estimate.ts';
import type { EstimateInput, EstimateLine, RangeInput } from '../estimate/estimate-input.ts';
import { fillUniform, openStream } from './random.ts';
import { type Driver, momentsOf } from './range-moments.ts';
import { type Alike, alikeOf, byPlace, type OpenVisit, planRange, type VaryingLine } from './range-plan.ts';
import { CELLS } from './spread.ts';

/** What a total may come to, in cents. Percentiles of parts do not add up to the percentile of the whole. */
export interface PriceRange {
  readonly meanCents: number;
  readonly sdCents: number;
  /** The smallest simulated total that at least 50, 80, 90% of the trials do not exceed. */
  readonly p50Cents: number;
  readonly p80Cents: number;
  readonly p90Cents: number;
  /** Mean and deviation by formula, for the same definitions and without a draw; null where a minimum is open: none is closed then. */
  readonly analyticMeanCents: number | null;
  readonly analyticSdCents: number | null;
  /** Visits whose hours may or may not reach their minimum. */
  readonly openMinimums: readonly string[];
  /** Who makes the spread: shares of the variance that add up to 1, largest first. */
  readonly drivers: readonly Driver[];
  /** Rank correlation of the hours of two lines of different places, as it was taken. */
  readonly acrossPlaces: number;
}

/** What a range takes for granted about how hours vary together. */
export function rangeNotes(lines: readonly EstimateLine[], { acrossPlaces }: Pick<PriceRange, 'acrossPlaces'>): Text[] {
  const pace = decimal(acrossPlaces);
  const unplaced = lines.some(({ location }) => location === undefined);
  return [
    text(
      `One crew has one pace: hours in different places vary together with correlation ${pace}.`,
      `Una cuadrilla tiene un ritmo: las horas de lugares distintos varían juntas con correlación ${pace}.`,
    ),
    ...(unplaced
      ? [text('Lines without a location count as one place.', 'Las líneas sin lugar cuentan como un solo lugar.')]
      : []),
  ];
}

/**
 * Draws what an estimate may come to. Only hours vary; they run through rate, overhead and profit, and at the likely hours of
 * every line a trial is the printed total. A credit does not vary. Two lines of one location have rank correlation
 * `correlation`: with chance sqrt(correlation) a line falls at its location's percentile of the trial, else at one of its own.
 * Two of different locations have `acrossPlaces`: a location falls at the percentile of the whole work with such a chance too.
 * For lines of like shape that is also the correlation of their money. The same seed gives the same answer whatever the order
 * of the lines. @param estimate what `evaluateEstimate` says of the same input
 */
export function evaluateRange(input: EstimateInput, range: RangeInput, estimate: Estimate): PriceRange {
  const { lines, visits } = planRange(input, range.shape, estimate);
  const alike = alikeOf(range);
  const { totals, slopes } = simulate(lines, visits, range, alike);
  const { mean, sd } = sampleMoments(totals);
  const moments = momentsOf(
    lines.map((line) => (line.visit ? { ...line, factor: slopes.get(line.visit) ?? line.factor } : line)),
    alike,
  );
  const closed = visits.length === 0;
  totals.sort();
  const quantile = (share: number) => (totals[Math.max(0, Math.ceil(share * totals.length) - 1)] ?? 0) as number;
  const inTotal = (deviation: number) => roundCents(estimate.totalCents + deviation);
  return {
    meanCents: inTotal(mean),
    sdCents: roundCents(sd),
    p50Cents: inTotal(quantile(0.5)),
    p80Cents: inTotal(quantile(0.8)),
    p90Cents: inTotal(quantile(0.9)),
    analyticMeanCents: closed ? inTotal(moments.mean) : null,
    analyticSdCents: closed ? roundCents(Math.sqrt(moments.variance)) : null,
    openMinimums: visits.map(({ name }) => name),
    drivers: moments.drivers,
    acrossPlaces: alike.acrossPlaces,
  };
}

interface Simulated {
  /** How far each trial lies from the printed total, cents. */
  readonly totals: Float64Array;
  /** What a cent of an open visit's labor comes to in the total, by the straight line nearest to its trials. */
  readonly slopes: ReadonlyMap<OpenVisit, number>;
}

/** Nothing is allocated per draw. */
function simulate(
  lines: readonly VaryingLine[],
  visits: readonly OpenVisit[],
  { trials, seed }: RangeInput,
  { follow, lean }: Alike,
): Simulated {
  const totals = new Float64Array(trials);
  const work = new Float64Array(trials);
  const place = new Float64Array(trials);
  const sums = new Map(visits.map((visit) => [visit, new Float64Array(trials)]));
  fillUniform(openStream(`${seed} work`), work);
  for (const group of byPlace(lines)) {
    const location = group[0]?.location;
    fillUniform(openStream(location === undefined ? `${seed} no place` : `${seed} place ${location}`), place);
    leanOn(work, lean, place);
    for (const line of group) {
      const stream = openStream(`${seed} line ${line.key}`);
      const into = (line.visit && sums.get(line.visit)) ?? totals;
      addDraws(line, stream, place, follow, into);
    }
  }
  const slopes = new Map(visits.map((visit) => [visit, addVisit(visit, sums.get(visit) ?? place, totals)]));
  return { totals, slopes };
}

/** Puts a place at the percentile of the whole work with some chance; else what is left of its own number is spread over 0 to 1 again. */
function leanOn(work: Float64Array, lean: number, place: Float64Array): void {
  const stretch = lean < 1 ? 1 / (1 - lean) : 0;
  // As in `addDraws`: no branch.
  const either = new Float64Array(2);
  for (let trial = 0; trial < place.length; trial++) {
    const own = place[trial] as number;
    either[0] = (own - lean) * stretch;
    either[1] = work[trial] as number;
    place[trial] = either[+(own < lean)] as number;
  }
}

/** The inner loop: one draw of a line for each trial (sfc32 as in `random.ts`, kept in registers here). */
export function addDraws(
  { spread: { quantiles }, shiftCents, widthCents, factor, visit }: VaryingLine,
  stream: Int32Array,
  place: Float64Array,
  follow: number,
  into: Float64Array,
): void {
  const scale = visit ? 1 : factor;
  const [width, shift] = [widthCents * scale, shiftCents * scale];
  // A constant of this function is compiled in; one of the file would be looked up at every draw.
  const cells = CELLS;
  const stretch = follow < 1 ? cells / (1 - follow) : 0;
  // Both are written down and one is read: a branch that nobody can foretell would cost as much as the draw itself.
  const either = new Float64Array(2);
  let [a, b, c, d] = stream as unknown as [number, number, number, number];
  for (let trial = 0; trial < into.length; trial++) {
    const drawn = (((a + b) | 0) + d) | 0;
    d = (d + 1) | 0;
    a = b ^ (b >>> 9);
    b = (c + (c << 3)) | 0;
    c = (((c << 21) | (c >>> 11)) + drawn) | 0;
    const own = ((drawn >>> 0) + 0.5) * 2 ** -32;
    either[0] = (own - follow) * stretch;
    either[1] = cells * (place[trial] as number);
    const at = either[+(own < follow)] as number;
    const cell = at | 0;
    const from = quantiles[cell] as number;
    into[trial] =
      (into[trial] as number) + shift + width * (from + (at - cell) * ((quantiles[cell + 1] as number) - from));
  }
}

/**
 * A visit whose hours may or may not reach its minimum: the labor as drawn, and what the minimum then still adds.
 * @returns what a cent of its labor comes to in the total, by least squares
 */
function addVisit(
  { shortCents, laborFactor, minimumFactor }: OpenVisit,
  sum: Float64Array,
  totals: Float64Array,
): number {
  const atLikely = Math.max(0, shortCents);
  let [labors, comes, squares, products] = [0, 0, 0, 0];
  for (let trial = 0; trial < totals.length; trial++) {
    const labor = sum[trial] as number;
    const added = Math.max(0, shortCents - labor) - atLikely;
    const total = laborFactor * labor + minimumFactor * added;
    totals[trial] = (totals[trial] as number) + total;
    labors += labor;
    comes += total;
    squares += labor * labor;
    products += labor * total;
  }
  const variance = squares - labors ** 2 / totals.length;
  return variance > 0 ? (products - (labors * comes) / totals.length) / variance : laborFactor;
}

function sampleMoments(totals: Float64Array): { mean: number; sd: number } {
  let sum = 0;
  for (const one of totals) sum += one;
  const mean = sum / totals.length;
  let squares = 0;
  for (const one of totals) squares += (one - mean) ** 2;
  return { mean, sd: Math.sqrt(squares / (totals.length - 1)) };
}
