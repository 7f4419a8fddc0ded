import { type CostBook as Answer, type Problem, routes } from '@underlath/contract';
import { type CostBook, costBookSchema } from '@underlath/rules/pricing';
import { type FormEvent, useState } from 'react';
import { problemOf } from '../../shared/api/errors.ts';
import { useChange, useRoute } from '../../shared/api/hooks.ts';
import { useMe } from '../../shared/api/me.ts';
import { Button } from '../../shared/ui/button.tsx';
import { Checkbox } from '../../shared/ui/choice.tsx';
import { Stamp } from '../../shared/ui/stamp.tsx';
import { EmptyState } from '../../shared/ui/states.tsx';
import { useStatus } from '../../shared/ui/status.tsx';
import { type BookDraft, draftOfBook, readBook } from '../parts/book-draft.ts';
import { BookItems } from '../parts/book-items.tsx';
import { BookFees, BookPercents, BookTrades, withIds } from '../parts/book-small-tables.tsx';
import { BookView } from '../parts/book-view.tsx';
import { FormFail } from '../parts/form-fail.tsx';
import { Page, Part } from '../parts/page.tsx';
import { Reading } from '../parts/reading.tsx';
import '../price.css';

/** The company's rates. Saving makes a new version; what was sent keeps the one it named. */
export function CostBookScreen() {
  const me = useMe();
  const answer = useRoute(routes.getCostBook, {});
  const owner = me.data?.member.role === 'owner';
  return (
    <Page
      title="Cost book"
      wide
      lead={
        answer.data && (
          <p>
            Version {answer.data.version}, <Stamp at={answer.data.createdAt} />
            {answer.data.createdBy && `, by ${answer.data.createdBy.name}`}.
            {!owner && ' The owner of the company changes it.'}
          </p>
        )
      }
    >
      <Reading query={answer} doing="Reading the cost book" rows={10}>
        {(data) => <Book answer={data} owner={owner} />}
      </Reading>
      <Versions />
    </Page>
  );
}

function Book({ answer, owner }: { answer: Answer; owner: boolean }) {
  const parsed = costBookSchema.safeParse(answer.book);
  if (!parsed.success) {
    return (
      <EmptyState title="This cost book can’t be shown">
        <p>It was saved by another version of the program, whose tables this one does not know.</p>
      </EmptyState>
    );
  }
  return (
    <>
      {parsed.data.placeholder && (
        <p className="notice">
          <b>Invented starter values.</b> {parsed.data.notice.en}
        </p>
      )}
      {owner ? <BookForm answer={answer} book={parsed.data} /> : <BookView book={parsed.data} />}
    </>
  );
}

function BookForm({ answer, book }: { answer: Answer; book: CostBook }) {
  const say = useStatus();
  const [draft, setDraft] = useState<BookDraft>(() => draftOfBook(book));
  const [local, setLocal] = useState<Problem | null>(null);
  const save = useChange(routes.saveCostBook, {
    invalidates: [routes.getCostBook, routes.listCostBooks, routes.getEstimate, routes.getChangeOrder],
    onDone: (saved) => {
      const next = costBookSchema.safeParse(saved.book);
      if (next.success) setDraft(draftOfBook(next.data));
      say(`Saved as version ${saved.version}. What was sent keeps the version it named.`);
    },
  });
  const problem = local ?? (save.error ? problemOf(save.error) : null);
  const set = (part: Partial<BookDraft>) => setDraft((before) => ({ ...before, ...part }));
  function submit(event: FormEvent) {
    event.preventDefault();
    const { book: next, reader } = readBook({ ...draft, trades: withIds(draft.trades) });
    setLocal(reader.problem);
    if (!reader.problem) save.mutate({ body: { book: { ...next } }, ifMatch: answer.version });
  }
  return (
    <form className="book-form" onSubmit={submit} noValidate>
      <BookPercents draft={draft} set={set} problem={problem} />
      <BookTrades trades={draft.trades} onChange={(trades) => set({ trades })} problem={problem} />
      <BookItems
        items={draft.items}
        trades={withIds(draft.trades)}
        onChange={(items) => set({ items })}
        problem={problem}
      />
      <BookFees fees={draft.fees} onChange={(fees) => set({ fees })} problem={problem} />
      {!draft.own || book.placeholder ? (
        <Part title="Whose rates these are">
          <Checkbox
            label="These are our own rates, from our time cards and invoices"
            detail="Until this is ticked, every price says that it rests on invented values."
            checked={draft.own}
            onChange={(own) => set({ own })}
          />
        </Part>
      ) : null}
      <FormFail problem={problem} doing="Saving the cost book" />
      <div className="row form-foot">
        <Button type="submit" look="go" busy={save.isPending}>
          Save as version {answer.version + 1}
        </Button>
      </div>
    </form>
  );
}

function Versions() {
  const versions = useRoute(routes.listCostBooks, {});
  return (
    <Part title="Versions">
      <Reading query={versions} doing="Reading the versions" rows={2}>
        {({ items }) => (
          <ul className="plain-rows">
            {items.map((each) => (
              <li key={each.version}>
                <span>
                  <b>Version {each.version}</b>
                  {each.placeholder && ', invented starter values'}
                </span>
                <span className="soft">
                  <Stamp at={each.createdAt} look="day-time" />
                  {each.createdBy && `, ${each.createdBy.name}`}
                </span>
              </li>
            ))}
          </ul>
        )}
      </Reading>
    </Part>
  );
}
