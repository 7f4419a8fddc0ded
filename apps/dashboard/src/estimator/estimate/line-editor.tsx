import type { Problem } from '@underlath/contract';
import { useState } from 'react';
import { Button } from '../../shared/ui/button.tsx';
import { Money } from '../../shared/ui/money.tsx';
import { useNarrow } from '../desk/use-narrow.ts';
import { BookGrid, type Edit } from '../grid/grid.tsx';
import type { Row } from '../grid/row.ts';
import { emptyManual, isManual, type WorkDraft, withEdits, withoutOverride, withPasted } from './draft.ts';
import { byHandWords, cellsSetByHand, lineColumns, lineError, lineRows, type PricedLines } from './line-columns.ts';
import { LineList } from './line-list.tsx';

type Change<D> = (make: (draft: D) => D) => void;
type LineEditorProps<D extends WorkDraft> = {
  draft: D;
  change: Change<D>;
  /** What the lines came to; without it only lines of one's own are shown. */
  scope: PricedLines | undefined;
  problem: Problem | null;
  /** The other way whose lines they are, and its pointer within the estimate. */
  of?: { name: string; pointer: string };
};

const adds = [
  ['charge', 'Add a line'],
  ['credit', 'Add a credit'],
  ['allowance', 'Add an allowance'],
] as const;

const unpriced: PricedLines = { lines: [], gaps: [] };

/** Every line of the work in one grid, and how the line that is active came about; on a phone, as a list. */
export function LineEditor<D extends WorkDraft>({ draft, change, scope = unpriced, problem, of }: LineEditorProps<D>) {
  const [activeKey, setActiveKey] = useState<string | null>(null);
  const [addedKey, setAddedKey] = useState<string | null>(null);
  const narrow = useNarrow();
  const rows = lineRows(draft, scope);
  const active = rows.find(({ key }) => key === activeKey) ?? rows[0];
  const onEdit = (edits: Edit[]) => change((old) => withEdits(old, rows, edits));
  const errorOf = (row: Row, column: string) => lineError(problem, draft, { row, column, at: of?.pointer ?? '' });
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
          label={`Lines of ${of?.name ?? 'the estimate'}`}
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
        {adds.map(([kind, words]) => (
          <Button key={kind} onClick={() => add(kind)}>
            {words}
            {of && <span className="hidden-text"> to {of.name}</span>}
          </Button>
        ))}
      </div>
      {!narrow && active && reason(active)}
    </>
  );
}

type LineReasonProps<D extends WorkDraft> = { row: Row; draft: D; scope: PricedLines; change: Change<D> };

/** How a line came about, what of it is by hand, and the way back. */
function LineReason<D extends WorkDraft>({ row, draft, scope, change }: LineReasonProps<D>) {
  const { operation = '', name = '' } = row;
  const manualAt = draft.manual.findIndex(({ key }) => key === row.key);
  const line = isManual(row)
    ? scope.lines.filter((one) => one.operation === 'manual')[manualAt]
    : scope.lines.find((one) => one.operation === operation);
  const byHand = cellsSetByHand(row).length > 0;
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
