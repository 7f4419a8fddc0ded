import { roundCents, type Text, text } from '../../kernel/index.ts';
import type { WorkLine } from '../../repairs/drawn.ts';
import type { OverrideMark } from '../../repairs/overrides.ts';
import { burdenedRateCents, type CostBook, type CostItem } from '../book/cost-book.ts';
import type { EstimateLine } from './estimate-input.ts';
import { type LineRates, marksOf, ratesOf, withTypedRates } from './line-override.ts';
import { unitText } from './unit-words.ts';

/** Something the cost book does not know; it is asked for, never taken as zero. */
export interface PriceGap {
  readonly operation: string;
  readonly unit: string;
  readonly kind: 'no-item' | 'no-trade' | 'no-hours' | 'no-material-rate' | 'no-fee';
  readonly message: Text;
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

/** The line to price that a cost book makes of one line of work, or what the book lacks for it. */
export function rateWork(work: WorkLine, book: CostBook): EstimateLine | PriceGap[] {
  // What is left out needs no rate and brings nobody to the site.
  if (work.quantity === 0) return bareLine(work.title.en, 0, work.unit);
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
    name: work.title.en,
    quantity: work.quantity,
    unit: work.unit,
    hoursPerUnit: item.hoursPerUnit,
    rateCents: burdenedRateCents(trade),
    materialCentsPerUnit: item.materialCentsPerUnit,
    ...sumsOf(item, work.quantity, fee.cents),
    visit: trade.id,
    ...(work.place !== undefined && { location: work.place }),
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
export const bareLine = (name: string, quantity: number, unit: string): EstimateLine => ({
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

/** The rates that a line of work is counted with, null where the book does not have the work, and those of them that were typed. */
export function ratesOfWork(
  work: WorkLine,
  book: CostBook,
): { readonly rates: LineRates | null; readonly typed: readonly OverrideMark[] } {
  const item = itemFor(work, book);
  if (!item) return { rates: null, typed: [] };
  const feeCents = book.fees.find(({ id }) => id === item.fee)?.cents ?? 0;
  const counted = withTypedRates(item, work.typed);
  return {
    rates: ratesOf(counted, counted.fee === undefined ? 0 : feeCents),
    typed: marksOf(ratesOf(item, feeCents), work.typed),
  };
}
