import { burdenedRateCents, type CostBook, crewOf } from '@underlath/rules/pricing';
import { Facts } from '../../shared/ui/facts.tsx';
import { Money } from '../../shared/ui/money.tsx';
import { TableScroll } from '../../shared/ui/table-scroll.tsx';
import { Part } from '../desk/page.tsx';
import { operationWords, unitWords } from '../desk/words.ts';

/** The cost book to be read by who may not change it. */
export function BookView({ book }: { book: CostBook }) {
  const { crewSize, hoursPerDay } = crewOf(book);
  return (
    <>
      <Part title="Overhead and profit">
        <Facts
          facts={[
            { name: 'Overhead', value: `${book.overheadPct}%` },
            {
              name: 'Profit',
              value: `${book.profitPct}%`,
              note: book.stacking === 'stacked' ? 'on cost and overhead' : 'on cost alone',
            },
          ]}
        />
      </Part>
      <Part title="Crew">
        <Facts
          facts={[
            { name: 'People at one place', value: String(crewSize) },
            { name: 'Hours a day', value: String(hoursPerDay) },
          ]}
        />
      </Part>
      <Part title="Trades">
        <Facts
          facts={book.trades.map((trade) => ({
            name: trade.name,
            value: (
              <>
                <Money cents={burdenedRateCents(trade)} /> an hour
              </>
            ),
            note: (
              <>
                <Money cents={trade.wageCentsPerHour} /> and {trade.burdenPct}% burden
              </>
            ),
          }))}
        />
      </Part>
      <Part title="Work, per unit">
        <ItemsTable book={book} />
      </Part>
      <Part title="Fees">
        <Facts facts={book.fees.map((fee) => ({ name: fee.name, value: <Money cents={fee.cents} /> }))} />
      </Part>
    </>
  );
}

function ItemsTable({ book }: { book: CostBook }) {
  const tradeName = (id: string) => book.trades.find((trade) => trade.id === id)?.name ?? id;
  return (
    <TableScroll label="Rates by kind of work">
      <table className="table">
        <caption className="hidden-text">Rates by kind of work</caption>
        <thead>
          <tr>
            <th scope="col">Work</th>
            <th scope="col">Unit</th>
            <th scope="col" className="wide-only">
              Trade
            </th>
            <th scope="col" className="number">
              Hours, low / likely / high
            </th>
            <th scope="col" className="number">
              Material
            </th>
          </tr>
        </thead>
        <tbody>
          {book.items.map((item) => (
            <tr key={item.operation + item.unit}>
              <td>
                {operationWords(item.operation)}
                {item.invented && <b> (invented)</b>}
              </td>
              <td>{unitWords(item.unit)}</td>
              <td className="wide-only">{tradeName(item.trade)}</td>
              <td className="number">
                {item.hoursPerUnit
                  ? `${item.hoursPerUnit.low} / ${item.hoursPerUnit.likely} / ${item.hoursPerUnit.high}`
                  : 'not known'}
              </td>
              <td className="number">
                {item.materialCentsPerUnit === null ? 'not known' : <Money cents={item.materialCentsPerUnit} />}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </TableScroll>
  );
}
