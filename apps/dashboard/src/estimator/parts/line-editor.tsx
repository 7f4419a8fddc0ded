import type { Estimate, Problem } from '@underlath/contract';
import { useState } from 'react';
import { Button } from '../../shared/ui/button.tsx';
import { Money } from '../../shared/ui/money.tsx';
import type { Row } from './book-draft.ts';
import { BookGrid, type Edit } from './book-grid.tsx';
import { type EstimateDraft, emptyManual, isManual, withEdits, withoutOverride, withPasted } from './estimate-draft.ts';
import { byHandWords, lineColumns, lineError, lineRows, setByHand } from './line-columns.ts';
import { LineList } from './line-list.tsx';
import { useNarrow } from './use-narrow.ts';

type Change = (make: (draft: EstimateDraft) => EstimateDraft) => void;
type LineEditorProps = { draft: EstimateDraft; change: Change; scope: Estimate['scope']; problem: Problem | null };

/** Every line of the estimate in one grid, and how the line that is active came about; on a phone, as a list. */
export function LineEditor({ draft, change, scope, problem }: LineEditorProps) {
  const [activeKey, setActiveKey] = useState<string | null>(null);
  const [addedKey, setAddedKey] = useState<string | null>(null);
  const narrow = useNarrow();
  const rows = lineRows(draft, scope);
  const active = rows.find(({ key }) => key === activeKey) ?? rows[0];
  const onEdit = (edits: Edit[]) => change((old) => withEdits(old, rows, edits));
  const errorOf = (row: Row, column: string) => lineError(problem, draft, row, column);
  const add = (kind: string) => {
    const row = emptyManual(kind);
    setAddedKey(row.key);
    change((old) => ({ ...old, manual: [...old.manual, row] }));
  };
  const paste = (row: Row, column: string, block: string[][]) => {
    if (!isManual(row)) return false;
    change((old) => ({ ...old, manual: withPasted(old.manual, row.key, column, block) }));
    return true;
  };
  const reason = (row: Row) => <LineReason row={row} draft={draft} scope={scope} change={change} />;
  return (
    <>
      {rows.length === 0 && <p>No lines yet. Choose a repair above, or add a line of your own.</p>}
      {rows.length > 0 && !narrow && (
        <BookGrid
          label="Lines of the estimate"
          columns={lineColumns}
          rows={rows}
          errorOf={(row, column) => (rows[row] ? errorOf(rows[row], column) : undefined)}
          onEdit={onEdit}
          onActiveRow={setActiveKey}
          goToKey={addedKey}
          onPasteBlock={paste}
        />
      )}
      {narrow && <LineList rows={rows} errorOf={errorOf} onEdit={onEdit} reasonOf={reason} />}
      <div className="row grid-foot">
        <Button onClick={() => add('charge')}>Add a line</Button>
        <Button onClick={() => add('credit')}>Add a credit</Button>
        <Button onClick={() => add('allowance')}>Add an allowance</Button>
      </div>
      {!narrow && active && reason(active)}
    </>
  );
}

type LineReasonProps = { row: Row; draft: EstimateDraft; scope: Estimate['scope']; change: Change };

/** How a line came about, what of it is by hand, and the way back. */
function LineReason({ row, draft, scope, change }: LineReasonProps) {
  const { operation = '', name = '' } = row;
  const manualAt = draft.manual.findIndex(({ key }) => key === row.key);
  const line = isManual(row)
    ? scope.lines.filter((one) => one.operation === 'manual')[manualAt]
    : scope.lines.find((one) => one.operation === operation);
  const byHand = setByHand(row).length > 0;
  return (
    <section className="line-reason" aria-label={`How “${name || 'the line without a name'}” came about`}>
      <h3>{name || 'Line without a name'}</h3>
      {byHand && <p className="by-hand">By hand: {byHandWords(row)}</p>}
      {line ? (
        <>
          <ol className="numbered">
            {line.steps.map((step) => (
              <li key={step.en}>{step.en}</li>
            ))}
          </ol>
          <p>
            Line total <Money cents={line.totalCents} />
          </p>
        </>
      ) : (
        <p>
          {isManual(row)
            ? 'It is counted once it is complete.'
            : 'The cost book has no rate for it. It is a gap and not counted as zero: type the rate over the line, or add it to the cost book.'}
        </p>
      )}
      {byHand && (
        <Button onClick={() => change((old) => withoutOverride(old, operation))}>
          Back to what was measured and the book
        </Button>
      )}
      {isManual(row) && (
        <Button onClick={() => change((old) => ({ ...old, manual: old.manual.filter(({ key }) => key !== row.key) }))}>
          Remove “{name || 'the line without a name'}”
        </Button>
      )}
    </section>
  );
}
