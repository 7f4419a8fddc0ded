import { type Actual, type Finding, type PlannedAgainstTaken, type Problem, routes } from '@underlath/contract';
import { OPERATIONS } from '@underlath/rules';
import { type FormEvent, useState } from 'react';
import { problemOf } from '../../shared/api/errors.ts';
import { useChange, useRoute } from '../../shared/api/hooks.ts';
import { formatNumber } from '../../shared/i18n/format.ts';
import { useSiteZone } from '../../shared/i18n/site-zone.tsx';
import { Button } from '../../shared/ui/button.tsx';
import { Select, TextInput } from '../../shared/ui/field.tsx';
import { Money } from '../../shared/ui/money.tsx';
import { errorAt } from '../../shared/ui/states.tsx';
import { useAnnounce } from '../../shared/ui/status.tsx';
import { TableScroll } from '../../shared/ui/table-scroll.tsx';
import { FormFail } from '../desk/form-fail.tsx';
import { localProblem, Reader, readDollars, readNumber, today } from '../desk/numbers.ts';
import { Reading } from '../desk/reading.tsx';
import { TakeBack } from '../desk/take-back.tsx';
import { useDraft } from '../desk/use-draft.ts';
import { unitWords } from '../desk/words.ts';

const agreed = new Set<Finding['state']>(['approved', 'repaired', 'proven']);
const reads = [routes.listActuals, routes.getWorkHistory];

/** What the repair of an approved finding took, beside what was planned; the cost book stays as it is. */
export function WhatItTook({ finding }: { finding: Finding }) {
  const taken = useRoute(routes.listActuals, agreed.has(finding.state) ? { params: { findingId: finding.id } } : null);
  if (!agreed.has(finding.state)) return null;
  return (
    <section>
      <h3>Actuals</h3>
      <Reading query={taken} doing="Reading what it took" rows={2}>
        {({ items, work }) => (
          <>
            <Compared work={work} />
            <Entries items={items} />
            <EnterForm findingId={finding.id} work={work} />
          </>
        )}
      </Reading>
    </section>
  );
}

const amount = (value: number | undefined): string => (value === undefined ? '–' : formatNumber(value, 'en-US', 2));

