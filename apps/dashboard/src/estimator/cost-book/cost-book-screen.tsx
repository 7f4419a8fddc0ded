import { type CostBook as Answer, type Problem, routes } from '@underlath/contract';
import { type CostBook, missingOperations, restsOnInvented } from '@underlath/rules/pricing';
import { type FormEvent, useEffect, useMemo, useState } from 'react';
import { problemOf } from '../../shared/api/errors.ts';
import { useChange, useRoute } from '../../shared/api/hooks.ts';
import { useMe } from '../../shared/api/me.ts';
import { Button } from '../../shared/ui/button.tsx';
import { Checkbox } from '../../shared/ui/choice.tsx';
import { Stamp } from '../../shared/ui/stamp.tsx';
import { EmptyState } from '../../shared/ui/states.tsx';
import { useAnnounce } from '../../shared/ui/status.tsx';
import { FormFail } from '../desk/form-fail.tsx';
import { Page, Part } from '../desk/page.tsx';
import { Reading } from '../desk/reading.tsx';
import { undoKey } from '../desk/undo-key.ts';
import { UndoTools } from '../desk/undo-tools.tsx';
import { bookReads, plural } from '../desk/words.ts';
import { BookCsv } from './csv.tsx';
import { draftOfBook, editableBook, readBook, withMissing } from './draft.ts';
import { HoursOfJobs } from './hours-of-jobs.tsx';
import { BookCrew, BookPercents } from './percents.tsx';
import { BookTables } from './tables.tsx';
import { useBookDraft } from './use-book-draft.ts';
import { BookVersions } from './versions.tsx';
import { BookView } from './view.tsx';
import './cost-book.css';

/** The company's rates. Saving makes a new version; what was sent keeps the one it named. */
export function CostBookScreen() {
  const me = useMe();
  const answer = useRoute(routes.getCostBook, {});
  const role = me.data?.member.role;
  const editor = role === 'owner' || (role === 'estimator' && me.data?.company.estimatorsEditCostBook === true);
  return (
    <Page
      title="Cost book"
      wide
      lead={
        answer.data && (
          <p>
            Version {answer.data.version}, <Stamp at={answer.data.createdAt} />
            {answer.data.createdBy && `, by ${answer.data.createdBy.name}`}.
            {!editor && ' The owner of the company changes it.'}
          </p>
        )
      }
    >
      <Reading query={answer} doing="Reading the cost book" rows={10}>
        {(data) => (me.data ? <Book answer={data} editor={editor} companyId={me.data.company.id} /> : null)}
      </Reading>
      <HoursOfJobs />
    </Page>
  );
}

type BookProps = { answer: Answer; editor: boolean; companyId: string };

function Book({ answer, editor, companyId }: BookProps) {
  const book = editableBook(answer.book);
  if (!book) {
    return (
      <EmptyState title="This cost book can’t be shown">
        <p>It was saved by another version of the program, whose tables this one does not know.</p>
      </EmptyState>
    );
  }
  return (
    <>
      {restsOnInvented(book) && (
        <p className="notice">
          <b>Invented starter values.</b>{' '}
          {book.placeholder
            ? book.notice.en
            : 'Some rows still hold invented starter values: those marked so below. Every price that uses one says it.'}
        </p>
      )}
      {editor ? (
        <BookForm answer={answer} book={book} companyId={companyId} />
      ) : (
        <>
          <BookView book={book} />
          <BookCsv editor={false} unsaved={false} onSaved={() => {}} />
          <BookVersions newest={answer.version} editor={false} onSaved={() => {}} />
        </>
      )}
    </>
  );
}

