import { type KeyboardEvent, useEffect, useId, useRef } from 'react';
import { type GridColumn, shownIn } from './column.ts';
import type { Row } from './row.ts';

/** What is in the editor of the active cell; `replaced` when it no longer is what the cell held. */
export type Editing = { readonly text: string; readonly replaced: boolean };
export type Way = 'down' | 'up' | 'right' | 'left' | 'stay';

type GridRowProps = {
  row: Row;
  columns: readonly GridColumn[];
  /** The active column, when this is the active row. */
  active: number | null;
  editing: Editing | null;
  errorOf: (column: string) => string | undefined;
  onPick: (column: number) => void;
  onFocus: (column: number) => void;
  onText: (text: string) => void;
  onTake: (text: string, by: Way) => void;
  onGiveUp: () => void;
};

export function GridRow(props: GridRowProps) {
  const { row, columns, active, editing, errorOf, onPick, onFocus } = props;
  const id = useId();
  return (
    <tr>
      {columns.map((column, at) => {
        const isActive = active === at;
        const error = errorOf(column.id);
        const fixed = column.fixed?.(row) ?? false;
        return (
          // biome-ignore lint/a11y/useAriaPropsSupportedByRole: in ARIA's grid both roles may be read-only
          <td
            key={column.id}
            role={at === 0 ? 'rowheader' : 'gridcell'}
            tabIndex={isActive && !editing ? 0 : -1}
            data-active={isActive ? '' : undefined}
            aria-readonly={fixed || undefined}
            aria-invalid={error ? true : undefined}
            aria-describedby={error ? `${id}-${at}` : undefined}
            className={classOf(column, fixed)}
            onMouseDown={(event) => {
              if (isActive && editing) return;
              // The press itself would move the focus away from the editor that it opens.
              event.preventDefault();
              onPick(at);
            }}
            onFocus={(event) => event.target === event.currentTarget && !isActive && onFocus(at)}
          >
            {isActive && editing ? (
              <CellEditor {...props} editing={editing} column={column} />
            ) : (
              <span className="cell-text">{shownIn(column, row)}</span>
            )}
            {error && (
              <span className="cell-error" id={`${id}-${at}`}>
                {error}
              </span>
            )}
          </td>
        );
      })}
    </tr>
  );
}

const classOf = ({ figure, words }: GridColumn, fixed: boolean): string | undefined =>
  [figure && 'number', words && 'cell-words', fixed && 'cell-fixed'].filter(Boolean).join(' ') || undefined;

const ways: Record<string, [plain: Way, shift: Way]> = { Enter: ['down', 'up'], Tab: ['right', 'left'] };

function CellEditor({
  row,
  column,
  columns,
  editing,
  onText,
  onTake,
  onGiveUp,
}: GridRowProps & { editing: Editing; column: GridColumn }) {
  const ref = useRef<HTMLInputElement & HTMLSelectElement>(null);
  const [first] = columns;
  const name = `${column.head}, ${first ? shownIn(first, row) : ''}`;
  // What was typed is taken when the focus leaves for another place, but not when Escape gave it up.
  const done = useRef(false);
  useEffect(() => {
    ref.current?.focus();
    if (ref.current instanceof HTMLInputElement && ref.current.value.length > 1) ref.current.select();
  }, []);
  function onKeyDown(event: KeyboardEvent) {
    const way = ways[event.key]?.[event.shiftKey ? 1 : 0];
    if (!way && event.key !== 'Escape') return;
    event.preventDefault();
    event.stopPropagation();
    done.current = true;
    if (way) onTake(editing.text, way);
    else onGiveUp();
  }
  const common = {
    ref,
    className: 'cell-editor',
    'aria-label': name,
    value: editing.text,
    onKeyDown,
    onBlur: () => {
      if (!done.current) onTake(editing.text, 'stay');
    },
  };
  if (!column.options)
    return (
      <input
        {...common}
        inputMode={column.figure ? 'decimal' : undefined}
        onChange={(event) => onText(event.target.value)}
      />
    );
  const known = column.options.some(({ value }) => value === editing.text);
  return (
    <select {...common} onChange={(event) => onText(event.target.value)}>
      {!known && <option value={editing.text}>{editing.text || 'choose'}</option>}
      {column.options.map(({ value, label }) => (
        <option key={value} value={value}>
          {label}
        </option>
      ))}
    </select>
  );
}
