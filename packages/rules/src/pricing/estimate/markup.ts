import { roundCents } from '../../kernel/index.ts';

const assertBelow = (name: string, pct: number, belowPct: number): void => {
  if (!(pct >= 0 && pct < belowPct))
    throw new RangeError(`${name} came as ${pct}%; allowed is 0 up to below ${belowPct}%`);
};

/**
 * The markup (percent of cost) that leaves a margin (percent of price, 0 up to below 100): 25% margin is 33.33% markup.
 * Throws RangeError outside. Source: MARKUP_SOURCE.
 */
export function markupPctOfMargin(marginPct: number): number {
  assertBelow('Margin', marginPct, 100);
  return (100 * marginPct) / (100 - marginPct);
}

/** The margin (percent of price) that a markup (percent of cost, 0 or more) leaves. Throws RangeError below 0. */
export function marginPctOfMarkup(markupPct: number): number {
  assertBelow('Markup', markupPct, Number.POSITIVE_INFINITY);
  return (100 * markupPct) / (100 + markupPct);
}

/** Price in cents of a cost in cents with a markup in percent of the cost, rounded once. */
export function priceAtMarkup(costCents: number, markupPct: number): number {
  assertBelow('Markup', markupPct, Number.POSITIVE_INFINITY);
  return roundCents(costCents * (1 + markupPct / 100));
}

/** Price in cents of a cost in cents that leaves a margin in percent of the price (below 100), rounded once. */
export function priceAtMargin(costCents: number, marginPct: number): number {
  assertBelow('Margin', marginPct, 100);
  return roundCents((costCents * 100) / (100 - marginPct));
}

/**
 * Markup in percent that carries a year's indirect costs and planned net profit on its direct costs, all in cents: 300,000
 * on 600,000 is 50%. Direct cost above 0, the rest 0 or more, or RangeError. Source: MARKUP_SOURCE.
 */
export function requiredMarkupPct(directCents: number, indirectAndProfitCents: number): number {
  if (!(directCents > 0)) throw new RangeError(`Direct cost came as ${directCents} cents; allowed is above 0`);
  if (!(indirectAndProfitCents >= 0))
    throw new RangeError(`Indirect cost came as ${indirectAndProfitCents} cents; allowed is 0 or more`);
  return (100 * indirectAndProfitCents) / directCents;
}

/** Burden in percent of direct pay from a year's indirect labor cost, both in cents. Source: BURDEN_SOURCE. */
export const burdenPctOf = requiredMarkupPct;
