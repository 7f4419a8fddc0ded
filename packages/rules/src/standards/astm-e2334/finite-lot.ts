import { atMost, type Source } from '../../kernel/index.ts';
import { firstPassing, lnChoose, sumFalling } from '../nist-handbook/counting.ts';

export const FINITE_LOT_SOURCE: Source = {
  id: 'astm-e2334',
  title: 'ASTM E2334, upper bound on bad items of a finite lot when none is found',
  edition: 'as described in Standardization News, Jul/Aug 2010',
  section: 'case 2',
  basis: 'second-hand',
};
export const FINITE_LOT_SOME_BAD_SOURCE: Source = {
  id: 'finite-lot-some-bad',
  title: 'The same bound with bad items found, by the hypergeometric distribution',
  edition: 'as quoted from a Sandia procedure',
  section: 'sampling without replacement',
  basis: 'second-hand',
};

/** Chance 0..1 of at most `bad` bad parts among `opened` when `badInLot` of `total` are bad. */
export function hypergeometricTail(bad: number, total: number, badInLot: number, opened: number): number {
  const good = total - badInLot;
  const [least, most] = [Math.max(0, opened - good), Math.min(badInLot, opened)];
  if (bad >= most) return 1;
  if (bad < least) return 0;
  const termAt = (k: number) => Math.exp(lnChoose(badInLot, k) + lnChoose(good, opened - k) - lnChoose(total, opened));
  // From k to k + 1 the chance changes by this factor.
  const up = (k: number) => ((badInLot - k) * (opened - k)) / ((k + 1) * (good - opened + k + 1));
  // Summed away from the middle, where terms fall.
  if (bad <= (opened * badInLot) / total)
    return Math.min(
      1,
      sumFalling(termAt(bad), (step) => (bad - step > least ? 1 / up(bad - step - 1) : 0)),
    );
  return Math.max(0, 1 - sumFalling(termAt(bad + 1), (step) => up(bad + 1 + step)));
}

/** Chance 0..1 to see so few bad ones by luck although one more than tolerated is bad; 0 when no more can be bad. */
export const lotRisk = (bad: number, total: number, opened: number, tolerableBad: number): number =>
  tolerableBad >= total ? 0 : hypergeometricTail(bad, total, tolerableBad + 1, opened);

/** Most bad parts the lot may hold, those found included, when `bad` of `opened` are: at risk 0..1. */
export function upperBad(bad: number, total: number, opened: number, risk: number): number {
  const most = total - opened + bad;
  const ruledOut = (badInLot: number) => atMost(hypergeometricTail(bad, total, badInLot, opened), risk);
  return firstPassing(bad, most + 1, (badInLot) => badInLot > most || ruledOut(badInLot)) - 1;
}

/** Parts to open in all, finding no more bad ones, until more than `tolerableBad` are ruled out; all of them when too many are found. */
export function openingsNeeded(bad: number, total: number, tolerableBad: number, risk: number): number {
  if (bad > tolerableBad) return total;
  return firstPassing(bad, total, (opened) => atMost(lotRisk(bad, total, opened, tolerableBad), risk));
}
