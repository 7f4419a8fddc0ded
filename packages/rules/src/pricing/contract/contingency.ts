import type { ContractInput } from './contract-input.ts';
import { ledgerOf } from './ledger.ts';

/** What one event took from the contingency, or gave back to it (below 0), and how it stood then. */
export interface ContingencyDraw {
  /** Where the event is in the list that was given. */
  readonly event: number;
  readonly on: string;
  readonly drawnCents: number;
  /** Below 0 by as much as it is overrun. */
  readonly leftCents: number;
}

export interface Contingency {
  readonly setAsideCents: number;
  readonly usedCents: number;
  /** Never below 0; what goes beyond it is the overrun. */
  readonly leftCents: number;
  readonly overrunCents: number;
  readonly draws: readonly ContingencyDraw[];
}

/**
 * What is used of the money the client set aside for surprises: approved changes and allowances overspent draw on it in the
 * order they happened. A saving gives back what was drawn before it, and never makes it larger than it was set aside.
 * @param setAsideCents 0 or more
 */
export function contingencyOf(input: ContractInput, setAsideCents: number): Contingency {
  let usedCents = 0;
  const draws: ContingencyDraw[] = [];
  for (const { event, on, changeCents } of ledgerOf(input)) {
    const before = usedCents;
    usedCents = Math.max(0, usedCents + changeCents);
    if (event === null || on === null || usedCents === before) continue;
    draws.push({ event, on, drawnCents: usedCents - before, leftCents: setAsideCents - usedCents });
  }
  return {
    setAsideCents,
    usedCents,
    leftCents: Math.max(0, setAsideCents - usedCents),
    overrunCents: Math.max(0, usedCents - setAsideCents),
    draws,
  };
}
