import { type ChangeOrder, type FindingRow, type Problem, routes, type Wording } from '@underlath/contract';
import { type FormEvent, useState } from 'react';
import { problemOf } from '../../shared/api/errors.ts';
import { useChange, usePages } from '../../shared/api/hooks.ts';
import { Button } from '../../shared/ui/button.tsx';
import { Dialog } from '../../shared/ui/dialog.tsx';
import { TextArea, TextInput } from '../../shared/ui/field.tsx';
import { errorAt } from '../../shared/ui/states.tsx';
import { useStatus } from '../../shared/ui/status.tsx';
import { FindingChooser } from './finding-chooser.tsx';
import { findingReads } from './finding-moves.tsx';
import { FormFail } from './form-fail.tsx';
import { localProblem, readNumber } from './numbers.ts';
import { Part } from './page.tsx';

/** Everything that shows a change order or what it adds up to. */
export const orderReads = [
  ...findingReads,
  routes.getChangeOrder,
  routes.listChangeOrders,
  routes.getContract,
  routes.getContractLedger,
  routes.listRecord,
];

const parts: { name: keyof Wording; label: string; hint: string }[] = [
  { name: 'headline', label: 'Headline', hint: 'One line: what the client is asked.' },
  { name: 'found', label: 'What was found', hint: '' },
  { name: 'why', label: 'Why it matters', hint: '' },
  { name: 'ifNot', label: 'If it is not done', hint: '' },
  { name: 'note', label: 'A note of yours', hint: 'May stay empty.' },
];

/** Words in both languages side by side, days, and which findings are in it. */
export function OrderWording({ order }: { order: ChangeOrder }) {
  const say = useStatus();
  const [wording, setWording] = useState(order.wording);
  const [days, setDays] = useState(String(order.days));
  const [findingIds, setFindingIds] = useState<string[]>(order.findingIds);
  const [warned, setWarned] = useState<'no' | 'asking'>('no');
  const [local, setLocal] = useState<Problem | null>(null);
  const change = useChange(routes.changeChangeOrder, {
    invalidates: orderReads,
    onDone: (saved) => {
      setWording(saved.wording);
      setDays(String(saved.days));
      setFindingIds(saved.findingIds);
      say(order.state === 'sent' ? 'Saved. It is a draft again and the old link is dead.' : 'Saved');
    },
  });
  const problem = local ?? (change.error ? problemOf(change.error) : null);
  const decided = order.state !== 'draft' && order.state !== 'sent';
  function save() {
    setWarned('no');
    const dayCount = readNumber(days);
    if (typeof dayCount !== 'number' || !Number.isInteger(dayCount) || dayCount < 0) {
      setLocal(localProblem([{ pointer: '/days', detail: `“${days}” is not a whole number of days.` }]));
      return;
    }
    setLocal(null);
    change.mutate({
      params: { changeOrderId: order.id },
      body: { wording, days: dayCount, findingIds },
      ifMatch: order.version,
    });
  }
  function submit(event: FormEvent) {
    event.preventDefault();
    if (order.state === 'sent') setWarned('asking');
    else save();
  }
  if (decided) {
    return (
      <p className="part">It was decided, so its words stay as they were sent. Make a new change order for more.</p>
    );
  }
  return (
    <form className="stack" onSubmit={submit} noValidate>
      <WordingFields wording={wording} onChange={setWording} problem={problem} />
      <Part title="Time">
        <TextInput
          label={`${order.draft.contract.dayKind === 'calendar' ? 'Calendar' : 'Working'} days it adds to the contract`}
          inputMode="numeric"
          className="number input-short"
          value={days}
          onChange={setDays}
          error={errorAt(problem, '/days')}
        />
      </Part>
      <FindingsPart order={order} findingIds={findingIds} onChange={setFindingIds} />
      <FormFail problem={problem} doing="Saving the change order" />
      <div className="row form-foot">
        <Button type="submit" look={order.state === 'draft' ? 'plain' : 'go'} busy={change.isPending}>
          Save the changes
        </Button>
        {order.state === 'sent' && <span>The client has a link to it. Saving makes that link stop working.</span>}
      </div>
      <Dialog
        open={warned === 'asking'}
        title="The client’s link will stop working"
        onClose={() => setWarned('no')}
        actions={
          <>
            <Button onClick={() => setWarned('no')}>Keep it as sent</Button>
            <Button look="go" onClick={save}>
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

type WordingFieldsProps = { wording: Wording; onChange: (wording: Wording) => void; problem: Problem | null };

function WordingFields({ wording, onChange, problem }: WordingFieldsProps) {
  return (
    <div className="wording">
      {parts.map(({ name, label, hint }) => (
        <fieldset key={name} className="wording-row">
          <legend>
            {label} {hint && <span className="soft small">{hint}</span>}
          </legend>
          {(['en', 'es'] as const).map((language) => {
            const props = {
              label: language === 'en' ? 'English' : 'Spanish',
              lang: language,
              value: wording[name][language],
              onChange: (value: string) => onChange({ ...wording, [name]: { ...wording[name], [language]: value } }),
              error: errorAt(problem, `/wording/${name}/${language}`),
            };
            return name === 'headline' ? (
              <TextInput key={language} {...props} />
            ) : (
              <TextArea key={language} {...props} rows={4} />
            );
          })}
        </fieldset>
      ))}
    </div>
  );
}

type FindingsPartProps = { order: ChangeOrder; findingIds: string[]; onChange: (ids: string[]) => void };

/** The findings in it now, and the priced ones that could join. */
function FindingsPart({ order, findingIds, onChange }: FindingsPartProps) {
  const all = usePages(routes.listFindings, { params: { projectId: order.projectId }, query: { limit: 200 } });
  const rows = (all.items as FindingRow[]).filter(
    (row) => order.findingIds.includes(row.id) || (row.state === 'priced' && row.changeOrderId === null),
  );
  return (
    <Part title="Findings in it">
      <FindingChooser
        rows={rows}
        chosen={findingIds}
        onToggle={(id, on) => onChange(on ? [...findingIds, id] : findingIds.filter((each) => each !== id))}
      />
      {findingIds.length === 0 && <p>At least one finding has to stay in it.</p>}
    </Part>
  );
}
