import type { ChangeOrderDocument, ContractToday } from '@underlath/contract';
import { changeInSum, sumCents } from '@underlath/rules';
import { dayOf } from '../../shared/days.ts';
import { atSite } from '../../shared/site-clock.ts';
import type { EntryRow, OrderRow } from './contract.repository.ts';
import { type Change, effectOf, ledgerName, noChange, standingAfter, type Told } from './contract-change.ts';
import { eventOf, type History, headlineOf } from './contract-history.ts';

type Letter = Pick<ChangeOrderDocument, 'changeOrderId' | 'contract' | 'days' | 'parts' | 'sentAt'>;
type Move = ContractToday['moves'][number];

/** The contract as it stands beside a letter: what an answer would do to it, what moved it since, and what waits too. */
export function contractToday(
  history: History,
  { changeOrderId, contract, days, parts = [], sentAt }: Letter,
): ContractToday {
  const waiting = history.orders
    .filter(({ id, state }) => state === 'sent' && id !== changeOrderId)
    .toSorted((a, b) => a.number - b.number);
  const answer = (change: Change) => ({
    contract: effectOf(history, change),
    withWaiting: standingAfter(history, {
      cents: change.cents + sumCents(waiting.map(({ totalCents }) => totalCents)),
      days: change.days + sumCents(waiting.map((order) => order.days)),
    }),
  });
  const moves = movesSince(history, new Date(sentAt), changeOrderId);
  return {
    ledger: ledgerName(history),
    whole: answer({ cents: contract.thisChangeCents, days }),
    parts: parts.map((part) => ({
      findingIds: part.findingIds,
      ...answer({ cents: part.contract.thisChangeCents, days: part.days }),
    })),
    told: { sumCents: contract.beforeCents, days: contract.daysBefore, finishOn: contract.finishBefore },
    ...movement(history, contract, moves),
    waiting: waiting.map(({ number, totalCents, days: added }) => ({ number, cents: totalCents, days: added })),
  };
}

/** Compared by the figures themselves: what was given and taken back again has moved nothing. */
function movement(
  history: History,
  told: Told,
  moves: readonly Move[],
): Pick<ContractToday, 'hasMoved' | 'moves' | 'isTimeCountedAnew'> {
  const now = effectOf(history, noChange);
  const isTimeCountedAnew =
    now.dayKind !== (told.dayKind ?? 'working') ||
    now.daysBefore - told.daysBefore !== sumCents(moves.map(({ days }) => days)) ||
    // The days told then would end on another day now.
    standingAfter(history, { cents: 0, days: told.daysBefore - now.daysBefore }).finishOn !== told.finishBefore;
  const hasMoved =
    isTimeCountedAnew ||
    now.beforeCents !== told.beforeCents ||
    now.daysBefore !== told.daysBefore ||
    now.finishBefore !== told.finishBefore;
  return { hasMoved, moves: hasMoved ? [...moves] : [], isTimeCountedAnew };
}

function movesSince(history: History, since: Date, ownId: string): Move[] {
  const orders = history.orders.flatMap((order) =>
    order.id !== ownId && isApproved(order) && order.decidedAt && order.decidedAt > since
      ? [{ at: order.decidedAt, move: ofOrder(history, order, order.decidedAt) }]
      : [],
  );
  const allowances = history.entries.filter(({ kind }) => kind === 'allowance');
  const settled = allowances.flatMap((entry) =>
    entry.enteredAt > since && !entry.takenBackAt
      ? [{ at: entry.enteredAt, move: ofAllowance(history, entry, 'allowance') }]
      : [],
  );
  const takenBack = allowances.flatMap((entry) =>
    entry.takenBackAt && entry.takenBackAt > since && entry.enteredAt <= since
      ? [{ at: entry.takenBackAt, move: ofAllowance(history, entry, 'allowance-taken-back') }]
      : [],
  );
  return [...orders, ...settled, ...takenBack]
    .toSorted((a, b) => a.at.getTime() - b.at.getTime())
    .map(({ move }) => move);
}

const isApproved = ({ state }: OrderRow): boolean => state === 'approved' || state === 'partApproved';

const ofOrder = ({ clock }: History, order: OrderRow, decidedAt: Date): Move => ({
  kind: 'change',
  number: order.number,
  name: headlineOf(order),
  on: atSite(decidedAt, clock).day,
  cents: order.totalCents,
  days: order.days,
});

function ofAllowance({ input, clock }: History, entry: EntryRow, kind: 'allowance' | 'allowance-taken-back'): Move {
  const cents = changeInSum(eventOf(entry), input);
  return {
    kind,
    number: null,
    name: entry.name,
    on: kind === 'allowance' ? dayOf(entry.happenedOn) : atSite(entry.takenBackAt ?? entry.enteredAt, clock).day,
    cents: kind === 'allowance' ? cents : -cents,
    days: 0,
  };
}
