import type { LedgerEntry } from '@underlath/contract';
import { ledgerOf } from '@underlath/rules';
import { toldOf } from './contract-answers.ts';
import type { Happening, History } from './contract-history.ts';

export const ledgerAnswer = ({ happenings, input }: History): LedgerEntry[] =>
  ledgerOf(input).map(({ event, finish, ...entry }) => {
    const happening = event === null ? undefined : happenings[event];
    return { ...entry, ...toldOf(happening), ...stateAndCents(happening), finishOn: finish ?? null };
  });

function stateAndCents(happening: Happening | undefined): Pick<LedgerEntry, 'state' | 'cents'> {
  const event = happening?.event;
  if (event?.kind === 'change') return { state: event.state === 'replaced' ? null : event.state, cents: event.cents };
  return { state: null, cents: event && event.kind !== 'allowance' ? event.cents : null };
}

const usd = (cents: number | null): string => (cents === null ? '' : (cents / 100).toFixed(2));

const columns: readonly { name: string; of: (entry: LedgerEntry) => string }[] = [
  { name: 'day', of: ({ on }) => on ?? '' },
  { name: 'kind', of: ({ kind }) => kind },
  { name: 'what', of: ({ what }) => what },
  { name: 'state', of: ({ state }) => state ?? '' },
  { name: 'amount_usd', of: ({ cents }) => usd(cents) },
  { name: 'change_of_sum_usd', of: ({ changeCents }) => usd(changeCents) },
  { name: 'change_of_time_days', of: ({ changeDays }) => String(changeDays) },
  { name: 'sum_usd', of: ({ sumCents }) => usd(sumCents) },
  { name: 'time_days', of: ({ days }) => String(days) },
  { name: 'finish', of: ({ finishOn }) => finishOn ?? '' },
  { name: 'pending_usd', of: ({ pendingCents }) => usd(pendingCents) },
  { name: 'completed_usd', of: ({ completedCents }) => usd(completedCents) },
  { name: 'retainage_usd', of: ({ retainageCents }) => usd(retainageCents) },
  { name: 'paid_usd', of: ({ paidCents }) => usd(paidCents) },
  { name: 'due_usd', of: ({ dueCents }) => usd(dueCents) },
  { name: 'balance_to_finish_usd', of: ({ balanceToFinishCents }) => usd(balanceToFinishCents) },
  { name: 'id', of: ({ changeOrderId, entryId }) => changeOrderId ?? entryId ?? '' },
];

/** As rows of texts under a header that names each unit. */
export const ledgerTable = (entries: readonly LedgerEntry[]): string[][] => [
  columns.map(({ name }) => name),
  ...entries.map((entry) => columns.map(({ of }) => of(entry))),
];
