import * as z from 'zod';
import { cents, currency, id, text } from '../../schemas/values.ts';
import { manualKind, overrideMark } from './estimate-content.ts';

export const priceLine = z.object({
  name: z.string(),
  operation: z.string(),
  title: text,
  findingIds: z.array(id),
  quantity: z.number(),
  unit: z.string(),
  hours: z.number(),
  laborCents: cents,
  materialCents: cents,
  taxCents: cents,
  equipmentCents: cents,
  subcontractCents: cents,
  otherCents: cents,
  totalCents: cents,
  /** How the line came about, one step a sentence. */
  steps: z.array(text),
  /** Of a line typed by hand; absent elsewhere, and in what was sent before this was kept. */
  kind: manualKind.optional(),
  /** What of it was set by hand instead of measured or taken from the book; absent when nothing was. */
  overrides: z.array(overrideMark).optional(),
  /** What a unit takes and costs as it is counted, hours the likely ones. */
  rates: z
    .object({
      hoursPerUnit: z.number().nullable(),
      materialCentsPerUnit: cents.nullable(),
      equipmentCentsPerUnit: cents.nullable(),
      subcontractCentsPerUnit: cents.nullable(),
      /** With the fee of the item. */
      otherCentsPerUnit: z.int().nullable(),
    })
    .optional(),
});

/** A rate the book lacks: shown as a gap, never counted as zero. */
export const priceGap = z.object({
  operation: z.string(),
  title: text,
  unit: z.string(),
  findingIds: z.array(id),
  /** How much of it is to be done, all findings together. */
  quantity: z.number().optional(),
  /** What the book lacks: hours and material can be typed over the line, the rest belongs in the book. */
  lacks: z.array(z.enum(['item', 'trade', 'fee', 'hours', 'material'])).optional(),
});

export const pricedScope = z.object({
  currency,
  costBookVersion: z.int(),
  placeholder: z.boolean(),
  lines: z.array(priceLine),
  gaps: z.array(priceGap),
  subtotalCents: cents,
  overheadPct: z.number(),
  overheadCents: cents,
  profitPct: z.number(),
  profitCents: cents,
  stacking: z.enum(['stacked', 'added']),
  totalCents: cents,
  hours: z.number(),
});

export type PriceLine = z.infer<typeof priceLine>;
export type PricedScope = z.infer<typeof pricedScope>;