function Compared({ work }: { work: readonly PlannedAgainstTaken[] }) {
  if (work.length === 0) return <p className="soft">Nothing was planned in hours.</p>;
  return (
    <TableScroll label="Actuals">
      <table className="table">
        <thead>
          <tr>
            <th scope="col">Work</th>
            <th scope="col" className="number">
              Hours planned
            </th>
            <th scope="col" className="number">
              Hours taken
            </th>
            <th scope="col" className="number">
              Other costs
            </th>
          </tr>
        </thead>
        <tbody>
          {work.map(({ operation, title, planned, taken }) => (
            <tr key={operation}>
              <td>{title.en}</td>
              <td className="number">{amount(planned?.hours)}</td>
              <td className="number">{amount(taken?.hours)}</td>
              <td className="number">{taken ? <Money cents={taken.costCents} /> : '–'}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </TableScroll>
  );
}

function Entries({ items }: { items: readonly Actual[] }) {
  if (items.length === 0) return null;
  return (
    <ul className="plain-rows">
      {items.map((item) => (
        <li key={item.id}>
          <span>
            {item.doneOn}: <b>{item.title.en}</b>, {formatNumber(item.quantity, 'en-US', 2)} {unitWords(item.unit)},{' '}
            {formatNumber(item.hours, 'en-US', 2)} hours
            {item.note && `, ${item.note}`}
            {item.takenBack && <span className="soft"> (taken back: {item.takenBack.why})</span>}
          </span>
          {!item.takenBack && <TakeBackActual actual={item} />}
        </li>
      ))}
    </ul>
  );
}

function TakeBackActual({ actual }: { actual: Actual }) {
  const announce = useAnnounce();
  const take = useChange(routes.takeBackActual, { invalidates: reads, onDone: () => announce('Taken back.') });
  return (
    <TakeBack
      what={actual.title.en}
      busy={take.isPending}
      problem={take.error ? problemOf(take.error) : null}
      onTake={(why) => take.mutate({ params: { actualId: actual.id }, body: { why } })}
    />
  );
}

function EnterForm({ findingId, work }: { findingId: string; work: readonly PlannedAgainstTaken[] }) {
  const announce = useAnnounce();
  const zone = useSiteZone();
  const fresh = () => ({
    operation: work[0]?.operation ?? '',
    quantity: '',
    hours: '',
    cost: '',
    doneOn: today(zone),
    note: '',
  });
  const { draft, set, setDraft } = useDraft(fresh);
  const [local, setLocal] = useState<Problem | null>(null);
  const enter = useChange(routes.enterActual, {
    invalidates: reads,
    onDone: () => {
      setDraft(fresh());
      announce('Entered. The cost book stays as it is.');
    },
  });
  const problem = local ?? (enter.error ? problemOf(enter.error) : null);
  function submit(event: FormEvent) {
    event.preventDefault();
    const reader = new Reader();
    const quantity = reader.number('/quantity', readNumber(draft.quantity), draft.quantity, 'type how much was done');
    const hours = reader.number('/hours', readNumber(draft.hours), draft.hours, 'type hours of 0 or more');
    const costCents = reader.number('/costCents', readDollars(draft.cost), draft.cost, 'type dollars of 0 or more');
    const errors = [
      ...reader.errors,
      ...(quantity === null && !reader.errors.length
        ? [{ pointer: '/quantity', detail: 'How much was done is missing.' }]
        : []),
      ...(hours === null && !reader.errors.length ? [{ pointer: '/hours', detail: 'The hours are missing.' }] : []),
    ];
    setLocal(errors.length > 0 ? localProblem(errors) : null);
    if (errors.length > 0 || quantity === null || hours === null) return;
    const { operation, doneOn, note } = draft;
    enter.mutate({
      params: { findingId },
      body: { operation, quantity, hours, costCents: costCents ?? 0, doneOn, note },
    });
  }
  const planned = new Set(work.map(({ operation }) => operation));
  const options = [...OPERATIONS]
    .toSorted((a, b) => Number(planned.has(b.id)) - Number(planned.has(a.id)))
    .map(({ id, title, unit }) => ({ value: id, label: `${title.en}, per ${unitWords(unit)}` }));
  return (
    <details>
      <summary>Enter hours and cost</summary>
      <form className="stack" onSubmit={submit} noValidate>
        <Select
          label="Work"
          options={options}
          value={draft.operation}
          onChange={set('operation')}
          error={errorAt(problem, '/operation')}
        />
        <div className="form-pair">
          <TextInput
            label="How much was done"
            inputMode="decimal"
            value={draft.quantity}
            onChange={set('quantity')}
            error={errorAt(problem, '/quantity')}
          />
          <TextInput
            label="Hours, all hands together"
            inputMode="decimal"
            value={draft.hours}
            onChange={set('hours')}
            error={errorAt(problem, '/hours')}
          />
          <TextInput
            label="Other costs, $"
            optional
            inputMode="decimal"
            value={draft.cost}
            onChange={set('cost')}
            error={errorAt(problem, '/costCents')}
          />
          <TextInput
            label="Day"
            type="date"
            value={draft.doneOn}
            onChange={set('doneOn')}
            error={errorAt(problem, '/doneOn')}
          />
        </div>
        <TextInput
          label="Note"
          optional
          maxLength={400}
          value={draft.note}
          onChange={set('note')}
          error={errorAt(problem, '/note')}
        />
        <FormFail problem={problem} doing="Entering what it took" />
        <Button type="submit" busy={enter.isPending}>
          Enter it
        </Button>
      </form>
    </details>
  );
}
