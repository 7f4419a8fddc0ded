/**
 * The standard normal variable below which a share `p` lies, by Newton's method on the series of the normal distribution.
 * `p` from 0.0001 to 0.9999: the series loses digits farther out. Right to 1e-11 there.
 * Source: Abramowitz and Stegun, Handbook of Mathematical Functions, 26.2.11 (second-hand).
 * @throws RangeError for a share outside
 */
export function findNormalQuantile(p: number): number {
  if (!(p >= 0.0001 && p <= 0.9999)) throw new RangeError(`a share from 0.0001 to 0.9999, not ${p}`);
  let z = 0;
  // Each step squares the error, so the step after one this small changes nothing.
  for (let step = 1; Math.abs(step) > 1e-8; ) {
    const density = Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI);
    step = (0.5 + density * sumOddSeries(z) - p) / density;
    z -= Math.max(-1, Math.min(1, step));
  }
  return z;
}

/** z + z³/3 + z⁵/(3·5) + z⁷/(3·5·7) + …, until a term changes nothing. */
function sumOddSeries(z: number): number {
  let sum = 0;
  for (let term = z, odd = 1; sum + term !== sum; odd += 2, term *= (z * z) / odd) sum += term;
  return sum;
}
