import { type Locale, roundCents, say, type Text, text } from '../kernel/index.ts';
import { burdenedRateCents, type CostBook, type CostItem } from './cost-book.ts';
import { type Estimate, evaluateEstimate, type PricedLine } from './estimate.ts';
import type { EstimateInput, EstimateLine, PercentPart } from './estimate-input.ts';
import {
  type LineRates,
  marksOf,
  markWords,
  type OverrideMark,
  ratesOf,
  type TypedRates,
  withTypedRates,
} from './line-override.ts';
import { unitText } from './unit-words.ts';

/** One amount of work to price, as a take-off or a united scope gives it. */
export interface WorkLine {
  readonly operation: string;
  readonly title: Text;
  readonly quantity: number;
  readonly unit: string;
  readonly how: Text;
  readonly place?: string;
  readonly for?: readonly string[];
  /** Rates typed over the book's; with one the book lacks, there is no gap. */
  readonly typed?: TypedRates;
  /** A quantity typed over the measured one, as it is shown. */
  readonly quantityMark?: OverrideMark;
  /** Work left out: its price is given back. */
  readonly credit?: boolean;
}

/** Something the cost book does not know; it is asked for, never taken as zero. */
export interface PriceGap {
  readonly operation: string;
  readonly unit: string;
  readonly kind: 'no-item' | 'no-trade' | 'no-hours' | 'no-material-rate' | 'no-fee';
  readonly message: Text;
}

/** A priced line with the work it prices; a fee has no operation. */
export interface ScopePriceLine extends PricedLine {
  readonly operation: string | null;
  readonly title: Text;
  readonly quantity: number;
  readonly unit: string;
  readonly for: readonly string[];
  readonly place: string | null;
  /** Null for a fee, which has no unit rates. */
  readonly rates: LineRates | null;
  /** What of it was set by hand. */
  readonly overrides: readonly OverrideMark[];
}

export type ScopePrice =
  | {
      readonly complete: true;
      readonly lines: readonly ScopePriceLine[];
      readonly estimate: Estimate;
      readonly gaps: readonly [];
    }
  | {
      readonly complete: false;
      readonly lines: readonly [];
      readonly estimate: null;
      readonly gaps: readonly PriceGap[];
    };

export interface PriceScopeOptions {
  /** Ids of the cost book's fees to add. */
  readonly fees?: readonly string[];
  readonly percentOf?: readonly PercentPart[];
  /** Language of the line names in the estimate; the titles stay in both. */
  readonly locale?: Locale;
}

const GAP_WORDS: Record<PriceGap['kind'], Text> = {
  'no-item': text('is not in the cost book', 'no está en el libro de costos'),
  'no-trade': text('names a trade that is not in the cost book', 'nombra un oficio que no está en el libro de costos'),
  'no-hours': text('has no hours in the cost book', 'no tiene horas en el libro de costos'),
  'no-material-rate': text(
    'has no material price in the cost book',
    'no tiene precio de material en el libro de costos',
  ),
  'no-fee': text('names a fee that is not in the cost book', 'nombra una tarifa que no está en el libro de costos'),
};

function gapOf(work: WorkLine, kind: PriceGap['kind']): PriceGap {
  const words = GAP_WORDS[kind];
  return {
    operation: work.operation,
    unit: work.unit,
    kind,
    message: text(
      `${work.title.en} (per ${work.unit}) ${words.en}.`,
      `${work.title.es} (por ${unitText(work.unit, 1).es}) ${words.es}.`,
    ),
  };
}

const itemFor = (work: WorkLine, book: CostBook): CostItem | undefined =>
  book.items.find((one) => one.operation === work.operation && one.unit === work.unit);

/** The estimate line of one amount of work, or what the cost book lacks for it. */
function lineOf(work: WorkLine, book: CostBook, locale: Locale): EstimateLine | PriceGap[] {
  // What is left out needs no rate and brings nobody to the site.
  if (work.quantity === 0) return bare(say(work.title, locale), 0, work.unit);
  const known = itemFor(work, book);
  if (!known) return [gapOf(work, 'no-item')];
  const item = withTypedRates(known, work.typed);
  const trade = book.trades.find((one) => one.id === item.trade);
  const fee = item.fee === undefined ? { cents: 0 } : book.fees.find(({ id }) => id === item.fee);
  const gaps: PriceGap[] = [
    ...(fee ? [] : [gapOf(work, 'no-fee')]),
    ...(trade ? [] : [gapOf(work, 'no-trade')]),
    ...(item.hoursPerUnit ? [] : [gapOf(work, 'no-hours')]),
    ...(item.materialCentsPerUnit === null ? [gapOf(work, 'no-material-rate')] : []),
  ];
  if (!fee || !trade || !item.hoursPerUnit || item.materialCentsPerUnit === null) return gaps;
  return {
    name: say(work.title, locale),
    quantity: work.quantity,
    unit: work.unit,
    hoursPerUnit: item.hoursPerUnit,
    rateCents: burdenedRateCents(trade),
    materialCentsPerUnit: item.materialCentsPerUnit,
    ...sumsOf(item, work.quantity, fee.cents),
    visit: trade.id,
    ...(work.place !== undefined && { location: work.place }),
    ...(work.credit && { credit: true }),
  };
}

