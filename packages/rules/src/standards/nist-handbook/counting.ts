/** Below this the product itself is exact in a double. */
const EXACT_BELOW = 19;

/** Natural logarithm of n!, for whole n of 0 or more, to about one part in 1e15: Stirling's series from 19 on. */
export function lnFactorial(n: number): number {
  if (n < EXACT_BELOW) {
    let product = 1;
    for (let factor = 2; factor <= n; factor++) product *= factor;
    return Math.log(product);
  }
  const m = n * n;
  const series = (1 / 12 - (1 / 360 - (1 / 1260 - 1 / (1680 * m)) / m) / m) / n;
  return (n + 0.5) * Math.log(n) - n + 0.5 * Math.log(2 * Math.PI) + series;
}

/** Natural logarithm of the number of ways to choose k of n, 0 <= k <= n. */
export const lnChoose = (n: number, k: number): number => lnFactorial(n) - lnFactorial(k) - lnFactorial(n - k);

/** Terms this small beside the sum no longer change it. */
const NEGLIGIBLE = 1e-18;

/** Sum of a term and those after it, each the one before times `next(step)`, which falls from step to step and ends at 0. */
export function sumFalling(first: number, next: (step: number) => number): number {
  let sum = first;
  let term = first;
  for (let step = 0; term > sum * NEGLIGIBLE; step++) {
    term *= next(step);
    sum += term;
  }
  return sum;
}

/** The smallest whole number from `from` to `to` that passes, where all after one that passes do too; `to` always passes. */
export function firstPassing(from: number, to: number, passes: (n: number) => boolean): number {
  let low = from;
  let high = to;
  while (low < high) {
    const middle = Math.floor((low + high) / 2);
    if (passes(middle)) high = middle;
    else low = middle + 1;
  }
  return low;
}
