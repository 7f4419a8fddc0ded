import { addCalendarDays, addWorkingDays } from '../../kernel/dates.ts';
import { percentOf, sumCents } from '../../kernel/index.ts';
import type { ContractEvent, ContractInput } from './contract-input.ts';

/** What is done and paid, and what is left, all in cents. */
export interface ContractMoney {
  readonly completedCents: number;
  readonly retainageCents: number;
  readonly earnedLessRetainageCents: number;
  readonly paidCents: number;
  /** Below 0 when more was paid than is earned less retainage. */
  readonly dueCents: number;
  /** Retainage included. */
  readonly balanceToFinishCents: number;
}

export interface ContractStanding extends ContractMoney {
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
  readonly pendingDays: number;
}

export interface NetChangeInput {
  /** Cost of what is added and of what is left out, cents. */
  readonly addCents: number;
  readonly creditCents: number;
  readonly overheadProfitPct: number;
  readonly netDecreaseReturnsOverheadAndProfit: boolean;
}

/**
 * Price of a change that adds and leaves out work: overhead and profit on a net increase; on a net decrease only when the
 * contract says that it gives them back (published: A201-2017 7.3.8 as quoted keeps them; other contracts differ).
 */
export function priceNetChange(input: NetChangeInput): number {
  const netCents = input.addCents - input.creditCents;
  const marked = netCents > 0 || input.netDecreaseReturnsOverheadAndProfit;
  return netCents + (marked ? percentOf(netCents, input.overheadProfitPct) : 0);
}

/** The percents a change order is marked up by: those of the book, none on a net decrease that gives nothing back, as in `priceNetChange`. */
export const percentsOnChange = <P extends { readonly overheadPct: number; readonly profitPct: number }>(
  subtotalCents: number,
  percents: P,
  netDecreaseReturnsOverheadAndProfit: boolean,
): P =>
  subtotalCents >= 0 || netDecreaseReturnsOverheadAndProfit ? percents : { ...percents, overheadPct: 0, profitPct: 0 };

/** What an event adds to the contract sum: an approved change, or an allowance settled; nothing else does. */
export function changeInSum(event: ContractEvent, { netDecreaseReturnsOverheadAndProfit }: ContractInput): number {
  if (event.kind === 'change') return event.state === 'approved' ? event.cents : 0;
  if (event.kind !== 'allowance') return 0;
  return priceNetChange({
    addCents: event.spentCents,
    creditCents: event.allowedCents,
    overheadProfitPct: event.overheadProfitPct,
    netDecreaseReturnsOverheadAndProfit,
  });
}

/** Retainage on all that is completed, what is earned without it, due and left of the sum. */
export function moneyOf(
  sumOfContractCents: number,
  completedCents: number,
  paidCents: number,
  retainagePct: number,
): ContractMoney {
  const retainageCents = percentOf(completedCents, retainagePct);
  const earnedLessRetainageCents = completedCents - retainageCents;
  return {
    completedCents,
    retainageCents,
    earnedLessRetainageCents,
    paidCents,
    dueCents: earnedLessRetainageCents - paidCents,
    balanceToFinishCents: sumOfContractCents - earnedLessRetainageCents,
  };
}

/** The finish of so many days of contract time; nothing without a start. Less than no time ends at the start. */
export function finishOf({ start, dayKind, holidays }: ContractInput, days: number): { finish?: string } {
  if (start === undefined) return {};
  const whole = Math.max(0, days);
  return { finish: dayKind === 'working' ? addWorkingDays(start, whole, holidays) : addCalendarDays(start, whole) };
}

/**
 * Where a contract stands. Only approved changes and settled allowances enter the sum; pending changes stand apart; declined
 * and replaced ones count nowhere. Payments and completed work are each the sum of their events. The order of events changes
 * nothing. `finish` and the balance are those with this change. Days are calendar days unless `dayKind` says otherwise.
 */
export function evaluateContract(input: ContractInput): ContractStanding {
  const { events, thisChange } = input;
  const changes = events.filter((event) => event.kind === 'change');
  const inState = (state: (typeof changes)[number]['state']) => changes.filter((event) => event.state === state);
  const previousChangesCents = sumCents(events.map((event) => changeInSum(event, input)));
  const beforeCents = input.originalCents + previousChangesCents;
  const afterCents = beforeCents + (thisChange?.cents ?? 0);
  const daysBefore = input.originalDays + sumCents(inState('approved').map(({ days }) => days));
  const daysAfter = daysBefore + (thisChange?.days ?? 0);
  return {
    previousChangesCents,
    beforeCents,
    afterCents,
    daysBefore,
    daysAfter,
    ...finishOf(input, daysAfter),
    pendingCents: sumCents(inState('pending').map(({ cents }) => cents)),
    pendingDays: sumCents(inState('pending').map(({ days }) => days)),
    ...moneyOf(afterCents, sumOfKind(events, 'completed'), sumOfKind(events, 'payment'), input.retainagePct),
  };
}

const sumOfKind = (events: readonly ContractEvent[], kind: 'payment' | 'completed'): number =>
  sumCents(events.map((event) => (event.kind === kind ? event.cents : 0)));
