import { type Alike, byPlace, type VaryingLine } from './range-plan.ts';
import { CELLS } from './spread.ts';

export interface Driver {
  readonly name: string;
  readonly location?: string;
  /** Share of the variance of the total, what moves together with it included. */
  readonly share: number;
}

export interface Moments {
  readonly mean: number;
  readonly variance: number;
  /** Who makes the variance: shares that add up to 1, largest first; nothing where nothing varies. */
  readonly drivers: readonly Driver[];
}

const meanOf = ({ shiftCents, widthCents, spread, factor }: VaryingLine): number =>
  factor * (shiftCents + widthCents * spread.mean);
const sdOf = ({ widthCents, spread, factor }: VaryingLine): number => factor * widthCents * spread.sd;

/** Mean and variance, in closed form, of how far the total lies from the printed one, each line reaching into it by its factor. */
export function momentsOf(lines: readonly VaryingLine[], alike: Alike): Moments {
  const parts = partsOf(lines, alike);
  const variance = parts.reduce((sum, { covariance }) => sum + covariance, 0);
  return {
    mean: lines.reduce((sum, line) => sum + meanOf(line), 0),
    variance,
    drivers: variance > 0 ? driversOf(parts, variance) : [],
  };
}

const driversOf = (parts: readonly VariancePart[], variance: number): Driver[] =>
  parts
    .map(({ line: { name, location }, covariance }) => ({
      name,
      ...(location !== undefined && { location }),
      share: covariance / variance,
    }))
    .sort((one, other) => other.share - one.share);

/** A line and its covariance with the total: its part of the variance. */
interface VariancePart {
  readonly line: VaryingLine;
  readonly covariance: number;
}

/**
 * The parts of the variance. The covariance of two lines is the correlation times that of lines which always fall at the
 * same percentile; for like shapes that is correlation x sd x sd, so var(sum) = sum of var + 2 x correlation x sum of sd x sd
 * (published: R. Walker, correlation function). Within a place the correlation is one, across places the smaller one.
 */
function partsOf(
  lines: readonly VaryingLine[],
  { correlation, acrossPlaces }: Pick<Alike, 'correlation' | 'acrossPlaces'>,
): VariancePart[] {
  const work = new Float64Array(CELLS + 1);
  const places = byPlace(lines).map((group) => {
    const place = new Float64Array(CELLS + 1);
    const scales = group.map((line) => scaleOf(line));
    for (const [at, line] of group.entries()) addCurve(place, line.spread.quantiles, scales[at] as number);
    addCurve(work, place, 1);
    return { group, scales, weights: integralWeights(place) };
  });
  const workWeights = integralWeights(work);
  return places.flatMap(({ group, scales, weights }) =>
    group.map((line, at) => {
      const scale = scales[at] as number;
      const withPlace = scale * product(line.spread.quantiles, weights);
      const withWork = places.length > 1 ? scale * product(line.spread.quantiles, workWeights) : withPlace;
      return {
        line,
        covariance:
          (1 - correlation) * sdOf(line) ** 2 + (correlation - acrossPlaces) * withPlace + acrossPlaces * withWork,
      };
    }),
  );
}

/** What a line's quantiles are multiplied by so that their deviation is that of the formula: like shapes then correlate by exactly 1. */
function scaleOf(line: VaryingLine): number {
  const { quantiles } = line.spread;
  let [sum, squares, neighbors] = [0, 0, 0];
  let before = quantiles[0] as number;
  for (let at = 1; at <= CELLS; at++) {
    const here = quantiles[at] as number;
    sum += before + here;
    squares += before * before + here * here;
    neighbors += before * here;
    before = here;
  }
  const mean = sum / (2 * CELLS);
  return sdOf(line) / Math.sqrt((squares + neighbors) / (3 * CELLS) - mean * mean);
}

function addCurve(sum: Float64Array, curve: Float64Array, scale: number): void {
  for (let at = 0; at <= CELLS; at++) sum[at] = (sum[at] as number) + scale * (curve[at] as number);
}

/**
 * What the values of another curve are multiplied by to get its covariance with this one over 0 to 1: the integral of the
 * product of two curves of straight pieces, exactly. This curve is taken around its mean, so that the other's mean plays no part.
 */
function integralWeights(curve: Float64Array): Float64Array {
  let sum = ((curve[0] as number) + (curve[CELLS] as number)) / 2;
  for (let at = 1; at < CELLS; at++) sum += curve[at] as number;
  const mean = sum / CELLS;
  const weights = new Float64Array(CELLS + 1);
  for (let at = 1; at <= CELLS; at++) {
    const [a, b] = [(curve[at - 1] as number) - mean, (curve[at] as number) - mean];
    weights[at - 1] = (weights[at - 1] as number) + (2 * a + b) / (6 * CELLS);
    weights[at] = (a + 2 * b) / (6 * CELLS);
  }
  return weights;
}

function product(curve: Float64Array, weights: Float64Array): number {
  let sum = 0;
  for (let at = 0; at <= CELLS; at++) sum += (curve[at] as number) * (weights[at] as number);
  return sum;
}