const sumsOf = (item: CostItem, quantity: number, feeCents: number) => ({
  wastePct: item.wastePct,
  wholeUnits: item.wholeUnits,
  materialTaxPct: item.taxOn === 'none' ? 0 : item.materialTaxPct,
  ...(item.taxOn === 'sale' && { taxOn: item.taxOn }),
  equipmentCents: roundCents(quantity * item.equipmentCentsPerUnit),
  subcontractCents: roundCents(quantity * item.subcontractCentsPerUnit),
  otherCents: roundCents(quantity * (item.otherCentsPerUnit + feeCents)),
  ...(item.minimumCents > 0 && { minimumCents: item.minimumCents }),
});

/** A line without hours, material or anything else; where it stands it costs nothing. */
const bare = (name: string, quantity: number, unit: string): EstimateLine => ({
  name,
  quantity,
  unit,
  hoursPerUnit: { low: 0, likely: 0, high: 0 },
  rateCents: 0,
  materialCentsPerUnit: 0,
  wastePct: 0,
  materialTaxPct: 0,
  equipmentCents: 0,
  subcontractCents: 0,
  otherCents: 0,
});

function feeLines(book: CostBook, ids: readonly string[]): EstimateLine[] {
  return ids.map((id) => {
    const fee = book.fees.find((one) => one.id === id);
    if (!fee) throw new RangeError(`The cost book has no fee "${id}"`);
    return { ...bare(fee.name, 1, 'each'), otherCents: fee.cents };
  });
}

/** The estimate that a cost book makes of some work, or what it lacks for it. Throws RangeError for a fee it does not have. */
export function estimateInputOf(
  work: readonly WorkLine[],
  book: CostBook,
  options: PriceScopeOptions = {},
): { readonly input: EstimateInput | null; readonly gaps: readonly PriceGap[] } {
  const locale = options.locale ?? 'en';
  const lines: EstimateLine[] = [];
  const gaps: PriceGap[] = [];
  for (const one of work) {
    const line = lineOf(one, book, locale);
    if (Array.isArray(line)) gaps.push(...line);
    else lines.push(line);
  }
  if (gaps.length > 0) return { input: null, gaps };
  const input = {
    lines: [...lines, ...feeLines(book, options.fees ?? [])],
    overheadPct: book.overheadPct,
    profitPct: book.profitPct,
    stacking: book.stacking,
    ...(options.percentOf && { percentOf: [...options.percentOf] }),
  };
  return { input, gaps };
}

/**
 * Prices work by a cost book, as one visit: a trade's minimum is met once by all its lines together. When any rate is missing there is no price, only the gaps. Each line's steps start with
 * where its quantity came from. Throws RangeError for a fee the book does not have.
 */
export function priceScope(work: readonly WorkLine[], book: CostBook, options: PriceScopeOptions = {}): ScopePrice {
  const { input, gaps } = estimateInputOf(work, book, options);
  if (!input) return { complete: false, lines: [], estimate: null, gaps };
  const estimate = evaluateEstimate(input);
  const priced = estimate.lines.map((line, at) => describe(line, work[at], book));
  return { complete: true, lines: priced, estimate: { ...estimate, lines: priced }, gaps: [] };
}

/** Words typed in English alone: where Spanish is read, they are marked as English and not passed off as Spanish. */
const inEnglish = (words: string): Text => text(words, '');

function describe(line: PricedLine, work: WorkLine | undefined, book: CostBook): ScopePriceLine {
  if (!work)
    return {
      ...line,
      operation: null,
      title: text(line.name, line.name),
      quantity: 1,
      unit: 'each',
      for: [],
      place: null,
      rates: null,
      overrides: [],
    };
  const { operation, title, quantity, unit, typed, quantityMark } = work;
  const item = itemFor(work, book);
  const feeCents = book.fees.find(({ id }) => id === item?.fee)?.cents ?? 0;
  const rateMarks = item ? marksOf(ratesOf(item, feeCents), typed) : [];
  const counted = item && withTypedRates(item, typed);
  return {
    ...line,
    operation,
    title,
    quantity,
    unit,
    for: work.for ?? [],
    place: work.place ?? null,
    rates: counted ? ratesOf(counted, counted.fee === undefined ? 0 : feeCents) : null,
    overrides: [...(quantityMark ? [quantityMark] : []), ...rateMarks],
    steps: [work.how, ...rateMarks.flatMap((mark) => [markWords(mark), inEnglish(mark.why)]), ...line.steps],
  };
}
