import { type FormEvent, type ReactNode, useId, useState } from 'react';
import { Button } from '../../shared/ui/button.tsx';
import { Dialog } from '../../shared/ui/dialog.tsx';
import { Select, TextInput } from '../../shared/ui/field.tsx';
import { unitWords } from '../desk/words.ts';
import type { GridColumn } from '../grid/column.ts';
import type { Edit } from '../grid/grid.tsx';
import type { Row } from '../grid/row.ts';
import { byHandWords, cellsSetByHand, lineColumns } from './line-columns.ts';

type LineListProps = {
  rows: readonly Row[];
  errorOf: (row: Row, column: string) => string | undefined;
  onEdit: (edits: Edit[]) => void;
  reasonOf: (row: Row) => ReactNode;
};

/** The lines where a grid does not fit: each opens to how it came about and to a form with the same cells. */
export function LineList({ rows, errorOf, onEdit, reasonOf }: LineListProps) {
  const [changing, setChanging] = useState<string | null>(null);
  const open = rows.find(({ key }) => key === changing);
  return (
    <>
      <ul className="line-list">
        {rows.map((row) => {
          const errors = lineColumns.flatMap(({ id }) => errorOf(row, id) ?? []);
          return (
            <li key={row.key}>
              <p className="line-head">
                <b>{row.name || 'Line without a name'}</b>
                <span className="money">{row.total}</span>
              </p>
              <p className="soft">
                {row.quantity} {unitWords(row.unit ?? '')}
                {row.kind && row.kind !== 'charge' && `, ${row.kind}`}
              </p>
              {cellsSetByHand(row).length > 0 && <p className="by-hand">By hand: {byHandWords(row)}</p>}
              {errors.map((error) => (
                <p key={error} className="field-error">
                  {error}
                </p>
              ))}
              <details className="more">
                <summary>How it came about</summary>
                {reasonOf(row)}
              </details>
              {row.type !== 'no-item' && (
                <Button onClick={() => setChanging(row.key)}>
                  Change<span className="hidden-text"> {row.name}</span>
                </Button>
              )}
            </li>
          );
        })}
      </ul>
      {open && (
        <LineDialog
          row={open}
          errorOf={(column) => errorOf(open, column)}
          onEdit={onEdit}
          onClose={() => setChanging(null)}
        />
      )}
    </>
  );
}

type LineDialogProps = {
  row: Row;
  errorOf: (column: string) => string | undefined;
  onEdit: (edits: Edit[]) => void;
  onClose: () => void;
};

/** The cells of one line as a form. What does not fit is said here and in the list, and stays as it was typed. */
function LineDialog({ row, errorOf, onEdit, onClose }: LineDialogProps) {
  const formId = useId();
  const [cells, setCells] = useState<Record<string, string>>({});
  const columns = lineColumns.filter((column) => !column.fixed?.(row));
  function submit(event: FormEvent) {
    event.preventDefault();
    const edits = Object.entries(cells).map(([column, value]) => ({ key: row.key, column, value }));
    if (edits.length > 0) onEdit(edits);
    onClose();
  }
  return (
    <Dialog
      open
      title={row.name || 'Line without a name'}
      onClose={onClose}
      actions={
        <>
          <Button onClick={onClose}>Cancel</Button>
          <Button look="go" type="submit" form={formId}>
            Take it
          </Button>
        </>
      }
    >
      <form id={formId} className="stack" onSubmit={submit} noValidate>
        {columns.map((column) => (
          <CellField
            key={column.id}
            column={column}
            value={cells[column.id] ?? row[column.id] ?? ''}
            error={column.id in cells ? undefined : errorOf(column.id)}
            was={row[`base.${column.id}`]}
            onChange={(value) => setCells({ ...cells, [column.id]: value })}
          />
        ))}
      </form>
    </Dialog>
  );
}

type CellFieldProps = {
  column: GridColumn;
  value: string;
  error: string | undefined;
  was: string | undefined;
  onChange: (value: string) => void;
};

function CellField({ column, value, error, was, onChange }: CellFieldProps) {
  if (column.options)
    return <Select label={column.head} options={column.options} value={value} error={error} onChange={onChange} />;
  const hint =
    was !== undefined && was !== value ? `Without you: ${was || 'not in the book'}. Empty brings it back.` : '';
  return (
    <TextInput
      label={column.head}
      value={value}
      error={error}
      hint={hint}
      inputMode={column.figure ? 'decimal' : undefined}
      onChange={onChange}
    />
  );
}
