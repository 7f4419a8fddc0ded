import * as z from 'zod';
import { roundCents } from '../../kernel/index.ts';
import { findOperation } from '../../repairs/take-off.ts';
import { MAX_CENTS } from '../estimate/estimate-input.ts';

export const WORK_UNITS = ['each', 'sf', 'lf'] as const;
export const FEE_KINDS = ['engineer', 'permit', 'inspection', 'disposal', 'other'] as const;
/** `purchase` is a cost of the firm, `sale` is charged on the selling price and carries no overhead or profit. */
export const TAX_ON = ['purchase', 'sale', 'none'] as const;
export const STACKINGS = ['stacked', 'added'] as const;

const written = (value: unknown) => (typeof value === 'string' ? `“${value}”` : JSON.stringify(value));
/** The words of a refusal: what came, and what is allowed. */
const fits = (allowed: string) => ({
  error: ({ input }: { input?: unknown }) =>
    input === undefined ? `is missing; allowed is ${allowed}` : `came as ${written(input)}; allowed is ${allowed}`,
});

const centsFit = fits(`whole cents from 0 up to ${MAX_CENTS.toLocaleString('en-US')}`);
const notNegative = z.int(centsFit).min(0, centsFit).max(MAX_CENTS, centsFit);
const percentFit = fits('0 up to 100');
const percentage = z.number(percentFit).min(0, percentFit).max(100, percentFit);
const hoursFit = fits('hours from 0 up to 10,000');
const hours = z.number(hoursFit).min(0, hoursFit).max(10_000, hoursFit);
const crewFit = fits('whole people from 1 up to 100');
const dayFit = fits('hours from 1 up to 24');
const words = (max: number) => {
  const fit = fits(`1 to ${max} characters that are not all spaces`);
  return z.string(fit).regex(/\S/, fit).max(max, fit);
};
const oneOf = <const T extends readonly string[]>(values: T) => z.enum(values, fits(values.join(', ')));
const currency = z.literal('USD', fits('USD, the currency of the whole book'));
const yes = z.boolean(fits('true or false'));

/** Of every row. A row may repeat the currency of the book; `invented` marks a starter value nobody has replaced. */
const rowMarks = {
  currency: currency.optional(),
  invented: z.literal(true, fits('true, or nothing')).optional(),
};

export const tradeSchema = z.strictObject({
  id: words(60),
  name: words(100),
  wageCentsPerHour: notNegative,
  /** Taxes, insurance and benefits on the wage. */
  burdenPct: percentage,
  /** What the burden is made of; the parts add up to it. */
  burdenParts: z
    .array(z.strictObject({ name: words(100), pct: percentage }))
    .min(1)
    .max(20)
    .optional(),
  ...rowMarks,
});

/** What one operation costs per unit. A null rate is not known yet and is a gap when priced, never zero. */
export const costItemSchema = z.strictObject({
  operation: words(60),
  unit: oneOf(WORK_UNITS),
  trade: words(60),
  hoursPerUnit: z
    .strictObject({ low: hours, likely: hours, high: hours })
    .refine(({ low, likely, high }) => low <= likely && likely <= high, {
      error: ({ input }) => {
        const { low, likely, high } = input as { low: number; likely: number; high: number };
        return `hours came as ${low}, ${likely}, ${high}; allowed is low up to likely up to high`;
      },
    })
    .nullable(),
  materialCentsPerUnit: notNegative.nullable(),
  wastePct: percentage,
  wholeUnits: yes,
  materialTaxPct: percentage,
  /** Left out it is `purchase`. */
  taxOn: oneOf(TAX_ON).optional(),
  equipmentCentsPerUnit: notNegative,
  subcontractCentsPerUnit: notNegative,
  otherCentsPerUnit: notNegative,
  minimumCents: notNegative,
  /** A fee of this book that each unit costs beside the rest, as an engineer's letter does. */
  fee: words(60).optional(),
  ...rowMarks,
});

export const feeSchema = z.strictObject({
  id: words(60),
  name: words(100),
  kind: oneOf(FEE_KINDS).optional(),
  cents: notNegative,
  ...rowMarks,
});

