import { Link } from '@tanstack/react-router';
import type { Contract, LedgerEntry } from '@underlath/contract';
import { Money } from '../../shared/ui/money.tsx';
import { Stamp } from '../../shared/ui/stamp.tsx';
import { TableScroll } from '../../shared/ui/table-scroll.tsx';
import { useProjectId } from '../project/project-frame.tsx';

/** What the plot shows, in figures: the original sum, each change of sum or time in order, and the contract now. */
export function ContractSumTable({ contract, entries }: { contract: Contract; entries: readonly LedgerEntry[] }) {
  const steps = entries.filter(
    ({ changeCents, changeDays, kind }) => changeCents !== 0 || changeDays !== 0 || kind === 'original',
  );
  return (
    <TableScroll label="The contract sum">
      <table className="table">
        <caption className="hidden-text">Original sum, each change of it in order, and the sum now</caption>
        <thead>
          <tr>
            <th scope="col">Step</th>
            <th scope="col" className="wide-only">
              Day
            </th>
            <th scope="col" className="number wide-only">
              Days
            </th>
            <th scope="col" className="number">
              Change
            </th>
            <th scope="col" className="number">
              Sum after
            </th>
          </tr>
        </thead>
        <tbody>
          {steps.map((entry, at) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: the steps of a history keep their places
            <tr key={at}>
              <td>
                <HistoryLine entry={entry} />
              </td>
              <td className="wide-only">{entry.on && <Stamp at={entry.on} />}</td>
              <td className="number wide-only">{entry.kind === 'original' ? entry.days : signed(entry.changeDays)}</td>
              <td className="number">{entry.kind !== 'original' && <Money cents={entry.changeCents} sign />}</td>
              <td className="number">
                <Money cents={entry.sumCents} />
              </td>
            </tr>
          ))}
        </tbody>
        <tfoot>
          <tr>
            <td>Contract now</td>
            <td className="wide-only" />
            <td className="number wide-only">{contract.currentDays}</td>
            <td className="number">
              <Money cents={contract.approvedChangesCents + contract.allowancesCents} sign />
            </td>
            <td className="number">
              <Money cents={contract.currentSumCents} />
            </td>
          </tr>
        </tfoot>
      </table>
    </TableScroll>
  );
}

const signed = (days: number): string => (days > 0 ? `+${days}` : String(days));

type Told = Pick<LedgerEntry, 'what' | 'changeOrderId'>;

/** Its name; of a change order with a way to it. */
export function HistoryLine({ entry }: { entry: Told }) {
  const projectId = useProjectId();
  if (!entry.changeOrderId) return <>{entry.what}</>;
  return (
    <Link
      to="/projects/$projectId/change-orders/$changeOrderId"
      params={{ projectId, changeOrderId: entry.changeOrderId }}
      className="row-link"
    >
      {entry.what}
    </Link>
  );
}
