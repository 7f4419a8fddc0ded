import { allocate, roundCents } from '../kernel/index.ts';
import type { PricedScope, PriceLine } from './document/priced-scope.ts';

/**
 * Each finding's part of the total. A line that several need is split in proportion to what that work would cost for
 * each alone; the parts add up to the total.
 */
export function sharesOf(
  price: PricedScope,
  findingIds: readonly string[],
  alone: ReadonlyMap<string, PricedScope>,
): number[] {
  const aloneCents = (id: string, { operation }: PriceLine): number =>
    (alone.get(id)?.lines ?? [])
      .filter((line) => line.operation === operation)
      .reduce((sum, line) => sum + Math.max(0, line.totalCents), 0);
  const part = (id: string, line: PriceLine): number => {
    const whole = line.findingIds.reduce((sum, one) => sum + aloneCents(one, line), 0);
    return whole > 0 ? aloneCents(id, line) / whole : 1 / line.findingIds.length;
  };
  const weights = findingIds.map((id) =>
    price.lines
      .filter((line) => line.findingIds.includes(id))
      .reduce((sum, line) => sum + line.totalCents * part(id, line), 0),
  );
  return allocateSigned(price.totalCents, weights);
}

/** In proportion to weights of which some may be below nothing, as those of a finding that is mostly credits. */
function allocateSigned(totalCents: number, weights: readonly number[]): number[] {
  const [up, down] = [weights.map((weight) => Math.max(0, weight)), weights.map((weight) => Math.max(0, -weight))];
  const [upSum, downSum] = [up, down].map((part) => part.reduce((sum, weight) => sum + weight, 0)) as [number, number];
  if (upSum === downSum) return allocate(totalCents, up);
  const upCents = roundCents((totalCents * upSum) / (upSum - downSum));
  const [gains, losses] = [allocate(upCents, up), allocate(totalCents - upCents, down)];
  return weights.map((_weight, at) => (gains[at] ?? 0) + (losses[at] ?? 0));
}
