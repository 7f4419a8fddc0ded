import { type CostBook as Answer, routes } from '@underlath/contract';
import { type CostBook, compareBooks } from '@underlath/rules/pricing';
import { useState } from 'react';
import { problemOf } from '../../shared/api/errors.ts';
import { useChange, useRoute } from '../../shared/api/hooks.ts';
import { Button } from '../../shared/ui/button.tsx';
import { Stamp } from '../../shared/ui/stamp.tsx';
import { FormFail } from '../desk/form-fail.tsx';
import { Part } from '../desk/page.tsx';
import { Reading } from '../desk/reading.tsx';
import { bookReads } from '../desk/words.ts';
import { BookChanges } from './changes.tsx';

type VersionsProps = { newest: number; editor: boolean; onSaved: (saved: Answer) => void };

/** Who saved what and when; each beside the one before, and the way back. */
export function BookVersions({ newest, editor, onSaved }: VersionsProps) {
  const versions = useRoute(routes.listCostBooks, {});
  const [open, setOpen] = useState<number | null>(null);
  return (
    <Part title="Versions" lead="A version never changes. Going back saves the old rates as a new version.">
      <Reading query={versions} doing="Reading the versions" rows={2}>
        {({ items }) =>
          items.length === 0 ? (
            <p>None was saved yet. The starter values stand in.</p>
          ) : (
            <ul className="plain-rows book-versions">
              {items.map((each) => (
                <li key={each.version}>
                  <span>
                    <b>Version {each.version}</b>
                    {each.placeholder && ', with invented starter values'}
                  </span>
                  <span className="soft">
                    <Stamp at={each.createdAt} look="day-time" />
                    {each.createdBy && `, ${each.createdBy.name}`}
                  </span>
                  <Button
                    look="quiet"
                    aria-expanded={open === each.version}
                    onClick={() => setOpen(open === each.version ? null : each.version)}
                  >
                    {open === each.version ? 'Close' : 'What it changed'}
                    <span className="hidden-text">, version {each.version}</span>
                  </Button>
                  {open === each.version && (
                    <Opened version={each.version} newest={newest} editor={editor} onSaved={onSaved} />
                  )}
                </li>
              ))}
            </ul>
          )
        }
      </Reading>
    </Part>
  );
}

type OpenedProps = VersionsProps & { version: number };

function Opened({ version, newest, editor, onSaved }: OpenedProps) {
  const is = useRoute(routes.getCostBookVersion, { params: { bookVersion: version } });
  const was = useRoute(routes.getCostBookVersion, { params: { bookVersion: version - 1 } });
  const back = useChange(routes.saveCostBook, { invalidates: bookReads, onDone: onSaved });
  // A version is only ever saved after it was read by the book's schema.
  const bookOf = (answer: Answer) => answer.book as unknown as CostBook;
  return (
    <div className="book-version-open">
      <h3>{version === 1 ? 'Against the starter values' : `Against version ${version - 1}`}</h3>
      <Reading query={was} doing="Reading the version before" rows={3}>
        {(before) => (
          <Reading query={is} doing="Reading the version" rows={3}>
            {(answer) => (
              <>
                <BookChanges
                  changes={compareBooks(bookOf(before), bookOf(answer)).map((change) => ({
                    ...change,
                    cells: [...change.cells],
                  }))}
                />
                <FormFail problem={back.error ? problemOf(back.error) : null} doing="Going back" />
                {editor && version !== newest && (
                  <p>
                    <Button
                      busy={back.isPending}
                      onClick={() => back.mutate({ body: { book: answer.book }, ifMatch: newest })}
                    >
                      Go back to version {version}, as version {newest + 1}
                    </Button>
                  </p>
                )}
              </>
            )}
          </Reading>
        )}
      </Reading>
    </div>
  );
}
