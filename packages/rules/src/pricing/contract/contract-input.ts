import * as z from 'zod';
import { FIRST_YEAR, isInYears, LAST_YEAR } from '../../kernel/dates.ts';

/** The most days that a contract and all its changes may add up to, whichever way each goes. */
export const MAX_CONTRACT_DAYS = 100_000;

const cents = z.int().min(-2_000_000_000).max(2_000_000_000);
const notNegative = z.int().min(0).max(2_000_000_000);
const day = z.iso.date().refine(isInYears, `allowed is a day of the years ${FIRST_YEAR} to ${LAST_YEAR}`);
const days = z.int().min(-10_000).max(10_000);

const changeEvent = z.strictObject({
  kind: z.literal('change'),
  state: z.enum(['approved', 'pending', 'declined', 'replaced']),
  cents,
  days,
  /** The day it was decided, or sent while it is pending. */
  on: day,
});
const allowanceEvent = z.strictObject({
  kind: z.literal('allowance'),
  allowedCents: notNegative,
  spentCents: notNegative,
  /** Taken on what is spent over the allowance; on what is saved only where the contract gives it back. */
  overheadProfitPct: z.number().min(0).max(100),
  on: day,
});
const paymentEvent = z.strictObject({ kind: z.literal('payment'), cents: notNegative, on: day });
/** Work completed and stored since the one before. */
const completedEvent = z.strictObject({ kind: z.literal('completed'), cents: notNegative, on: day });

export const contractSchema = z
  .strictObject({
    originalCents: notNegative,
    originalDays: z.int().min(0).max(10_000),
    /** The day the contract time starts; the day after it is day 1. */
    start: day.optional(),
    /** How days are counted for the finish; calendar days when left out. */
    dayKind: z.enum(['calendar', 'working']).optional(),
    /** Days that are no working days, beside Saturdays and Sundays. */
    holidays: z.array(day).max(1000).optional(),
    retainagePct: z.number().min(0).max(100),
    /** Whether a saving also gives back the overhead and profit on it. */
    netDecreaseReturnsOverheadAndProfit: z.boolean(),
    events: z
      .array(z.discriminatedUnion('kind', [changeEvent, allowanceEvent, paymentEvent, completedEvent]))
      .max(5000),
    thisChange: z.strictObject({ cents, days }).optional(),
  })
  .refine(({ dayKind, holidays }) => dayKind === 'working' || !holidays?.length, {
    path: ['holidays'],
    error: 'holidays count only where days are working days; allowed with dayKind "working"',
  })
  .refine(({ originalDays, events, thisChange }) => daysIn(originalDays, events, thisChange) <= MAX_CONTRACT_DAYS, {
    path: ['events'],
    error: `the days of the contract and all its changes add up to more than ${MAX_CONTRACT_DAYS}, the most that is counted`,
  });

/** Days either way, so that what goes to and fro is counted too. */
function daysIn(
  originalDays: number,
  events: readonly { readonly kind: string; readonly days?: number }[],
  thisChange: { readonly days: number } | undefined,
): number {
  return events.reduce((sum, { days = 0 }) => sum + Math.abs(days), originalDays + Math.abs(thisChange?.days ?? 0));
}

export type ContractInput = z.infer<typeof contractSchema>;
export type ContractEvent = ContractInput['events'][number];
