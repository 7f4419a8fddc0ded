import { type KeyboardEvent, type ReactNode, useMemo, useState } from 'react';
import { useT } from '../i18n/locale.tsx';
import { commonWords } from '../i18n/messages/common.ts';
import './ui.css';

export type TableColumn<Row> = {
  key: string;
  head: string;
  cell: (row: Row) => ReactNode;
  /** Right-aligned, tabular figures. */
  number?: boolean;
  /** Makes the column sortable. */
  sortBy?: (row: Row) => number | string;
  foot?: ReactNode;
  /** Left out on a phone. */
  wideOnly?: boolean;
};

type DataTableProps<Row> = {
  /** Says what the table lists; hidden unless `captionShown`. */
  caption: string;
  captionShown?: boolean;
  columns: readonly TableColumn<Row>[];
  rows: readonly Row[];
  rowKey: (row: Row) => string;
  /** Turns the first cell into a button that opens the row; arrow keys then walk the rows. */
  onOpen?: (row: Row) => void;
  openKey?: string | null;
  initialSort?: { key: string; down?: boolean };
  /** Shown in the table's place when there is nothing to list. */
  empty?: ReactNode;
};

type Sort = { key: string; down: boolean };

/** Orders rows by a column; equal rows keep the order they came in. */
export function sortRows<Row>(rows: readonly Row[], columns: readonly TableColumn<Row>[], sort: Sort | null): Row[] {
  const sortBy = columns.find((column) => column.key === sort?.key)?.sortBy;
  if (!sort || !sortBy) return [...rows];
  return rows.toSorted((a, b) => {
    const [x, y] = [sortBy(a), sortBy(b)];
    const order =
      typeof x === 'number' && typeof y === 'number'
        ? x - y
        : String(x).localeCompare(String(y), 'en', { numeric: true });
    return sort.down ? -order : order;
  });
}

function walkRows(event: KeyboardEvent<HTMLTableSectionElement>) {
  if (event.key !== 'ArrowDown' && event.key !== 'ArrowUp') return;
  const openers = [...event.currentTarget.querySelectorAll<HTMLElement>('.row-open')];
  const at = openers.indexOf(document.activeElement as HTMLElement);
  if (at < 0) return;
  event.preventDefault();
  openers[at + (event.key === 'ArrowDown' ? 1 : -1)]?.focus();
}

/** A ruled table: sortable heads, figures to the right, totals in the foot. */
export function DataTable<Row>(props: DataTableProps<Row>) {
  const { caption, captionShown, columns, rows, rowKey, onOpen, openKey, initialSort, empty } = props;
  const [sort, setSort] = useState<Sort | null>(initialSort ? { down: false, ...initialSort } : null);
  const sorted = useMemo(() => sortRows(rows, columns, sort), [rows, columns, sort]);
  if (rows.length === 0 && empty) return empty;
  const hasFoot = columns.some((column) => column.foot !== undefined);
  return (
    <div className="table-scroll">
      <table className="table">
        <caption className={captionShown ? undefined : 'hidden-text'}>{caption}</caption>
        <thead>
          <tr>
            {columns.map((column) => (
              <HeadCell key={column.key} column={column} sort={sort} onSort={setSort} />
            ))}
          </tr>
        </thead>
        <tbody onKeyDown={walkRows}>
          {sorted.map((row) => (
            <tr key={rowKey(row)} className={openKey === rowKey(row) ? 'row-on' : undefined}>
              {columns.map((column, at) => (
                <td key={column.key} className={cellClass(column)}>
                  {at === 0 && onOpen ? (
                    <button
                      type="button"
                      className="row-open"
                      aria-current={openKey === rowKey(row) || undefined}
                      onClick={() => onOpen(row)}
                    >
                      {column.cell(row)}
                    </button>
                  ) : (
                    column.cell(row)
                  )}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
        {hasFoot && (
          <tfoot>
            <tr>
              {columns.map((column) => (
                <td key={column.key} className={cellClass(column)}>
                  {column.foot}
                </td>
              ))}
            </tr>
          </tfoot>
        )}
      </table>
    </div>
  );
}

function cellClass<Row>(column: TableColumn<Row>): string | undefined {
  return [column.number ? 'number' : '', column.wideOnly ? 'wide-only' : ''].filter(Boolean).join(' ') || undefined;
}

function HeadCell<Row>({
  column,
  sort,
  onSort,
}: {
  column: TableColumn<Row>;
  sort: Sort | null;
  onSort: (sort: Sort) => void;
}) {
  const t = useT(commonWords);
  const on = sort?.key === column.key ? sort : null;
  if (!column.sortBy) {
    return (
      <th scope="col" className={cellClass(column)}>
        {column.head}
      </th>
    );
  }
  return (
    <th scope="col" className={cellClass(column)} aria-sort={on ? (on.down ? 'descending' : 'ascending') : undefined}>
      <button
        type="button"
        className="sort"
        onClick={() => onSort({ key: column.key, down: on ? !on.down : false })}
        title={on ? t(on.down ? 'sortedDown' : 'sortedUp') : undefined}
      >
        {column.head}
        <span aria-hidden="true" className="sort-arrow">
          {on ? (on.down ? '↓' : '↑') : ''}
        </span>
      </button>
    </th>
  );
}
