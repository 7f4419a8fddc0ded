import type { Contract } from '@underlath/contract';
import { Money } from '../../shared/ui/money.tsx';
import { Stamp } from '../../shared/ui/stamp.tsx';
import { TableScroll } from '../../shared/ui/table-scroll.tsx';
import { Part } from '../desk/page.tsx';
import { PartBar } from './part-bar.tsx';
import { HistoryLine } from './sum-table.tsx';

/** What the client set aside for surprises, and what drew on it. It is the client's money and in no sum. */
export function ContractContingency({ contract }: { contract: Contract }) {
  const { setAsideCents, usedCents, leftCents, overrunCents, draws } = contract.contingency;
  if (setAsideCents === 0 && usedCents === 0)
    return (
      <Part title="Contingency">
        <p className="soft">The client set nothing aside. If they do, write it into the details of the project.</p>
      </Part>
    );
  return (
    <Part title="Contingency" lead="Set aside by the client for surprises; it is not in the contract sum.">
      <PartBar
        parts={[
          { name: 'Used', cents: Math.min(usedCents, setAsideCents), look: 'full' },
          { name: 'Left', cents: leftCents, look: 'empty' },
          ...(overrunCents > 0 ? [{ name: 'Beyond it', cents: overrunCents, look: 'half' as const }] : []),
        ]}
      />
      {overrunCents > 0 && (
        <p className="notice">
          The contingency of <Money cents={setAsideCents} trim /> is overrun by <Money cents={overrunCents} />. Tell the
          client before the next change order.
        </p>
      )}
      {draws.length === 0 ? (
        <p className="soft">Nothing has drawn on it yet.</p>
      ) : (
        <TableScroll label="What drew on the contingency">
          <table className="table draws">
            <caption className="hidden-text">What drew on the contingency, in order</caption>
            <thead>
              <tr>
                <th scope="col">What drew on it</th>
                <th scope="col" className="wide-only">
                  Day
                </th>
                <th scope="col" className="number">
                  Drawn
                </th>
                <th scope="col" className="number">
                  Left
                </th>
              </tr>
            </thead>
            <tbody>
              {draws.map((draw) => (
                <tr key={draw.changeOrderId ?? draw.entryId}>
                  <td>
                    <HistoryLine entry={draw} />
                  </td>
                  <td className="wide-only">
                    <Stamp at={draw.on} />
                  </td>
                  <td className="number">
                    <Money cents={draw.drawnCents} />
                  </td>
                  <td className="number">
                    <Money cents={draw.leftCents} />
                  </td>
                </tr>
              ))}
            </tbody>
          </table>
        </TableScroll>
      )}
    </Part>
  );
}
