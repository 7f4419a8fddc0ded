import * as z from 'zod';
import { roundCents } from '../kernel/index.ts';

const notNegative = z.int().min(0);
const percentage = z.number().min(0).max(100);
const hours = z.number().min(0).max(10_000);

export const tradeSchema = z.strictObject({
  id: z.string().min(1).max(60),
  name: z.string().min(1).max(100),
  wageCentsPerHour: notNegative,
  /** Taxes, insurance and benefits on the wage. */
  burdenPct: percentage,
});

/** What one operation costs per unit. A null rate is not known yet and is a gap when priced, never zero. */
export const costItemSchema = z.strictObject({
  operation: z.string().min(1).max(60),
  unit: z.enum(['each', 'sf', 'lf']),
  trade: z.string().min(1).max(60),
  hoursPerUnit: z
    .strictObject({ low: hours, likely: hours, high: hours })
    .refine(({ low, likely, high }) => low <= likely && likely <= high, {
      error: 'hoursPerUnit: allowed is low up to likely up to high.',
    })
    .nullable(),
  materialCentsPerUnit: notNegative.nullable(),
  wastePct: percentage,
  wholeUnits: z.boolean(),
  materialTaxPct: percentage,
  equipmentCentsPerUnit: notNegative,
  subcontractCentsPerUnit: notNegative,
  otherCentsPerUnit: notNegative,
  minimumCents: notNegative,
});

export const feeSchema = z.strictObject({
  id: z.string().min(1).max(60),
  name: z.string().min(1).max(100),
  cents: notNegative,
});

/** A company's rates. Money in integer cents; each operation and unit appears once. */
export const costBookSchema = z
  .strictObject({
    currency: z.literal('USD'),
    /** True while the values are the invented starter values. */
    placeholder: z.boolean(),
    notice: z.strictObject({ en: z.string(), es: z.string() }),
    trades: z.array(tradeSchema).max(100),
    items: z.array(costItemSchema).max(1000),
    fees: z.array(feeSchema).max(50),
    overheadPct: percentage,
    profitPct: percentage,
    stacking: z.enum(['stacked', 'added']),
  })
  .superRefine((book, context) => {
    const seen = new Set<string>();
    for (const [at, item] of book.items.entries()) {
      const key = `${item.operation} per ${item.unit}`;
      if (seen.has(key))
        context.addIssue({ code: 'custom', path: ['items', at], message: `${key} is in the book twice.` });
      seen.add(key);
    }
  });
export type CostBook = z.infer<typeof costBookSchema>;
export type CostItem = z.infer<typeof costItemSchema>;
export type Trade = z.infer<typeof tradeSchema>;

/** Cents per hour with the burden on the wage: $30 at 40 % is $42. */
export const burdenedRateCents = (trade: Trade): number =>
  roundCents(trade.wageCentsPerHour * (1 + trade.burdenPct / 100));
