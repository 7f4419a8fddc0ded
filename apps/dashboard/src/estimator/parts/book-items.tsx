import type { Problem } from '@underlath/contract';
import { OPERATIONS } from '@underlath/rules';
import { useState } from 'react';
import { Button } from '../../shared/ui/button.tsx';
import { Select } from '../../shared/ui/field.tsx';
import { Cell } from './book-cells.tsx';
import { emptyItem, type ItemRow, type TradeRow } from './book-draft.ts';
import { Part } from './page.tsx';
import { unitWords } from './words.ts';

type BookItemsProps = {
  items: readonly ItemRow[];
  trades: readonly TradeRow[];
  onChange: (items: ItemRow[]) => void;
  problem: Problem | null;
};

const figures = [
  { name: 'low', head: 'Hours, low', pointer: 'hoursPerUnit/low' },
  { name: 'likely', head: 'likely', pointer: 'hoursPerUnit/likely' },
  { name: 'high', head: 'high', pointer: 'hoursPerUnit/high' },
  { name: 'material', head: 'Material $', pointer: 'materialCentsPerUnit' },
  { name: 'waste', head: 'Waste %', pointer: 'wastePct' },
  { name: 'tax', head: 'Tax %', pointer: 'materialTaxPct' },
  { name: 'equipment', head: 'Equipment $', pointer: 'equipmentCentsPerUnit' },
  { name: 'subcontract', head: 'Subcontract $', pointer: 'subcontractCentsPerUnit' },
  { name: 'other', head: 'Other $', pointer: 'otherCentsPerUnit' },
  { name: 'minimum', head: 'At least $', pointer: 'minimumCents' },
] as const;

export const operationWords = (id: string): string =>
  OPERATIONS.find((operation) => operation.id === id)?.title.en ?? id;

/** What each kind of work costs per unit. An empty rate is a gap in a price, never a zero. */
export function BookItems({ items, trades, onChange, problem }: BookItemsProps) {
  const set = (key: string, part: Partial<ItemRow>) =>
    onChange(items.map((row) => (row.key === key ? { ...row, ...part } : row)));
  return (
    <Part
      title="Work, per unit"
      lead="Hours and material left empty are not known yet: they show as gaps in a price and are never counted as zero."
    >
      <div className="table-scroll">
        <table className="table book-table book-items">
          <caption className="hidden-text">Rates by kind of work</caption>
          <thead>
            <tr>
              <th scope="col">Work</th>
              <th scope="col">Unit</th>
              <th scope="col">Trade</th>
              {figures.map((figure) => (
                <th key={figure.name} scope="col" className="number">
                  {figure.head}
                </th>
              ))}
              <th scope="col">Whole units</th>
              <th scope="col">
                <span className="hidden-text">Remove</span>
              </th>
            </tr>
          </thead>
          <tbody>
            {items.map((row, at) => (
              <ItemLine
                key={row.key}
                row={row}
                at={at}
                trades={trades}
                problem={problem}
                onChange={(part) => set(row.key, part)}
                onRemove={() => onChange(items.filter((each) => each.key !== row.key))}
              />
            ))}
          </tbody>
        </table>
      </div>
      <AddItem items={items} trades={trades} onAdd={(row) => onChange([...items, row])} />
    </Part>
  );
}

type ItemLineProps = {
  row: ItemRow;
  at: number;
  trades: readonly TradeRow[];
  problem: Problem | null;
  onChange: (part: Partial<ItemRow>) => void;
  onRemove: () => void;
};

function ItemLine({ row, at, trades, problem, onChange, onRemove }: ItemLineProps) {
  const words = operationWords(row.operation);
  const here = `/book/items/${at}`;
  return (
    <tr>
      <th scope="row" className="book-work">
        {words}
      </th>
      <td>{unitWords(row.unit)}</td>
      <td className="book-trade">
        <select
          className="input"
          aria-label={`Trade, ${words}`}
          value={row.trade}
          onChange={(event) => onChange({ trade: event.target.value })}
        >
          {trades.map((trade) => (
            <option key={trade.key} value={trade.id}>
              {trade.name}
            </option>
          ))}
        </select>
      </td>
      {figures.map((figure) => (
        <td key={figure.name} className="number">
          <Cell
            figure
            name={`${figure.head}, ${words}`}
            value={row[figure.name]}
            onChange={(value) => onChange({ [figure.name]: value })}
            problem={problem}
            pointers={
              figure.name === 'low'
                ? [`${here}/${figure.pointer}`, `${here}/hoursPerUnit`, here]
                : [`${here}/${figure.pointer}`]
            }
          />
        </td>
      ))}
      <td>
        <input
          type="checkbox"
          className="book-box"
          aria-label={`Bought in whole units, ${words}`}
          checked={row.wholeUnits}
          onChange={(event) => onChange({ wholeUnits: event.target.checked })}
        />
      </td>
      <td>
        <Button look="quiet" onClick={onRemove}>
          Remove <span className="hidden-text">{words}</span>
        </Button>
      </td>
    </tr>
  );
}

type AddItemProps = { items: readonly ItemRow[]; trades: readonly TradeRow[]; onAdd: (row: ItemRow) => void };

function AddItem({ items, trades, onAdd }: AddItemProps) {
  const [chosen, setChosen] = useState('');
  const missing = OPERATIONS.filter(({ id, unit }) => !items.some((row) => row.operation === id && row.unit === unit));
  if (missing.length === 0) return null;
  const operation = missing.find((each) => each.id === chosen);
  return (
    <div className="inline-form">
      <Select
        label="Work without a rate"
        options={missing.map(({ id, title, unit }) => ({ value: id, label: `${title.en}, per ${unitWords(unit)}` }))}
        value={operation ? chosen : ''}
        onChange={setChosen}
      />
      <Button
        disabled={!operation}
        onClick={() => operation && onAdd(emptyItem(operation.id, operation.unit, trades[0]?.id ?? ''))}
      >
        Add its rate
      </Button>
    </div>
  );
}
