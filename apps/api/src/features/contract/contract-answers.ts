import type { Contingency, Contract, ContractLine } from '@underlath/contract';
import { contingencyOf, evaluateContract, ledgerOf } from '@underlath/rules';
import { toWord } from '../../shared/enum-words.ts';
import type { OrderRow } from './contract.repository.ts';
import { type Happening, type History, headlineOf } from './contract-history.ts';

/** What happened, by name and id. */
export const toldOf = (happening: Happening | undefined) => ({
  what: happening?.what ?? 'Original contract',
  changeOrderId: happening?.order?.id ?? null,
  entryId: happening?.entry?.id ?? null,
});

export function linesOf({ happenings, input, orders }: History): Pick<Contract, 'approved' | 'pending' | 'declined'> {
  const approved = ledgerOf(input).flatMap(({ event, sumCents, days }) => {
    const order = happenings[event ?? -1]?.order;
    return order?.state === 'approved' || order?.state === 'partApproved' ? [toLine(order, sumCents, days)] : [];
  });
  const inState = (state: OrderRow['state']) =>
    orders.filter((order) => order.state === state).map((order) => toLine(order, null, null));
  return { approved, pending: inState('sent'), declined: inState('declined') };
}

function toLine(order: OrderRow, sumAfterCents: number | null, daysAfter: number | null): ContractLine {
  const { id, number, state, totalCents, days, decidedAt } = order;
  return {
    changeOrderId: id,
    number,
    headline: headlineOf(order),
    state: toWord(state),
    cents: totalCents,
    days,
    decidedAt: decidedAt?.toISOString() ?? null,
    sumAfterCents,
    daysAfter,
  };
}

export function moneyAnswer({ input }: History): Contract['money'] {
  const { completedCents, retainageCents, earnedLessRetainageCents, paidCents, dueCents, balanceToFinishCents } =
    evaluateContract(input);
  return { completedCents, retainageCents, earnedLessRetainageCents, paidCents, dueCents, balanceToFinishCents };
}

export function contingencyAnswer({ project, happenings, input }: History): Contingency {
  const { draws, ...sums } = contingencyOf(input, project.contingencyCents);
  return { ...sums, draws: draws.map(({ event, ...draw }) => ({ ...toldOf(happenings[event]), ...draw })) };
}
