import type { Problem } from '@underlath/contract';
import { v7 } from 'uuid';
import { Button } from '../../shared/ui/button.tsx';
import { RadioGroup } from '../../shared/ui/choice.tsx';
import { TextInput } from '../../shared/ui/field.tsx';
import { errorAt } from '../../shared/ui/states.tsx';
import { Cell } from './book-cells.tsx';
import { type BookDraft, type FeeRow, idOf, type TradeRow } from './book-draft.ts';
import { Part } from './page.tsx';

type TradesProps = { trades: readonly TradeRow[]; onChange: (trades: TradeRow[]) => void; problem: Problem | null };

/** Hourly wages and what rides on them. */
export function BookTrades({ trades, onChange, problem }: TradesProps) {
  const set = (key: string, part: Partial<TradeRow>) =>
    onChange(trades.map((row) => (row.key === key ? { ...row, ...part } : row)));
  return (
    <Part title="Trades" lead="The burden is taxes, insurance and benefits on the wage.">
      <div className="table-scroll">
        <table className="table book-table book-small">
          <caption className="hidden-text">Trades</caption>
          <thead>
            <tr>
              <th scope="col">Trade</th>
              <th scope="col" className="number">
                Wage, $ an hour
              </th>
              <th scope="col" className="number">
                Burden %
              </th>
              <th scope="col">
                <span className="hidden-text">Remove</span>
              </th>
            </tr>
          </thead>
          <tbody>
            {trades.map((row, at) => (
              <tr key={row.key}>
                <td>
                  <Cell
                    name={`Trade ${at + 1}`}
                    value={row.name}
                    onChange={(name) => set(row.key, { name })}
                    problem={problem}
                    pointers={[`/book/trades/${at}/name`, `/book/trades/${at}/id`, `/book/trades/${at}`]}
                  />
                </td>
                <td className="number">
                  <Cell
                    figure
                    name={`Wage, ${row.name}`}
                    value={row.wage}
                    onChange={(wage) => set(row.key, { wage })}
                    problem={problem}
                    pointers={[`/book/trades/${at}/wageCentsPerHour`]}
                  />
                </td>
                <td className="number">
                  <Cell
                    figure
                    name={`Burden, ${row.name}`}
                    value={row.burden}
                    onChange={(burden) => set(row.key, { burden })}
                    problem={problem}
                    pointers={[`/book/trades/${at}/burdenPct`]}
                  />
                </td>
                <td>
                  <Button look="quiet" onClick={() => onChange(trades.filter((each) => each.key !== row.key))}>
                    Remove <span className="hidden-text">{row.name}</span>
                  </Button>
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      <p>
        <Button onClick={() => onChange([...trades, { key: v7(), id: '', name: '', wage: '', burden: '0' }])}>
          Add a trade
        </Button>
      </p>
    </Part>
  );
}

type FeesProps = { fees: readonly FeeRow[]; onChange: (fees: FeeRow[]) => void; problem: Problem | null };

/** Fixed amounts of a change order. */
export function BookFees({ fees, onChange, problem }: FeesProps) {
  const set = (key: string, part: Partial<FeeRow>) =>
    onChange(fees.map((row) => (row.key === key ? { ...row, ...part } : row)));
  return (
    <Part title="Fees">
      {fees.length > 0 && (
        <div className="table-scroll">
          <table className="table book-table book-small">
            <caption className="hidden-text">Fees</caption>
            <thead>
              <tr>
                <th scope="col">Fee</th>
                <th scope="col" className="number">
                  Dollars
                </th>
                <th scope="col">
                  <span className="hidden-text">Remove</span>
                </th>
              </tr>
            </thead>
            <tbody>
              {fees.map((row, at) => (
                <tr key={row.key}>
                  <td>
                    <Cell
                      name={`Fee ${at + 1}`}
                      value={row.name}
                      onChange={(name) => set(row.key, { name })}
                      problem={problem}
                      pointers={[`/book/fees/${at}/name`, `/book/fees/${at}/id`, `/book/fees/${at}`]}
                    />
                  </td>
                  <td className="number">
                    <Cell
                      figure
                      name={`Dollars, ${row.name}`}
                      value={row.price}
                      onChange={(price) => set(row.key, { price })}
                      problem={problem}
                      pointers={[`/book/fees/${at}/cents`]}
                    />
                  </td>
                  <td>
                    <Button look="quiet" onClick={() => onChange(fees.filter((each) => each.key !== row.key))}>
                      Remove <span className="hidden-text">{row.name}</span>
                    </Button>
                  </td>
                </tr>
              ))}
            </tbody>
          </table>
        </div>
      )}
      <p>
        <Button onClick={() => onChange([...fees, { key: v7(), id: '', name: '', price: '' }])}>Add a fee</Button>
      </p>
    </Part>
  );
}

type PercentsProps = { draft: BookDraft; set: (part: Partial<BookDraft>) => void; problem: Problem | null };

/** Overhead and profit, and what profit is taken on. */
export function BookPercents({ draft, set, problem }: PercentsProps) {
  return (
    <Part title="Overhead and profit">
      <div className="form-pair book-percents">
        <TextInput
          label="Overhead, % of cost"
          inputMode="decimal"
          className="number"
          value={draft.overhead}
          onChange={(overhead) => set({ overhead })}
          error={errorAt(problem, '/book/overheadPct')}
        />
        <TextInput
          label="Profit, %"
          inputMode="decimal"
          className="number"
          value={draft.profit}
          onChange={(profit) => set({ profit })}
          error={errorAt(problem, '/book/profitPct')}
        />
      </div>
      <RadioGroup
        label="Profit is taken on"
        layout="row"
        options={[
          { value: 'stacked', label: 'cost and overhead' },
          { value: 'added', label: 'cost alone' },
        ]}
        value={draft.stacking}
        onChange={(stacking) => set({ stacking })}
      />
    </Part>
  );
}

/** Gives new rows their id from their name, so that items can point at a trade before the book is saved. */
export const withIds = (trades: readonly TradeRow[]): TradeRow[] =>
  trades.map((trade) => ({ ...trade, id: trade.id || idOf(trade.name) }));
