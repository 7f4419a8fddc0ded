import * as z from 'zod';
import { percentOf, sumCents } from '../kernel/index.ts';
import { addCalendarDays, addWorkingDays } from './dates.ts';

const cents = z.int();
const day = z.iso.date();
const days = z.int().min(-10_000).max(10_000);

const changeEvent = z.strictObject({
  kind: z.literal('change'),
  state: z.enum(['approved', 'pending', 'declined', 'replaced']),
  cents,
  days,
  on: day,
});
const allowanceEvent = z.strictObject({
  kind: z.literal('allowance'),
  allowedCents: cents.min(0),
  spentCents: cents.min(0),
  /** Taken on what is spent over the allowance. */
  overheadProfitPct: z.number().min(0).max(1000),
  on: day,
});
const moneyEvent = <K extends 'payment' | 'completed'>(kind: K) =>
  z.strictObject({ kind: z.literal(kind), cents, on: day });

export const contractSchema = z.strictObject({
  originalCents: cents.min(0),
  originalDays: z.int().min(0).max(10_000),
  /** First day of the contract time. */
  start: day.optional(),
  /** How days are counted for the finish; calendar days when left out. */
  dayKind: z.enum(['calendar', 'working']).optional(),
  retainagePct: z.number().min(0).max(100),
  /** Whether a saving also gives back the overhead and profit on it. */
  netDecreaseReturnsOverheadAndProfit: z.boolean(),
  events: z
    .array(z.discriminatedUnion('kind', [changeEvent, allowanceEvent, moneyEvent('payment'), moneyEvent('completed')]))
    .max(5000),
  thisChange: z.strictObject({ cents, days }).optional(),
});
export type ContractInput = z.infer<typeof contractSchema>;
type ContractEvent = ContractInput['events'][number];

export interface ContractStanding {
  /** Approved changes and settled allowances, net. */
  readonly previousChangesCents: number;
  readonly beforeCents: number;
  readonly afterCents: number;
  readonly daysBefore: number;
  readonly daysAfter: number;
  /** Given when the start is. */
  readonly finish?: string;
  /** Not in any sum. */
  readonly pendingCents: number;
  readonly completedCents: number;
  readonly retainageCents: number;
  readonly earnedLessRetainageCents: number;
  readonly paidCents: number;
  readonly dueCents: number;
  readonly balanceToFinishCents: number;
}

export interface NetChangeInput {
  /** Cost of what is added and of what is left out, cents. */
  readonly addCents: number;
  readonly creditCents: number;
  readonly overheadProfitPct: number;
  readonly netDecreaseReturnsOverheadAndProfit: boolean;
}

/**
 * Price of a change that adds and leaves out work: overhead and profit on a net increase; on a net decrease only
 * when the contract says that it gives them back.
 */
export function priceNetChange(input: NetChangeInput): number {
  const netCents = input.addCents - input.creditCents;
  const marked = netCents > 0 || input.netDecreaseReturnsOverheadAndProfit;
  return netCents + (marked ? percentOf(netCents, input.overheadProfitPct) : 0);
}

const isChange = (event: ContractEvent) => event.kind === 'change';

function changeInSum(event: ContractEvent, returnsOnDecrease: boolean): number {
  if (event.kind === 'change') return event.state === 'approved' ? event.cents : 0;
  if (event.kind !== 'allowance') return 0;
  return priceNetChange({
    addCents: event.spentCents,
    creditCents: event.allowedCents,
    overheadProfitPct: event.overheadProfitPct,
    netDecreaseReturnsOverheadAndProfit: returnsOnDecrease,
  });
}

const sumOfKind = (events: readonly ContractEvent[], kind: 'payment' | 'completed'): number =>
  sumCents(events.map((event) => (event.kind === kind ? event.cents : 0)));

/**
 * Where a contract stands. Only approved changes enter the sum; pending ones stand apart; declined and replaced ones
 * count nowhere. Payments and completed work are each the sum of their events. The order of events changes nothing.
 */
export function evaluateContract(input: ContractInput): ContractStanding {
  const { events, thisChange } = input;
  const changes = events.filter(isChange);
  const previousChangesCents = sumCents(
    events.map((event) => changeInSum(event, input.netDecreaseReturnsOverheadAndProfit)),
  );
  const beforeCents = input.originalCents + previousChangesCents;
  const afterCents = beforeCents + (thisChange?.cents ?? 0);
  const approvedDays = changes.map((event) => (event.state === 'approved' ? event.days : 0));
  const daysBefore = input.originalDays + sumCents(approvedDays);
  const daysAfter = daysBefore + (thisChange?.days ?? 0);
  const completedCents = sumOfKind(events, 'completed');
  const retainageCents = percentOf(completedCents, input.retainagePct);
  const earnedLessRetainageCents = completedCents - retainageCents;
  const paidCents = sumOfKind(events, 'payment');
  const addDays = input.dayKind === 'working' ? addWorkingDays : addCalendarDays;
  return {
    previousChangesCents,
    beforeCents,
    afterCents,
    daysBefore,
    daysAfter,
    ...(input.start !== undefined && { finish: addDays(input.start, Math.max(0, daysAfter)) }),
    pendingCents: sumCents(changes.map((event) => (event.state === 'pending' ? event.cents : 0))),
    completedCents,
    retainageCents,
    earnedLessRetainageCents,
    paidCents,
    dueCents: earnedLessRetainageCents - paidCents,
    balanceToFinishCents: afterCents - earnedLessRetainageCents,
  };
}
