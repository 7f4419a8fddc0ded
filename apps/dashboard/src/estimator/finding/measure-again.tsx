import { type Finding, type Problem, routes } from '@underlath/contract';
import { type FormEvent, useId, useState } from 'react';
import { problemOf } from '../../shared/api/errors.ts';
import { useChange } from '../../shared/api/hooks.ts';
import { CheckForm } from '../../shared/measure/check-form.tsx';
import { ContextForm } from '../../shared/measure/context-form.tsx';
import { askedInputs, type Inputs } from '../../shared/measure/form.ts';
import { useCheck } from '../../shared/measure/use-check.ts';
import { WithCheck } from '../../shared/measure/with-check.tsx';
import { Button } from '../../shared/ui/button.tsx';
import { Dialog } from '../../shared/ui/dialog.tsx';
import { useAnnounce } from '../../shared/ui/status.tsx';
import { FormFail } from '../desk/form-fail.tsx';
import { localProblem } from '../desk/numbers.ts';
import { inputErrors, REFUSED_MEASUREMENT } from './input-errors.ts';
import { findingReads } from './moves.tsx';

/** A new measurement. It adds a judgment; what was judged before stays as it was. */
export function MeasureAgain({ finding, onClose }: { finding: Finding; onClose: () => void }) {
  const formId = useId();
  const announce = useAnnounce();
  const { check } = useCheck(finding.checkId);
  const last = finding.judgments.toSorted((a, b) => b.seq - a.seq)[0];
  const [inputs, setInputs] = useState<Inputs>(last?.inputs ?? {});
  const [context, setContext] = useState(finding.context);
  const judge = useChange(routes.judgeFinding, {
    invalidates: findingReads,
    onDone: () => {
      announce('Judged again. The earlier judgment is kept.');
      onClose();
    },
  });
  const [refused, setRefused] = useState(false);
  const [local, setLocal] = useState<Problem | null>(null);
  const problem = local ?? (judge.error ? problemOf(judge.error) : null);
  function submit(event: FormEvent) {
    event.preventDefault();
    setLocal(refused ? localProblem([REFUSED_MEASUREMENT]) : null);
    if (!check || refused) return;
    judge.mutate({
      params: { findingId: finding.id },
      body: {
        inputs: askedInputs(check.inputs, inputs),
        context,
        ...(last ? { edition: last.edition } : {}),
      },
    });
  }
  return (
    <Dialog
      open
      title={`Measure: ${finding.title}`}
      onClose={onClose}
      actions={
        <>
          <Button onClick={onClose}>Cancel</Button>
          <Button look="go" type="submit" form={formId} busy={judge.isPending}>
            Judge it
          </Button>
        </>
      }
    >
      <WithCheck
        id={finding.checkId}
        unknown={
          <p>
            The check “{finding.checkId}” is not part of this version, so it can’t be measured again here. Its judgments
            stay as they are.
          </p>
        }
      >
        {(check) => (
          <form id={formId} className="stack" onSubmit={submit} noValidate>
            <CheckForm
              check={check}
              inputs={inputs}
              onChange={setInputs}
              context={context}
              {...(last ? { edition: last.edition } : {})}
              serverErrors={inputErrors(problem)}
              onRefused={setRefused}
            />
            <ContextForm storiesUnknown="as the place says" context={context} onChange={setContext} />
            <FormFail problem={problem} doing="Judging the measurement" />
          </form>
        )}
      </WithCheck>
    </Dialog>
  );
}