/** A company's rates. Money in integer cents; each operation and unit appears once. */
export const costBookSchema = z
  .strictObject({
    currency,
    /** True while the values are the invented starter values. */
    placeholder: yes,
    notice: z.strictObject({ en: z.string(), es: z.string() }),
    trades: z.array(tradeSchema).max(100),
    items: z.array(costItemSchema).max(1000),
    fees: z.array(feeSchema).max(50),
    overheadPct: percentage,
    profitPct: percentage,
    stacking: oneOf(STACKINGS),
    /** Left out, both are those of the usual crew. */
    crewSize: z.int(crewFit).min(1, crewFit).max(100, crewFit).optional(),
    hoursPerDay: z.number(dayFit).min(1, dayFit).max(24, dayFit).optional(),
  })
  .superRefine((book, context) => {
    const refuse = (path: (string | number)[], message: string) => context.addIssue({ code: 'custom', path, message });
    once(book.trades, 'trades', 'id', ({ id }) => id, refuse);
    once(book.fees, 'fees', 'id', ({ id }) => id, refuse);
    once(book.items, 'items', 'operation', ({ operation, unit }) => `${operation} per ${unit}`, refuse);
    for (const [at, trade] of book.trades.entries()) checkBurden(trade, ['trades', at], refuse);
    for (const [at, item] of book.items.entries()) checkItem(item, book, ['items', at], refuse);
  });
export type CostBook = z.infer<typeof costBookSchema>;
export type CostItem = z.infer<typeof costItemSchema>;
export type Trade = z.infer<typeof tradeSchema>;
export type Fee = z.infer<typeof feeSchema>;

type Refuse = (path: (string | number)[], message: string) => void;

function once<T>(rows: readonly T[], part: string, field: string, keyOf: (row: T) => string, refuse: Refuse): void {
  const seen = new Set<string>();
  for (const [at, row] of rows.entries()) {
    const key = keyOf(row);
    if (seen.has(key)) refuse([part, at, field], `${key} is in the book twice; allowed is once`);
    seen.add(key);
  }
}

/** Percents are added in binary, so a sum may be off by less than a ten-thousandth of a percent. */
const samePct = (one: number, other: number): boolean => Math.abs(one - other) < 1e-4;

/** What the parts of a burden come to, in percent of the wage. */
export const burdenPctOfParts = (parts: readonly { readonly pct: number }[]): number =>
  Number(parts.reduce((sum, { pct }) => sum + pct, 0).toFixed(6));

function checkBurden({ burdenPct, burdenParts }: Trade, path: (string | number)[], refuse: Refuse): void {
  if (!burdenParts) return;
  const sum = burdenPctOfParts(burdenParts);
  if (!samePct(sum, burdenPct))
    refuse([...path, 'burdenPct'], `came as ${burdenPct}; its parts add up to ${sum}, which is what is allowed`);
  once(
    burdenParts,
    '',
    'name',
    ({ name }) => name,
    ([, at = 0]) => refuse([...path, 'burdenParts', at, 'name'], 'two parts have this name; allowed is one'),
  );
}

function checkItem(item: CostItem, book: CostBook, path: (string | number)[], refuse: Refuse): void {
  const unit = findOperation(item.operation)?.unit;
  if (unit && unit !== item.unit)
    refuse([...path, 'unit'], `came as ${written(item.unit)}; ${item.operation} is counted in ${unit}`);
  if (!book.trades.some(({ id }) => id === item.trade))
    refuse([...path, 'trade'], `came as ${written(item.trade)}; allowed is a trade of the book`);
  if (item.fee !== undefined && !book.fees.some(({ id }) => id === item.fee))
    refuse([...path, 'fee'], `came as ${written(item.fee)}; allowed is a fee of the book, or nothing`);
}

/** Who works at a place, and how long a day is. */
export interface Crew {
  readonly crewSize: number;
  readonly hoursPerDay: number;
}

/** Assumed until a book says otherwise: two people, eight hours a day (common practice, no source). */
export const USUAL_CREW: Crew = { crewSize: 2, hoursPerDay: 8 };

export const crewOf = ({ crewSize, hoursPerDay }: Pick<CostBook, 'crewSize' | 'hoursPerDay'>): Crew => ({
  crewSize: crewSize ?? USUAL_CREW.crewSize,
  hoursPerDay: hoursPerDay ?? USUAL_CREW.hoursPerDay,
});

/** Cents per hour with the burden on the wage: $30 at 40% is $42. */
export const burdenedRateCents = (trade: Pick<Trade, 'wageCentsPerHour' | 'burdenPct'>): number =>
  roundCents(trade.wageCentsPerHour * (1 + trade.burdenPct / 100));

/**
 * Whether a price by this book rests on invented starter values: the book as a whole, or a row that it uses. Without
 * `operations` every row counts.
 */
export function restsOnInvented(book: CostBook, operations?: ReadonlySet<string>): boolean {
  if (book.placeholder) return true;
  const items = book.items.filter(({ operation }) => !operations || operations.has(operation));
  const trades = new Set(items.map(({ trade }) => trade));
  const fees = new Set(items.map(({ fee }) => fee));
  return (
    items.some(({ invented }) => invented) ||
    book.trades.some(({ id, invented }) => invented && (!operations || trades.has(id))) ||
    book.fees.some(({ id, invented }) => invented && (!operations || fees.has(id)))
  );
}
