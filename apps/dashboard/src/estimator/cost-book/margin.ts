import { type CostBook, marginPctOfMarkup, markupPctOfMargin } from '@underlath/rules/pricing';

type Sums = Pick<CostBook, 'overheadPct' | 'profitPct' | 'stacking'>;

/** Enough places that a margin typed with two comes back as it was typed. */
const places = 6;
const rounded = (value: number) => Number(value.toFixed(places));

/** What overhead and profit come to together, in percent of the cost. */
export const wholeMarkupPct = ({ overheadPct, profitPct, stacking }: Sums): number =>
  rounded(stacking === 'stacked' ? ((100 + overheadPct) * (100 + profitPct)) / 100 - 100 : overheadPct + profitPct);

/** The same as a margin: in percent of the price. */
export const wholeMarginPct = (sums: Sums): number => marginPctOfMarkup(wholeMarkupPct(sums));

/** On what share of cost and overhead the profit is a markup: added, it is stated on the cost alone. */
const scale = ({ overheadPct, stacking }: Omit<Sums, 'profitPct'>) =>
  stacking === 'stacked' ? 1 : 1 + overheadPct / 100;

/** Profit as a margin (percent of the price) of the profit the book states (percent of its base). */
export const profitMarginPct = (sums: Sums): number => marginPctOfMarkup(sums.profitPct / scale(sums));

/** The profit the book states, for a margin in percent of the price; undefined outside 0 up to below 100. */
export const profitOfMargin = (marginPct: number, sums: Omit<Sums, 'profitPct'>): number | undefined =>
  marginPct >= 0 && marginPct < 100 ? rounded(markupPctOfMargin(marginPct) * scale(sums)) : undefined;