function BookForm({ answer, book, companyId }: { answer: Answer; book: CostBook; companyId: string }) {
  const announce = useAnnounce();
  const state = useBookDraft(companyId, answer.version, () => draftOfBook(book));
  // As it was when Save was pressed: what is mended since is no new alarm.
  const [told, setTold] = useState<Problem | null>(null);
  const { draft, change } = state;
  const read = useMemo(() => readBook(draft), [draft]);
  useEffect(() => {
    if (!read.problem) setTold(null);
  }, [read.problem]);
  const startFrom = (saved: Answer) => {
    const next = editableBook(saved.book);
    if (next) state.startFrom(draftOfBook(next), saved.version);
    setTold(null);
    announce(`Saved as version ${saved.version}. What was sent keeps the version it named.`);
  };
  const save = useChange(routes.saveCostBook, { invalidates: bookReads, onDone: startFrom });
  const refused = save.error ? problemOf(save.error) : null;
  const problem = read.problem ?? refused;
  function submit(event: FormEvent) {
    event.preventDefault();
    setTold(read.problem);
    if (!read.problem) save.mutate({ body: { book: { ...read.book } }, ifMatch: answer.version });
  }
  const missing = missingOperations(read.book);
  return (
    <>
      <form className="book-form" onSubmit={submit} onKeyDown={(event) => undoKey(event, state)} noValidate>
        {state.touched && (
          <Unsaved
            state={state}
            newest={answer.version}
            onDrop={() => state.startFrom(draftOfBook(book), answer.version)}
          />
        )}
        {missing.length > 0 && (
          <div className="notice">
            <p>
              <b>
                {plural(missing.length, 'kind')} of work {missing.length === 1 ? 'has' : 'have'} no rate in this book
              </b>{' '}
              and show as gaps in a price: {missing.map(({ title }) => title.en).join(', ')}.
            </p>
            <Button onClick={() => change(withMissing)}>Add them with invented starter values, marked as such</Button>
          </div>
        )}
        <UndoTools state={state}>
          <p className="soft grid-keys">
            In a table: arrows move, typing replaces, Enter or F2 edits, Tab goes on, Escape gives up, Ctrl+Z undoes. A
            block copied from a spreadsheet can be pasted.
          </p>
        </UndoTools>
        <BookPercents draft={draft} change={change} problem={problem} />
        <BookCrew draft={draft} change={change} problem={problem} />
        <BookTables draft={draft} change={change} problem={problem} />
        {(!draft.own || book.placeholder) && (
          <Part title="Whose rates these are">
            <Checkbox
              label="These are our own rates, from our time cards and invoices"
              detail="Until this is ticked, every price says that it rests on invented values. A row marked invented goes on saying so."
              checked={draft.own}
              onChange={(own) => change((old) => ({ ...old, own }))}
            />
          </Part>
        )}
        <FormFail problem={read.problem ? told : refused} doing="Saving the cost book" />
        <div className="row form-foot">
          <Button type="submit" look="go" busy={save.isPending}>
            Save as version {answer.version + 1}
          </Button>
          {read.problem && (
            <p className="soft">
              {plural(read.problem.errors?.length ?? 0, 'cell does', 'cells do')} not fit yet; each says why.
            </p>
          )}
        </div>
      </form>
      <BookCsv editor unsaved={state.touched} onSaved={startFrom} />
      <BookVersions newest={answer.version} editor onSaved={startFrom} />
    </>
  );
}

type UnsavedProps = { state: ReturnType<typeof useBookDraft>; newest: number; onDrop: () => void };

/** What is typed and not saved, and where it is. */
function Unsaved({ state, newest, onDrop }: UnsavedProps) {
  return (
    <div className="notice book-unsaved">
      <p>
        <b>Not saved yet.</b>{' '}
        {state.isKept
          ? 'What you typed stays in this browser until you save or drop it.'
          : 'This browser keeps nothing: save before you leave the page.'}
        {state.base !== newest &&
          ` It was typed on version ${state.base}; version ${newest} was saved since. Saving puts yours in its place.`}
      </p>
      <Button look="quiet" onClick={onDrop}>
        Discard changes and show version {newest}
      </Button>
    </div>
  );
}
