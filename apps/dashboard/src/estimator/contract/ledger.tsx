import { type LedgerEntry, routes } from '@underlath/contract';
import { addressOf } from '../../shared/api/call.ts';
import { buttonClass } from '../../shared/ui/button.tsx';
import { Money } from '../../shared/ui/money.tsx';
import { Stamp } from '../../shared/ui/stamp.tsx';
import { TableScroll } from '../../shared/ui/table-scroll.tsx';
import { Part } from '../desk/page.tsx';
import { changeOrderWord } from '../desk/words.ts';
import { useProjectId } from '../project/project-frame.tsx';
import { HistoryLine } from './sum-table.tsx';

const kinds = {
  original: 'signed',
  allowance: 'allowance settled',
  payment: 'paid',
  completed: 'completed',
} as const;

const wordOf = ({ kind, state }: LedgerEntry): string => {
  if (kind !== 'change') return kinds[kind];
  return changeOrderWord(state === 'pending' || state === null ? 'sent' : state);
};

const sums = [
  { name: 'Contract sum', of: (entry: LedgerEntry) => entry.sumCents },
  { name: 'Waiting', of: (entry: LedgerEntry) => entry.pendingCents },
  { name: 'Completed', of: (entry: LedgerEntry) => entry.completedCents },
  { name: 'Retained', of: (entry: LedgerEntry) => entry.retainageCents },
  { name: 'Paid', of: (entry: LedgerEntry) => entry.paidCents },
  { name: 'Due', of: (entry: LedgerEntry) => entry.dueCents },
] as const;

/** The contract after each thing that happened, worked out anew from all of them. */
export function ContractLedger({ entries }: { entries: readonly LedgerEntry[] }) {
  const projectId = useProjectId();
  return (
    <Part
      title="Ledger"
      lead="The contract as it was after each thing that happened, replayed with the terms of today."
      actions={
        <a
          className={buttonClass('plain')}
          href={addressOf(routes.exportContractLedger, { params: { projectId } })}
          download
        >
          Download as CSV
        </a>
      }
    >
      <TableScroll label="Ledger">
        <table className="table ledger">
          <thead>
            <tr>
              <th scope="col">Day</th>
              <th scope="col">What happened</th>
              <th scope="col" className="number">
                Amount
              </th>
              {sums.map(({ name }) => (
                <th scope="col" className="number" key={name}>
                  {name}
                </th>
              ))}
              <th scope="col" className="number">
                Days
              </th>
            </tr>
          </thead>
          <tbody>
            {entries.map((entry, at) => (
              // biome-ignore lint/suspicious/noArrayIndexKey: the lines of a history keep their places
              <tr key={at}>
                <td className="ledger-day">{entry.on && <Stamp at={entry.on} />}</td>
                <td>
                  <HistoryLine entry={entry} /> <span className="soft">{wordOf(entry)}</span>
                </td>
                <td className="number">
                  {entry.kind === 'allowance' ? (
                    <Money cents={entry.changeCents} sign />
                  ) : (
                    entry.cents !== null && <Money cents={entry.cents} sign={entry.kind === 'change'} />
                  )}
                </td>
                {sums.map(({ name, of }) => (
                  <td className="number" key={name}>
                    {of(entry) === 0 ? <span className="soft">–</span> : <Money cents={of(entry)} />}
                  </td>
                ))}
                <td className="number">{entry.days}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </TableScroll>
    </Part>
  );
}
