import type { Problem } from '@underlath/contract';
import { missingOperations } from '@underlath/rules/pricing';
import { type ReactNode, useMemo, useState } from 'react';
import { v7 } from 'uuid';
import { Button } from '../../shared/ui/button.tsx';
import { Select } from '../../shared/ui/field.tsx';
import { errorAt } from '../../shared/ui/states.tsx';
import { Part } from '../desk/page.tsx';
import { plural, unitWords } from '../desk/words.ts';
import { shownIn } from '../grid/column.ts';
import { BookGrid, type Edit } from '../grid/grid.tsx';
import type { Row } from '../grid/row.ts';
import { type BookColumn, feeColumns, itemColumns, partColumns, tradeColumns } from './columns.ts';
import { type BookDraft, emptyItem, freeId, partPointer, readBook, type Table } from './draft.ts';

type Change = (make: (draft: BookDraft) => BookDraft) => void;
type TablesProps = { draft: BookDraft; change: Change; problem: Problem | null };

const withRow = (table: Table, row: Row) => (draft: BookDraft) => ({ ...draft, [table]: [...draft[table], row] });
const withEdits = (table: Table, edits: readonly Edit[]) => (draft: BookDraft) => ({
  ...draft,
  [table]: draft[table].map((row) => {
    const own = edits.filter(({ key }) => key === row.key);
    return own.length === 0 ? row : { ...row, ...Object.fromEntries(own.map(({ column, value }) => [column, value])) };
  }),
});

/** The four tables of a cost book. */
export function BookTables({ draft, change, problem }: TablesProps) {
  const addTrade = () =>
    change((old) => withRow('trades', { ...blank, id: freeId(old.trades, 'trade'), wage: '', burden: '0' })(old));
  const addFee = () => change((old) => withRow('fees', { ...blank, id: freeId(old.fees, 'fee'), price: '' })(old));
  const blank = { key: v7(), name: '' };
  return (
    <>
      <TablePart
        title="Trades"
        lead="What an hour costs is the wage with its burden: taxes, insurance and benefits. The last column is worked out."
        table="trades"
        columns={tradeColumns(draft)}
        pointer={(at) => `/book/trades/${at}`}
        {...{ draft, change, problem }}
      >
        <Button onClick={addTrade}>Add a trade</Button>
      </TablePart>
      <TablePart
        title="What the burden is made of"
        lead="A trade that has parts here takes their sum as its burden."
        table="parts"
        columns={partColumns(draft)}
        pointer={(at) => partPointer(draft, at)}
        {...{ draft, change, problem }}
      >
        <Button onClick={() => change(withRow('parts', { ...blank, trade: draft.trades[0]?.id ?? '', pct: '' }))}>
          Add a part
        </Button>
      </TablePart>
      <TablePart
        title="Work, per unit"
        lead="Hours and material left empty are not known yet: they show as gaps in a price and are never counted as zero. Tax on a purchase is a cost of yours; tax on a sale is taken on the selling price and carries no overhead or profit."
        table="items"
        columns={itemColumns(draft)}
        pointer={(at) => `/book/items/${at}`}
        {...{ draft, change, problem }}
      >
        <AddItem draft={draft} change={change} />
      </TablePart>
      <TablePart
        title="Fees"
        lead="A fee is charged once for each unit of the work that names it."
        table="fees"
        columns={feeColumns(draft)}
        pointer={(at) => `/book/fees/${at}`}
        {...{ draft, change, problem }}
      >
        <Button onClick={addFee}>Add a fee</Button>
      </TablePart>
    </>
  );
}

type TablePartProps = TablesProps & {
  title: string;
  lead: string;
  table: Table;
  columns: readonly BookColumn[];
  pointer: (row: number) => string;
  children: ReactNode;
};

function TablePart({ title, lead, table, columns, pointer, draft, change, problem, children }: TablePartProps) {
  const [activeKey, setActiveKey] = useState<string | null>(null);
  const rows = draft[table];
  const active = rows.find(({ key }) => key === activeKey) ?? rows[0];
  const [first] = columns;
  const name = active && first ? shownIn(first, active) : '';
  const errorOf = (row: number, id: string) => {
    const at = pointer(row);
    const fields = columns.find((column) => column.id === id)?.fields ?? [];
    return fields.map((field) => errorAt(problem, field === '' ? at : `${at}/${field}`)).find(Boolean);
  };
  return (
    <Part title={title} lead={lead}>
      {rows.length > 0 && (
        <BookGrid
          label={title}
          columns={columns}
          rows={rows}
          errorOf={errorOf}
          onEdit={(edits) => change(withEdits(table, edits))}
          onActiveRow={setActiveKey}
        />
      )}
      <div className="row grid-foot">
        {children}
        {active && (
          <Button
            look="quiet"
            onClick={() => change((old) => ({ ...old, [table]: old[table].filter(({ key }) => key !== active.key) }))}
          >
            Remove “{name || 'the row without a name'}”
          </Button>
        )}
      </div>
    </Part>
  );
}

function AddItem({ draft, change }: { draft: BookDraft; change: Change }) {
  const [chosen, setChosen] = useState('');
  const missing = useMemo(() => missingOperations(readBook(draft).book), [draft]);
  if (missing.length === 0) return null;
  const operation = missing.find((each) => each.id === chosen);
  return (
    <div className="inline-form">
      <Select
        label={`Work without a rate (${plural(missing.length, 'kind')})`}
        options={missing.map(({ id, title, unit }) => ({ value: id, label: `${title.en}, per ${unitWords(unit)}` }))}
        value={operation ? chosen : ''}
        onChange={setChosen}
      />
      <Button
        disabled={!operation}
        onClick={() =>
          operation && change(withRow('items', emptyItem(operation.id, operation.unit, draft.trades[0]?.id ?? '')))
        }
      >
        Add its rate
      </Button>
    </div>
  );
}
