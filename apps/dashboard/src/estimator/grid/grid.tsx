import { type ClipboardEvent, type KeyboardEvent, useEffect, useRef, useState } from 'react';
import { useAnnounce } from '../../shared/ui/status.tsx';
import { type GridColumn, shownIn, valueFor } from './column.ts';
import { type Editing, GridRow } from './grid-row.tsx';
import { type At, blockOf, moved, stepped } from './moves.ts';
import type { Row } from './row.ts';
import './grid.css';

export type Edit = { readonly key: string; readonly column: string; readonly value: string };

type BookGridProps = {
  label: string;
  columns: readonly GridColumn[];
  rows: readonly Row[];
  errorOf: (row: number, column: string) => string | undefined;
  onEdit: (edits: Edit[]) => void;
  onActiveRow?: (key: string) => void;
  /** The row to go to when it changes: one that was just added. */
  goToKey?: string | null;
  /** Takes a pasted block in another way than cell by cell; answers whether it did. */
  onPasteBlock?: (row: Row, column: string, block: string[][]) => boolean;
};

const isTyping = ({ key, ctrlKey, metaKey, altKey }: KeyboardEvent) =>
  [...key].length === 1 && key !== ' ' && !ctrlKey && !metaKey && !altKey;

/**
 * Rows and columns worked like a spreadsheet, after the grid pattern of ARIA: one cell is in the tab order, arrows move,
 * typing replaces, Enter or F2 edits, Escape gives up, Enter and Tab take what was typed and go on, a pasted block fills
 * the cells from the active one on.
 */
export function BookGrid({ label, columns, rows, errorOf, onEdit, onActiveRow, goToKey, onPasteBlock }: BookGridProps) {
  const announce = useAnnounce();
  const ref = useRef<HTMLTableElement>(null);
  const [at, setAt] = useState<At>({ row: 0, column: 0 });
  const [editing, setEditing] = useState<Editing | null>(null);
  const [toFocus, setToFocus] = useState(0);
  const size = { rows: rows.length, columns: columns.length };
  const active = { row: Math.min(at.row, Math.max(0, rows.length - 1)), column: at.column };
  const [row, column] = [rows[active.row], columns[active.column]];

  useEffect(() => {
    if (toFocus > 0) ref.current?.querySelector<HTMLElement>('[data-active]')?.focus();
  }, [toFocus]);

  const goTo = (next: At) => {
    setAt(next);
    setEditing(null);
    setToFocus((count) => count + 1);
    const key = rows[next.row]?.key;
    if (key) onActiveRow?.(key);
  };
  // biome-ignore lint/correctness/useExhaustiveDependencies: goes there once for each new row
  useEffect(() => {
    const added = rows.findIndex(({ key }) => key === goToKey);
    if (goToKey && added >= 0) goTo({ row: added, column: 0 });
  }, [goToKey]);
  const edit = (start: string | null) => {
    if (!row || !column || column.fixed?.(row)) return;
    setEditing({ text: start ?? row[column.id] ?? '', replaced: start !== null });
  };
  /** Without a next cell the focus has gone elsewhere already, and stays there. */
  const take = (text: string, next: At | null) => {
    if (row && column && text !== (row[column.id] ?? ''))
      onEdit([{ key: row.key, column: column.id, value: valueFor(column, text) }]);
    if (next) goTo(next);
    else setEditing(null);
  };

  function onKeyDown(event: KeyboardEvent) {
    if (editing || !row || !column) return;
    const next = moved(active, event.key, event.ctrlKey || event.metaKey, size);
    if (next) goTo(next);
    else if (event.key === 'Enter' || event.key === 'F2' || event.key === ' ') edit(null);
    else if (event.key === 'Delete' || event.key === 'Backspace') clear();
    else if (isTyping(event)) typeInto(event.key);
    else return;
    event.preventDefault();
  }
  function clear() {
    if (row && column && !column.fixed?.(row)) onEdit([{ key: row.key, column: column.id, value: '' }]);
  }
  /** In a choice the first letter picks; elsewhere it starts a new text. */
  function typeInto(letter: string) {
    if (!row || !column || column.fixed?.(row)) return;
    const option = column.options?.find((each) => each.label.toLowerCase().startsWith(letter.toLowerCase()));
    if (!column.options) edit(letter);
    else if (option) onEdit([{ key: row.key, column: column.id, value: option.value }]);
  }
  function onPaste(event: ClipboardEvent) {
    if (editing || !row) return;
    event.preventDefault();
    const block = blockOf(event.clipboardData.getData('text/plain'));
    if (column && onPasteBlock?.(row, column.id, block)) {
      announce(`Pasted ${block.length} ${block.length === 1 ? 'line' : 'lines'}.`);
      return;
    }
    const edits = block.flatMap((cells, down) =>
      cells.flatMap((value, right): Edit[] => {
        const [into, under] = [rows[active.row + down], columns[active.column + right]];
        if (!into || !under || under.fixed?.(into)) return [];
        return [{ key: into.key, column: under.id, value: valueFor(under, value) }];
      }),
    );
    const outside = block.reduce((sum, cells) => sum + cells.length, 0) - edits.length;
    if (edits.length > 0) onEdit(edits);
    announce(`Pasted ${edits.length} cells${outside > 0 ? `; ${outside} had no cell to go to` : ''}.`);
  }
  function onCopy(event: ClipboardEvent) {
    if (editing || !row || !column) return;
    event.clipboardData.setData('text/plain', shownIn(column, row));
    event.preventDefault();
  }

  return (
    <div className="book-grid">
      <table
        // biome-ignore lint/a11y/noNoninteractiveElementToInteractiveRole: a table that is worked like a spreadsheet is ARIA's grid
        role="grid"
        ref={ref}
        className="table"
        aria-label={label}
        aria-rowcount={rows.length + 1}
        aria-colcount={columns.length}
        onKeyDown={onKeyDown}
        onPaste={onPaste}
        onCopy={onCopy}
      >
        <thead>
          <tr>
            {columns.map(({ id, head, figure }) => (
              <th key={id} scope="col" className={figure ? 'number' : undefined}>
                {head}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map((each, index) => (
            <GridRow
              key={each.key}
              row={each}
              columns={columns}
              active={index === active.row ? active.column : null}
              editing={index === active.row ? editing : null}
              errorOf={(id) => errorOf(index, id)}
              onPick={(columnAt) =>
                index === active.row && columnAt === active.column ? edit(null) : goTo({ row: index, column: columnAt })
              }
              onFocus={(columnAt) => {
                setAt({ row: index, column: columnAt });
                onActiveRow?.(each.key);
              }}
              onText={(text) => setEditing({ text, replaced: true })}
              onGiveUp={() => goTo(active)}
              onTake={(text, by) => take(text, by === 'stay' ? null : nextOf(by))}
            />
          ))}
        </tbody>
      </table>
    </div>
  );

  function nextOf(by: 'down' | 'up' | 'right' | 'left'): At {
    if (by === 'right' || by === 'left') return stepped(active, by === 'right' ? 1 : -1, size);
    return moved(active, by === 'down' ? 'ArrowDown' : 'ArrowUp', false, size) ?? active;
  }
}
