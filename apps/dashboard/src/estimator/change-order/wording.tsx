import { type ChangeOrder, type DraftField, type Problem, routes } from '@underlath/contract';
import { type FormEvent, type ReactNode, useState } from 'react';
import { problemOf } from '../../shared/api/errors.ts';
import { useChange } from '../../shared/api/hooks.ts';
import { Button } from '../../shared/ui/button.tsx';
import { Dialog } from '../../shared/ui/dialog.tsx';
import { TextArea, TextInput } from '../../shared/ui/field.tsx';
import { errorAt } from '../../shared/ui/states.tsx';
import { useAnnounce } from '../../shared/ui/status.tsx';
import { FormFail } from '../desk/form-fail.tsx';
import { Part } from '../desk/page.tsx';
import { noEdit, type OrderDraft, readOrderDraft, type WordField, withWords, wordsOf } from './draft.ts';
import { FindingChooser } from './finding-chooser.tsx';
import { orderReads } from './reads.ts';
import { SpanishNamesEditor } from './spanish-names-editor.tsx';
import { useOfferable } from './use-offerable.ts';
import type { OrderDraftState } from './use-order-draft.ts';

const fields: { name: WordField; label: string; hint: string }[] = [
  { name: 'headline', label: 'Headline', hint: 'One line: what the client is asked.' },
  { name: 'found', label: 'What was found', hint: '' },
  { name: 'why', label: 'Why it matters', hint: '' },
  { name: 'ifNot', label: 'If it is not done', hint: '' },
  { name: 'note', label: 'A note of yours', hint: 'May stay empty.' },
];

type FormProps = { order: ChangeOrder; state: OrderDraftState };

/** Words in both languages side by side, days, and which findings are in it. Only what was edited is saved. */
export function OrderWording({ order, state }: FormProps) {
  if (order.state === 'set-aside') {
    return <p className="part">It was set aside, so nothing of it is edited. Its findings can go into a new one.</p>;
  }
  if (order.state !== 'draft' && order.state !== 'sent') {
    return (
      <p className="part">It was decided, so its words stay as they were sent. Make a new change order for more.</p>
    );
  }
  return <WordingForm order={order} state={state} />;
}

function WordingForm({ order, state }: FormProps) {
  const announce = useAnnounce();
  const { draft, change } = state;
  const [asking, setAsking] = useState(false);
  const [local, setLocal] = useState<Problem | null>(null);
  const save = useChange(routes.changeChangeOrder, {
    invalidates: orderReads,
    onDone: (saved) => {
      state.startFrom(noEdit, saved.version);
      announce(order.state === 'sent' ? 'Saved. It is a draft again and the old link is dead.' : 'Saved');
    },
  });
  const problem = local ?? (save.error ? problemOf(save.error) : null);
  function send() {
    setAsking(false);
    const read = readOrderDraft(draft);
    setLocal(read.problem);
    if (!read.problem) save.mutate({ params: { changeOrderId: order.id }, body: read.body, ifMatch: order.version });
  }
  function submit(event: FormEvent) {
    event.preventDefault();
    if (order.state === 'sent') setAsking(true);
    else send();
  }
  const props = { order, draft, change, problem };
  return (
    <form className="stack" onSubmit={submit} noValidate>
      <div className="wording">
        {fields.map((field) => (
          <WordingRow key={field.name} {...field} {...props} />
        ))}
      </div>
      <SpanishNamesEditor order={order} draft={draft} change={change} />
      <DaysPart {...props} />
      <FindingsPart {...props} />
      <FormFail problem={problem} doing="Saving the change order" />
      <div className="row form-foot">
        <Button
          type="submit"
          look={order.state === 'draft' ? 'plain' : 'go'}
          busy={save.isPending}
          disabled={!state.touched}
        >
          Save the changes
        </Button>
        {order.state === 'sent' && <span>The client has a link to it. Saving makes that link stop working.</span>}
      </div>
      <Dialog
        open={asking}
        title="The client’s link will stop working"
        onClose={() => setAsking(false)}
        actions={
          <>
            <Button onClick={() => setAsking(false)}>Keep it as sent</Button>
            <Button look="go" onClick={send}>
              Save and end the old link
            </Button>
          </>
        }
      >
        <p>
          This change order is with the client. When you save, it becomes a draft again: the link they have dies at
          once, and nothing can be approved until you send the new version. What was sent stays in the record.
        </p>
      </Dialog>
    </form>
  );
}

type PartProps = {
  order: ChangeOrder;
  draft: OrderDraft;
  change: OrderDraftState['change'];
  problem: Problem | null;
};

