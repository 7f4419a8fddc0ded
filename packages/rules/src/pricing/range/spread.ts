import type { RangeShape } from '../estimate/estimate-input.ts';

/** A distribution on 0 to 1, told by where its likely value lies. */
export interface Spread {
  readonly mean: number;
  readonly sd: number;
  /** Quantiles at 0, 1/CELLS, 2/CELLS .. 1, and the last once more; between them it runs straight. */
  readonly quantiles: Float64Array;
}

/** Straight pieces a quantile curve is kept in: 8 kB, which the nearest cache holds. */
export const CELLS = 1024;
const STEPS = 1024;
const PARTS = 32;

/**
 * PERT-beta: the beta distribution between low and high whose mean is (low + 4 likely + high) / 6 and whose standard deviation
 * is (high - low) / 6 (published: PERT 4, 6, 12 gives 6.67 and 1.33). Its peak lies near the likely value.
 * Triangular: mean (low + likely + high) / 3, with the heavier tail (memory).
 * @param likely where the likely value lies between low (0) and high (1)
 */
export const spreadOf = (shape: RangeShape, likely: number): Spread =>
  shape === 'triangular' ? triangular(likely) : pertBeta(likely);

function triangular(likely: number): Spread {
  const quantiles = new Float64Array(CELLS + 2);
  for (let at = 0; at <= CELLS + 1; at++) {
    const share = Math.min(1, at / CELLS);
    quantiles[at] = share < likely ? Math.sqrt(share * likely) : 1 - Math.sqrt((1 - share) * (1 - likely));
  }
  return { mean: (1 + likely) / 3, sd: Math.sqrt((1 - likely + likely * likely) / 18), quantiles };
}

function pertBeta(likely: number): Spread {
  const mean = (1 + 4 * likely) / 6;
  const sd = 1 / 6;
  const weight = (mean * (1 - mean)) / sd ** 2 - 1;
  return { mean, sd, quantiles: betaQuantiles(mean * weight, (1 - mean) * weight) };
}

/** x = s^3 (10 - 15 s + 6 s^2): even steps of s lie close together where x nears 0 and 1, where a beta density may be steep. */
const smooth = (s: number): number => s * s * s * (10 - 15 * s + 6 * s * s);
const middles = Array.from({ length: STEPS }, (_, at) => (at + 0.5) / STEPS);
const logX = Float64Array.from(middles, (s) => Math.log(smooth(s)));
const logRest = Float64Array.from(middles, (s) => Math.log(smooth(1 - s)));
const logSlope = Float64Array.from(middles, (s) => 2 * Math.log(s * (1 - s)));

/** Turns the integral of a beta density around, step by step. */
function betaQuantiles(alpha: number, beta: number): Float64Array {
  const below = new Float64Array(STEPS + 1);
  const [x, rest, slope] = [logX, logRest, logSlope];
  let whole = 0;
  for (let at = 0; at < x.length; at++) {
    const log = (alpha - 1) * (x[at] as number) + (beta - 1) * (rest[at] as number) + (slope[at] as number);
    whole += Math.exp(log);
    below[at + 1] = whole;
  }
  let step = 0;
  /** Asked from small shares to large. */
  const next = (share: number): number => {
    const wanted = whole * share;
    while ((below[step + 1] as number) < wanted) step += 1;
    const from = below[step] as number;
    return smooth((step + (wanted - from) / ((below[step + 1] as number) - from)) / STEPS);
  };
  const firstMean = meanWithin(next, 0);
  const quantiles = new Float64Array(CELLS + 2);
  step = 0;
  for (let at = 1; at < CELLS; at++) quantiles[at] = next(at / CELLS);
  quantiles[0] = Math.max(0, 2 * firstMean - (quantiles[1] ?? 0));
  const end = 2 * meanWithin(next, CELLS - 1) - (quantiles[CELLS - 1] ?? 1);
  return quantiles.fill(Math.min(1, end), CELLS);
}

/**
 * Mean of a quantile curve within one of its pieces. The first and last end where they keep that mean: the curve is steep
 * there, and a straight line to the very end would make the tail too heavy.
 */
function meanWithin(quantile: (share: number) => number, cell: number): number {
  let sum = 0;
  for (let part = 0; part < PARTS; part++) sum += quantile((cell + (part + 0.5) / PARTS) / CELLS);
  return sum / PARTS;
}
