import type { ChangeOrderDocument, ContractEffect, ContractStanding } from '@underlath/contract';
import { changeInSum, evaluateContract, sumCents } from '@underlath/rules';
import { hashOf } from '../../platform/hash.ts';
import type { History } from './contract-history.ts';
import { changeInPayments } from './contract-payments.ts';

/** What is added to a contract: cents and days, in the contract's own kind of days. */
export interface Change {
  readonly cents: number;
  readonly days: number;
}

export const noChange: Change = { cents: 0, days: 0 };

/** Settled allowances, net. */
export const allowancesOf = ({ input }: History): number =>
  sumCents(input.events.filter(({ kind }) => kind === 'allowance').map((event) => changeInSum(event, input)));

/** Before and after one more change, as a letter shows it. */
export function effectOf(history: History, change: Change): ContractEffect {
  const { input, terms } = history;
  const allowancesCents = allowancesOf(history);
  const payments = changeInPayments(history, change.cents);
  const before = evaluateContract(input);
  const after = evaluateContract({ ...input, thisChange: change });
  return {
    currency: 'USD',
    originalSumCents: input.originalCents,
    previousChangesCents: before.previousChangesCents - allowancesCents,
    allowancesCents,
    beforeCents: before.beforeCents,
    thisChangeCents: change.cents,
    afterCents: after.afterCents,
    daysBefore: before.daysBefore,
    daysAfter: after.daysAfter,
    finishBefore: before.finish ?? null,
    finishAfter: after.finish ?? null,
    dayKind: terms.dayKind,
    ...(payments.length > 0 && { payments }),
  };
}

export function standingAfter({ input }: History, change: Change): ContractStanding {
  const { afterCents, daysAfter, finish } = evaluateContract({ ...input, thisChange: change });
  return { sumCents: afterCents, days: daysAfter, finishOn: finish ?? null };
}

/** As many hex digits as a name needs that is compared once, by the one who was told it. */
const NAME_DIGITS = 16;

/** The name of all that makes the sum, the days and the finish. Equal names stand for equal figures. */
export function ledgerName({ input }: History): string {
  const { events, originalCents, originalDays, start, dayKind, holidays } = input;
  const counted = events
    .filter((event) => event.kind === 'allowance' || (event.kind === 'change' && event.state === 'approved'))
    .map((event) => ({ cents: changeInSum(event, input), days: event.kind === 'change' ? event.days : 0 }));
  const time = { originalDays, start: start ?? null, dayKind: dayKind ?? null, holidays: holidays ?? [] };
  return hashOf({ originalCents, ...time, counted }).slice(0, NAME_DIGITS);
}

/** What of a frozen document says where the contract stood. */
export type Told = Pick<ChangeOrderDocument['contract'], 'beforeCents' | 'daysBefore' | 'finishBefore' | 'dayKind'>;
