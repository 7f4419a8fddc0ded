import { type BodyIn, type Contract, type ContractTerms, type Problem, routes } from '@underlath/contract';
import { type FormEvent, useState } from 'react';
import { problemOf } from '../../shared/api/errors.ts';
import { useChange } from '../../shared/api/hooks.ts';
import { Button } from '../../shared/ui/button.tsx';
import { Checkbox } from '../../shared/ui/choice.tsx';
import { Select, TextInput } from '../../shared/ui/field.tsx';
import { errorAt } from '../../shared/ui/states.tsx';
import { useAnnounce } from '../../shared/ui/status.tsx';
import { FormFail } from '../desk/form-fail.tsx';
import { Reader, readDollars, readNumber, writeDollars, writeNumber } from '../desk/numbers.ts';
import { useDraft } from '../desk/use-draft.ts';
import { noticeMethodOptions } from '../notice/words.ts';
import { useProjectId } from '../project/project-frame.tsx';
import { DaysOffEditor, type DraftDay } from './days-off-editor.tsx';
import { FinishMoves } from './finish-moves.tsx';
import { type DraftMilestone, MilestonesEditor } from './milestones-editor.tsx';
import { contractReads } from './reads.ts';

type Body = BodyIn<typeof routes.saveContractTerms>;

export const dayKinds = [
  { value: 'working', label: 'Working days' },
  { value: 'calendar', label: 'Calendar days' },
];

function draftOf(terms: ContractTerms) {
  const { noticeDays, retainagePct, milestones, daysOff } = terms;
  return {
    retainage: writeNumber(retainagePct),
    netDecreaseReturnsOverheadAndProfit: terms.netDecreaseReturnsOverheadAndProfit,
    dayKind: terms.dayKind as string,
    noticeDays: writeNumber(noticeDays),
    noticeDayKind: terms.noticeDayKind as string,
    noticeMethods: terms.noticeMethods,
    daysOff: daysOff.map((day): DraftDay => ({ key: day, day })),
    milestones: milestones.map(
      ({ id, name, nameEs = '', cents }): DraftMilestone => ({ id, name, nameEs, dollars: writeDollars(cents) }),
    ),
  };
}
type Draft = ReturnType<typeof draftOf>;

function bodyOf(draft: Draft, reader: Reader): Body {
  const percent = readNumber(draft.retainage);
  const days = readNumber(draft.noticeDays);
  return {
    retainagePct: reader.number('/retainagePct', percent, draft.retainage, 'type a percentage from 0 to 100') ?? 0,
    netDecreaseReturnsOverheadAndProfit: draft.netDecreaseReturnsOverheadAndProfit,
    dayKind: draft.dayKind as Body['dayKind'],
    daysOff: draft.daysOff.flatMap(({ day }) => (day === '' ? [] : day)),
    noticeDays: reader.number('/noticeDays', days, draft.noticeDays, 'type a whole number of days'),
    noticeDayKind: draft.noticeDayKind as Body['noticeDayKind'],
    noticeMethods: draft.noticeMethods,
    milestones: draft.milestones.map(({ id, name, nameEs, dollars }, at) => ({
      id,
      name: reader.need(`/milestones/${at}/name`, name, 'The name of the payment'),
      ...(nameEs.trim() !== '' && { nameEs: nameEs.trim() }),
      cents: reader.neededNumber(`/milestones/${at}/cents`, readDollars(dollars), dollars, 'type dollars, like 18,640'),
    })),
  };
}

type TermsFormProps = { terms: ContractTerms; contract: Contract; onClose: () => void };

/** Everything the contract says that the sums and the notices go by. */
export function TermsForm({ terms, contract, onClose }: TermsFormProps) {
  const announce = useAnnounce();
  const projectId = useProjectId();
  const { draft, set } = useDraft(() => draftOf(terms));
  const [local, setLocal] = useState<Problem | null>(null);
  const save = useChange(routes.saveContractTerms, {
    // A notice's last day follows the terms.
    invalidates: [...contractReads, routes.getNotice],
    onDone: () => {
      announce('Saved. The contract was worked out anew.');
      onClose();
    },
  });
  const problem = local ?? (save.error ? problemOf(save.error) : null);
  function submit(event: FormEvent) {
    event.preventDefault();
    const reader = new Reader();
    const body = bodyOf(draft, reader);
    setLocal(reader.problem);
    if (!reader.problem) save.mutate({ params: { projectId }, body, ifMatch: terms.version });
  }
  return (
    <form className="form" onSubmit={submit} noValidate>
      <MilestonesEditor
        milestones={draft.milestones}
        originalSumCents={contract.originalSumCents}
        problem={problem}
        onChange={set('milestones')}
      />
      <fieldset className="form-group form-group-plain">
        <legend>Money</legend>
        <TextInput
          label="Retainage, %"
          hint="Held back from completed work until the end; 0 when there is none."
          inputMode="decimal"
          className="number input-short"
          value={draft.retainage}
          onChange={set('retainage')}
          error={errorAt(problem, '/retainagePct')}
        />
        <Checkbox
          label="A net saving gives back the overhead and profit on it"
          detail="Contracts differ; without it, only the cost comes off."
          checked={draft.netDecreaseReturnsOverheadAndProfit}
          onChange={set('netDecreaseReturnsOverheadAndProfit')}
        />
      </fieldset>
      <fieldset className="form-group form-group-plain">
        <legend>Time</legend>
        <Select label="Days of the contract are" options={dayKinds} value={draft.dayKind} onChange={set('dayKind')} />
        <DaysOffEditor days={draft.daysOff} problem={problem} onChange={set('daysOff')} />
        <FinishMoves contract={contract} draft={draft} />
      </fieldset>
      <NoticeFields draft={draft} set={set} problem={problem} />
      <FormFail problem={problem} doing="Saving the terms" />
      <div className="row form-foot">
        <Button type="submit" look="go" busy={save.isPending}>
          Save the terms
        </Button>
        <Button look="quiet" onClick={onClose}>
          Leave them as they were
        </Button>
      </div>
    </form>
  );
}

type NoticeFieldsProps = {
  draft: Draft;
  set: ReturnType<typeof useDraft<Draft>>['set'];
  problem: Problem | null;
};

function NoticeFields({ draft, set, problem }: NoticeFieldsProps) {
  const setMethods = set('noticeMethods');
  return (
    <fieldset className="form-group form-group-plain">
      <legend>Notice of a hidden condition</legend>
      <div className="form-pair">
        <TextInput
          label="Days after it was first seen"
          hint="Empty when the contract only says promptly."
          optional
          inputMode="numeric"
          className="number input-short"
          value={draft.noticeDays}
          onChange={set('noticeDays')}
          error={errorAt(problem, '/noticeDays')}
        />
        <Select
          label="These days are"
          hint="As the contract counts them."
          options={dayKinds}
          value={draft.noticeDayKind}
          onChange={set('noticeDayKind')}
        />
      </div>
      <fieldset className="field">
        <legend className="field-label">Ways the contract accepts</legend>
        <div className="choices">
          {noticeMethodOptions.map(({ value, label }) => (
            <Checkbox
              key={value}
              label={label}
              checked={draft.noticeMethods.includes(value)}
              onChange={(on) =>
                setMethods(
                  noticeMethodOptions
                    .map((option) => option.value)
                    .filter((each) => (each === value ? on : draft.noticeMethods.includes(each))),
                )
              }
            />
          ))}
        </div>
      </fieldset>
    </fieldset>
  );
}
