import { allocate } from '../../kernel/index.ts';
import { type ContractMoney, changeInSum, finishOf, moneyOf } from './contract.ts';
import type { ContractEvent, ContractInput } from './contract-input.ts';

/** The contract right after one event, or as it was signed (`event` null). */
export interface LedgerEntry extends ContractMoney {
  /** Null for the original contract without a start. */
  readonly on: string | null;
  /** Where the event is in the list that was given. */
  readonly event: number | null;
  readonly kind: 'original' | ContractEvent['kind'];
  /** What it added to the sum and to the time. */
  readonly changeCents: number;
  readonly changeDays: number;
  readonly sumCents: number;
  readonly days: number;
  readonly finish?: string;
  readonly pendingCents: number;
}

/**
 * Replays a contract: the original, then every event by its day, those of one day as given. Each entry is what
 * `evaluateContract` says of the events up to it; `thisChange` is not an event yet and is left out.
 */
export function ledgerOf(input: ContractInput): LedgerEntry[] {
  const running = {
    sumCents: input.originalCents,
    days: input.originalDays,
    pendingCents: 0,
    completedCents: 0,
    paidCents: 0,
  };
  const entry = (event: number | null, on: string | null, kind: LedgerEntry['kind'], cents: number, days: number) => ({
    on,
    event,
    kind,
    changeCents: cents,
    changeDays: days,
    sumCents: running.sumCents,
    days: running.days,
    ...finishOf(input, running.days),
    pendingCents: running.pendingCents,
    ...moneyOf(running.sumCents, running.completedCents, running.paidCents, input.retainagePct),
  });
  const entries: LedgerEntry[] = [entry(null, input.start ?? null, 'original', 0, 0)];
  for (const { event, at } of byDay(input.events)) {
    const cents = changeInSum(event, input);
    const days = event.kind === 'change' && event.state === 'approved' ? event.days : 0;
    running.sumCents += cents;
    running.days += days;
    if (event.kind === 'change' && event.state === 'pending') running.pendingCents += event.cents;
    if (event.kind === 'completed') running.completedCents += event.cents;
    if (event.kind === 'payment') running.paidCents += event.cents;
    entries.push(entry(at, event.on, event.kind, cents, days));
  }
  return entries;
}

/** Days are `YYYY-MM-DD`, so that their words sort as they do; sorting keeps those of one day as they were. */
const byDay = (events: readonly ContractEvent[]) =>
  events
    .map((event, at) => ({ event, at }))
    .sort((one, other) => (one.event.on < other.event.on ? -1 : one.event.on > other.event.on ? 1 : 0));

/**
 * What a change does to each payment still to come: its cents spread over them by their shares (0 or more, any sum), to the
 * cent. Half at rough inspection and half at close make 1,245.78 each of 2,491.56.
 */
export const spreadOverPayments = (changeCents: number, shares: readonly number[]): number[] =>
  allocate(changeCents, shares);
