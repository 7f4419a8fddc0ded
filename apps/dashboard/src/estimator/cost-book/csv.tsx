import { type CostBook as Answer, routes } from '@underlath/contract';
import { COLUMNS } from '@underlath/rules/pricing';
import { type ChangeEvent, useId } from 'react';
import { addressOf } from '../../shared/api/call.ts';
import { problemOf } from '../../shared/api/errors.ts';
import { useChange } from '../../shared/api/hooks.ts';
import { Button, buttonClass } from '../../shared/ui/button.tsx';
import { FormFail } from '../desk/form-fail.tsx';
import { Part } from '../desk/page.tsx';
import { bookReads } from '../desk/words.ts';
import { BookChanges } from './changes.tsx';

type CsvProps = { editor: boolean; unsaved: boolean; onSaved: (saved: Answer) => void };

/** The book as a file, and a file as the book: first what it would change, then, if it is wanted, a new version. */
export function BookCsv({ editor, unsaved, onSaved }: CsvProps) {
  const id = useId();
  const preview = useChange(routes.previewCostBookCsv);
  const save = useChange(routes.saveCostBook, {
    invalidates: bookReads,
    onDone: (saved) => {
      preview.reset();
      onSaved(saved);
    },
  });
  async function choose({ target }: ChangeEvent<HTMLInputElement>) {
    const file = target.files?.[0];
    if (!file) return;
    save.reset();
    const csv = await file.text();
    // The same file can be chosen again after it was mended.
    target.value = '';
    preview.mutate({ body: { csv } });
  }
  const found = preview.data;
  const error = preview.error ?? save.error;
  return (
    <Part
      title="As a spreadsheet file (CSV)"
      lead="Comma-separated, UTF-8, a decimal point and no thousands comma or dollar sign. The header names the unit of each column. A file replaces the whole book: rows that are not in it are removed."
    >
      <div className="row">
        <a className={buttonClass('plain')} href={addressOf(routes.exportCostBook, {})} download>
          Download the saved book
        </a>
        {editor && (
          <>
            <label className="field-label" htmlFor={id}>
              Compare a file with the saved book
            </label>
            <input id={id} className="input book-file" type="file" accept=".csv,text/csv" onChange={choose} />
          </>
        )}
      </div>
      <Columns />
      <FormFail
        problem={error ? problemOf(error) : null}
        doing={save.error ? 'Saving the file as a version' : 'Reading the file'}
      />
      {found && (
        <div className="book-preview">
          <h3>What the file would change in version {found.version}</h3>
          <BookChanges changes={found.changes} />
          {unsaved && found.changes.length > 0 && (
            <p className="notice">What you typed above and did not save would be dropped.</p>
          )}
          <div className="row">
            {found.changes.length > 0 && (
              <Button
                busy={save.isPending}
                onClick={() => save.mutate({ body: { book: found.book }, ifMatch: found.version })}
              >
                Save the file as version {found.version + 1}
              </Button>
            )}
            <Button look="quiet" onClick={() => preview.reset()}>
              Leave it
            </Button>
          </div>
        </div>
      )}
    </Part>
  );
}

/** The columns of the file, told by what reads them. */
function Columns() {
  return (
    <details className="book-columns">
      <summary>The columns of the file</summary>
      <p className="soft prose">
        Each row says in its first column what it is about. A column that is not of its kind stays empty. A cell that a
        spreadsheet would run as a formula is written with an apostrophe in front, which is taken off again.
      </p>
      <div className="table-scroll">
        <table className="table">
          <caption className="hidden-text">The columns of the file</caption>
          <thead>
            <tr>
              <th scope="col">Column</th>
              <th scope="col">In rows</th>
              <th scope="col">Allowed</th>
            </tr>
          </thead>
          <tbody>
            {COLUMNS.map(({ name, fields, form }) => (
              <tr key={name}>
                <th scope="row">{name}</th>
                <td>{Object.keys(fields).join(', ')}</td>
                <td>{form.allowed}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </details>
  );
}
