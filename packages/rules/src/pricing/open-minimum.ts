import { type Percentiles, quantileAt } from './percentiles.ts';
import { type Alike, byPlace, type OpenVisit, type VaryingLine } from './range-plan.ts';
import { openSum, takeWave, type VisitSum } from './visit-sum.ts';
import { seriesOf, wavesFor } from './waves.ts';

/** The lines of a visit at one place. */
export interface BendPlace {
  readonly location: string | undefined;
  readonly lines: readonly VaryingLine[];
  /** Mean of the bend at each percentile of the place, the other places anywhere. */
  readonly curve: Float64Array;
}

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
  readonly places: readonly BendPlace[];
  /** Its mean at each percentile of the whole work, to which every place leans. */
  readonly atWork: Float64Array;
}

/**
 * Moments of a bend, max(0, short - s), by its cosine series over the sums s can reach: the mean of each wave is the
 * characteristic function of s. Where the minimum mostly is not passed, s is the labor counted down from its highest.
 * @param own lines of the visit, as the plan sorts them
 */
export function bendOf(
  visit: OpenVisit,
  own: readonly VaryingLine[],
  alike: Pick<Alike, 'follow' | 'lean'>,
  percentiles: Percentiles,
): Bend {
  const { shortCents, laborFactor, minimumFactor } = visit;
  const reach = own.reduce((sum, line) => sum + line.widthCents, 0);
  const least = own.reduce((sum, line) => sum + line.shiftCents, 0);
  const labor = own.reduce((sum, line) => sum + line.widthCents * line.spread.mean, 0);
  const down = shortCents - least > labor;
  const straight = down ? laborFactor - minimumFactor : laborFactor;
  const places = byPlace(own.map((line) => ({ ...line, factor: straight })));
  const sum = openSum(places, percentiles.weights, (line, order) => {
    const at = quantileAt(line, percentiles.shares[order] as number);
    return (line.widthCents * (down ? 1 - at : at)) / reach;
  });
  const sd = Math.hypot(...own.map((line) => line.widthCents * line.spread.sd));
  const short = down ? least + reach - shortCents : shortCents - least;
  const found = sumWaves(sum, alike, seriesOf(short, reach, wavesFor(reach, sd)));
  const bySum = found.bySum - found.mean * (down ? reach - labor : labor);
  return {
    visit,
    lines: places.flat(),
    factor: minimumFactor,
    constant: minimumFactor * ((down ? shortCents : 0) - Math.max(0, shortCents)),
    mean: found.mean,
    variance: Math.max(0, found.squared - found.mean ** 2),
    withLabor: down ? 0 - bySum : bySum,
    places: places.map((lines, at) => ({
      location: lines[0]?.location,
      lines,
      curve: found.at.subarray(at * percentiles.weights.length, (at + 1) * percentiles.weights.length),
    })),
    atWork: found.atWork,
  };
}

/** Means of the three series, and of the bend at each percentile of each place and of the whole work. */
function sumWaves(sum: VisitSum, alike: Pick<Alike, 'follow' | 'lean'>, series: ReturnType<typeof seriesOf>) {
  const found = {
    mean: 0,
    squared: 0,
    bySum: 0,
    at: new Float64Array(sum.at.re.length),
    atWork: new Float64Array(sum.weights.length),
  };
  for (let wave = 0; wave < series.bend.length; wave++) {
    takeWave(sum, alike);
    const bend = series.bend[wave] as number;
    let whole = 0;
    for (const [order, weight] of sum.weights.entries()) {
      const re = sum.atWork.re[order] as number;
      whole += weight * re;
      found.atWork[order] = (found.atWork[order] as number) + bend * re;
    }
    found.mean += bend * whole;
    found.squared += (series.squared[wave] as number) * whole;
    found.bySum += (series.bySum[wave] as number) * whole;
    addPlaces(found.at, bend, sum);
  }
  return found;
}

function addPlaces(found: Float64Array, bend: number, { weights, at, others }: VisitSum): void {
  for (let place = 0; place < others.re.length; place++) {
    const re = bend * (others.re[place] as number);
    const im = bend * (others.im[place] as number);
    for (let index = place * weights.length; index < (place + 1) * weights.length; index++)
      found[index] = (found[index] as number) + re * (at.re[index] as number) - im * (at.im[index] as number);
  }
}
