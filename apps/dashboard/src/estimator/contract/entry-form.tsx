import { type BodyIn, type PlannedPayment, type Problem, routes } from '@underlath/contract';
import { type FormEvent, useState } from 'react';
import { problemOf } from '../../shared/api/errors.ts';
import { useChange } from '../../shared/api/hooks.ts';
import { formatMoney } from '../../shared/i18n/format.ts';
import { useSiteZone } from '../../shared/i18n/site-zone.tsx';
import { Button } from '../../shared/ui/button.tsx';
import { Select, TextInput } from '../../shared/ui/field.tsx';
import { errorAt } from '../../shared/ui/states.tsx';
import { useAnnounce } from '../../shared/ui/status.tsx';
import { FormFail } from '../desk/form-fail.tsx';
import { Reader, readDollars, readNumber, today } from '../desk/numbers.ts';
import { useDraft } from '../desk/use-draft.ts';
import { useProjectId } from '../project/project-frame.tsx';
import { contractReads } from './reads.ts';

type NewEntry = BodyIn<typeof routes.addContractEntry>;

const dollars = 'type dollars, like 250 or 250.50';

/** Sends an entry; what was typed wrongly and what the server refuses are told at the same place. */
function useEntry(onDone: () => void) {
  const announce = useAnnounce();
  const projectId = useProjectId();
  const [local, setLocal] = useState<Problem | null>(null);
  const add = useChange(routes.addContractEntry, {
    invalidates: contractReads,
    onDone: () => {
      onDone();
      announce('Entered.');
    },
  });
  const send = (reader: Reader, body: NewEntry) => {
    setLocal(reader.problem);
    if (!reader.problem) add.mutate({ params: { projectId }, body });
  };
  return { send, busy: add.isPending, problem: local ?? (add.error ? problemOf(add.error) : null) };
}

const freshWork = (happenedOn: string) => ({ kind: 'payment', name: '', dollars: '', happenedOn, milestoneId: '' });

/** A payment, or work that was completed. */
export function EnterWork({ payments }: { payments: readonly PlannedPayment[] }) {
  const zone = useSiteZone();
  const { draft, set, setDraft } = useDraft(() => freshWork(today(zone)));
  const { send, busy, problem } = useEntry(() =>
    setDraft((before) => ({ ...freshWork(today(zone)), kind: before.kind })),
  );
  const open = payments.flatMap(({ milestoneId, settledOn, ...payment }) =>
    milestoneId && !settledOn ? [{ milestoneId, ...payment }] : [],
  );
  function settle(milestoneId: string) {
    const payment = open.find((one) => one.milestoneId === milestoneId);
    setDraft((before) => ({ ...before, milestoneId, name: before.name || (payment?.name ?? '') }));
  }
  function submit(event: FormEvent) {
    event.preventDefault();
    const reader = new Reader();
    const name = reader.need('/name', draft.name, 'What it is for');
    const cents = reader.neededNumber('/cents', readDollars(draft.dollars), draft.dollars, dollars);
    const { happenedOn, milestoneId } = draft;
    if (draft.kind === 'completed') send(reader, { kind: 'completed', name, cents, happenedOn });
    else send(reader, { kind: 'payment', name, cents, happenedOn, milestoneId: milestoneId || null });
  }
  return (
    <details>
      <summary>Enter a payment or completed work</summary>
      <form className="stack" onSubmit={submit} noValidate>
        <div className="form-pair">
          <Select
            label="What happened"
            options={[
              { value: 'payment', label: 'The client paid' },
              { value: 'completed', label: 'Work was completed since the last entry' },
            ]}
            value={draft.kind}
            onChange={set('kind')}
          />
          {draft.kind === 'payment' && open.length > 0 && (
            <Select
              label="It settles"
              emptyLabel="No agreed payment"
              options={open.map((payment) => ({
                value: payment.milestoneId,
                label: `${payment.name}, ${formatMoney(payment.agreedCents + payment.addedCents, 'en-US', { trim: true })}`,
              }))}
              value={draft.milestoneId}
              onChange={settle}
              error={errorAt(problem, '/milestoneId')}
            />
          )}
          <TextInput
            label="What it is for"
            value={draft.name}
            onChange={set('name')}
            maxLength={120}
            error={errorAt(problem, '/name')}
          />
          <TextInput
            label="Amount, $"
            inputMode="decimal"
            className="number"
            value={draft.dollars}
            onChange={set('dollars')}
            error={errorAt(problem, '/cents')}
          />
          <TextInput
            label="Day"
            type="date"
            value={draft.happenedOn}
            onChange={set('happenedOn')}
            error={errorAt(problem, '/happenedOn')}
          />
        </div>
        <FormFail problem={problem} doing="Entering it" />
        <p>
          <Button type="submit" busy={busy}>
            Enter it
          </Button>
        </p>
      </form>
    </details>
  );
}

const freshAllowance = (happenedOn: string) => ({ name: '', allowed: '', spent: '', percent: '', happenedOn });

/** What an allowance of the contract really came to. */
export function SettleAllowance() {
  const zone = useSiteZone();
  const { draft, set, setDraft } = useDraft(() => freshAllowance(today(zone)));
  const { send, busy, problem } = useEntry(() => setDraft(freshAllowance(today(zone))));
  function submit(event: FormEvent) {
    event.preventDefault();
    const reader = new Reader();
    const name = reader.need('/name', draft.name, 'The name of the allowance');
    const allowedCents = reader.neededNumber('/allowedCents', readDollars(draft.allowed), draft.allowed, dollars);
    const spentCents = reader.neededNumber('/spentCents', readDollars(draft.spent), draft.spent, dollars);
    const percent = reader.number('/overheadProfitPct', readNumber(draft.percent), draft.percent, 'type a percentage');
    const { happenedOn } = draft;
    send(reader, { kind: 'allowance', name, allowedCents, spentCents, overheadProfitPct: percent ?? 0, happenedOn });
  }
  return (
    <details>
      <summary>Settle an allowance</summary>
      <form className="stack" onSubmit={submit} noValidate>
        <div className="form-pair">
          <TextInput
            label="Allowance"
            hint="As the contract calls it, like “Tile”."
            value={draft.name}
            onChange={set('name')}
            maxLength={120}
            error={errorAt(problem, '/name')}
          />
          <TextInput
            label="Day"
            hint="When it was settled."
            type="date"
            value={draft.happenedOn}
            onChange={set('happenedOn')}
            error={errorAt(problem, '/happenedOn')}
          />
          <TextInput
            label="Allowed, $"
            inputMode="decimal"
            className="number"
            value={draft.allowed}
            onChange={set('allowed')}
            error={errorAt(problem, '/allowedCents')}
          />
          <TextInput
            label="Spent, $"
            inputMode="decimal"
            className="number"
            value={draft.spent}
            onChange={set('spent')}
            error={errorAt(problem, '/spentCents')}
          />
          <TextInput
            label="Overhead and profit on what is over, %"
            optional
            inputMode="decimal"
            className="number"
            value={draft.percent}
            onChange={set('percent')}
            error={errorAt(problem, '/overheadProfitPct')}
          />
        </div>
        <FormFail problem={problem} doing="Settling the allowance" />
        <p>
          <Button type="submit" busy={busy}>
            Settle it
          </Button>
        </p>
      </form>
    </details>
  );
}