/** One field in both languages, with where its words come from. */
function WordingRow({ name, label, hint, order, draft, change, problem }: PartProps & (typeof fields)[number]) {
  const words = wordsOf(draft, order, name);
  const edit = draft.wording[name];
  const set = (next: typeof edit) => change((old) => withWords(old, name, next));
  return (
    <fieldset className="wording-row">
      <legend>
        {label} {hint && <span className="soft small">{hint}</span>}
      </legend>
      <Origin
        order={order}
        field={name}
        isTyped={edit !== null && (edit !== undefined || order.typed.includes(name))}
        isGivenBack={edit === null}
        onGiveBack={() => set(null)}
      />
      {edit !== null &&
        (['en', 'es'] as const).map((language) => {
          const props = {
            label: language === 'en' ? 'English' : 'Spanish',
            lang: language,
            value: words[language],
            onChange: (value: string) => set({ ...words, [language]: value }),
            error: errorAt(problem, `/wording/${name}/${language}`),
          };
          return name === 'headline' ? (
            <TextInput key={language} {...props} />
          ) : (
            <TextArea key={language} {...props} rows={4} />
          );
        })}
    </fieldset>
  );
}

type OriginProps = {
  order: ChangeOrder;
  field: DraftField;
  isTyped: boolean;
  isGivenBack: boolean;
  onGiveBack: () => void;
};

/** Typed, or told by the findings; and what has to be looked at before it is sent. */
function Origin({ order, field, isTyped, isGivenBack, onGiveBack }: OriginProps) {
  const mark = order.marks.find((one) => one.field === field);
  const words: ReactNode = isGivenBack
    ? 'It is worked out from the findings again when you save.'
    : isTyped
      ? 'Typed by you. It stays when the findings change.'
      : 'From the findings. It follows them until you type.';
  return (
    <div className="wording-origin">
      <p className="soft small">
        {words}{' '}
        {isTyped && (
          <Button look="quiet" onClick={onGiveBack}>
            {field === 'days' ? 'Count them from the work again' : 'Take the findings’ words again'}
          </Button>
        )}
      </p>
      {mark && <MarkNotice order={order} field={field} words={mark.words} />}
    </div>
  );
}

function MarkNotice({ order, field, words }: { order: ChangeOrder; field: DraftField; words: string }) {
  const stand = useChange(routes.changeChangeOrder, { invalidates: orderReads });
  const params = { changeOrderId: order.id };
  return (
    <div className="notice row">
      <p>
        <b>Look at this before it is sent.</b> {words} Change it, or say that it stands.
      </p>
      <Button
        busy={stand.isPending}
        onClick={() => stand.mutate({ params, body: { lookedAt: [field] }, ifMatch: order.version })}
      >
        It stands as it is
      </Button>
      <FormFail problem={stand.error ? problemOf(stand.error) : null} doing="Keeping it as it is" />
    </div>
  );
}

function DaysPart({ order, draft, change, problem }: PartProps) {
  const { days } = draft;
  return (
    <Part title="Time">
      <Origin
        order={order}
        field="days"
        isTyped={days !== null && (days !== undefined || order.typed.includes('days'))}
        isGivenBack={days === null}
        onGiveBack={() => change((old) => ({ ...old, days: null }))}
      />
      {days !== null && (
        <TextInput
          label={`${order.draft.contract.dayKind === 'calendar' ? 'Calendar' : 'Working'} days it adds to the contract`}
          inputMode="numeric"
          className="number input-short"
          value={days ?? String(order.days)}
          onChange={(typed) => change((old) => ({ ...old, days: typed }))}
          error={errorAt(problem, '/days')}
        />
      )}
    </Part>
  );
}

/** The findings in it now, and those that could join: priced, or declined before. */
function FindingsPart({ order, draft, change }: PartProps) {
  const { rows } = useOfferable(order.projectId, order.findingIds);
  const findingIds = draft.findingIds ?? order.findingIds;
  const toggle = (id: string, on: boolean) =>
    change((old) => {
      const ids = old.findingIds ?? order.findingIds;
      return { ...old, findingIds: on ? [...ids, id] : ids.filter((each) => each !== id) };
    });
  return (
    <Part
      title="Findings in it"
      lead="Words and days that nobody typed follow the findings when you save. Typed ones that still speak of a finding taken out are marked."
    >
      <FindingChooser rows={rows} chosen={findingIds} onToggle={toggle} />
      {findingIds.length === 0 && <p>At least one finding has to stay in it.</p>}
    </Part>
  );
}
