import { atMost, type Source } from '../../kernel/index.ts';
import { firstPassing, lnChoose, sumFalling } from './counting.ts';

export const EXACT_SOURCE: Source = {
  id: 'nist-7.2.4.1-exact',
  title: 'NIST/SEMATECH e-Handbook of Statistical Methods, exact interval of a proportion',
  edition: 'as read',
  section: '7.2.4.1, exact intervals',
  basis: 'published',
};
export const ZERO_BAD_SOURCE: Source = {
  id: 'zero-bad',
  title: 'Upper bound when none of n is bad (Jovanovic and Levy 1997)',
  edition: 'as quoted',
  section: '1 - (1 - C)^(1/n)',
  basis: 'second-hand',
};
export const RANDOM_SAMPLE_SOURCE: Source = {
  id: 'random-sample',
  title: 'A sample counts only when it is spread over floors and crews',
  edition: 'trade habit',
  section: 'clustered workmanship',
  basis: 'common-practice',
};

/** Halvings of the range 0..1: the bound is then as fine as a double can hold it. */
const HALVINGS = 60;

/** Chance 0..1 of at most `bad` bad parts among n when a share 0..1 of all is bad. */
export function binomialTail(bad: number, n: number, share: number): number {
  if (share <= 0 || bad >= n) return 1;
  if (share >= 1) return 0;
  const odds = share / (1 - share);
  const termAt = (k: number) => Math.exp(lnChoose(n, k) + k * Math.log(share) + (n - k) * Math.log1p(-share));
  // Summed away from the middle, where terms fall: nothing is lost to a first term too small for a double.
  if (bad <= n * share)
    return Math.min(
      1,
      sumFalling(termAt(bad), (step) => (bad - step) / (n - bad + step + 1) / odds),
    );
  return Math.max(0, 1 - sumFalling(termAt(bad + 1), (step) => ((n - bad - 1 - step) / (bad + step + 2)) * odds));
}

/** Share 0..1 above which so few bad parts (0..n) show up with a chance below `risk` (0..1). */
export function upperShare(bad: number, n: number, risk: number): number {
  if (bad >= n) return 1;
  let [low, high] = [bad / n, 1];
  for (let step = 0; step < HALVINGS; step++) {
    const middle = (low + high) / 2;
    if (binomialTail(bad, n, middle) > risk) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** Exact two-sided interval of a share: half of what the confidence (percent, 50 to 99.9) leaves lies on each side. */
export function exactInterval(bad: number, n: number, confidencePct: number): { low: number; high: number } {
  const half = riskOf(confidencePct) / 2;
  return { low: 1 - upperShare(n - bad, n, half), high: upperShare(bad, n, half) };
}

/** The chance that is left, 0..1. */
export const riskOf = (confidencePct: number): number => (100 - confidencePct) / 100;

/** Share 0..1 that may be bad although none of n is, one-sided. */
export const zeroBadUpper = (n: number, confidencePct: number): number =>
  -Math.expm1(Math.log(riskOf(confidencePct)) / n);

/** Parts to look at in all, finding no more bad ones, until a share above `tolerable` (0..1) is ruled out at that risk. */
export function inspectionsNeeded(bad: number, tolerable: number, risk: number): number {
  const enough = (n: number) => atMost(binomialTail(bad, n, tolerable), risk);
  let most = bad + 1;
  while (!enough(most)) most *= 2;
  return firstPassing(bad, most, enough);
}
