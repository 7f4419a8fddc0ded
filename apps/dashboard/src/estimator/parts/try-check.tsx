import { type FindingContext, routes } from '@underlath/contract';
import type { Check } from '@underlath/rules';
import { useState } from 'react';
import { problemOf } from '../../shared/api/errors.ts';
import { useChange } from '../../shared/api/hooks.ts';
import { CheckForm } from '../../shared/measure/check-form.tsx';
import { askedInputs, type Inputs } from '../../shared/measure/form.ts';
import { OutcomeView } from '../../shared/measure/outcome-view.tsx';
import { Button } from '../../shared/ui/button.tsx';
import { Facts } from '../../shared/ui/facts.tsx';
import { Select } from '../../shared/ui/field.tsx';
import { valueFacts } from './check-values.tsx';
import { ContextForm } from './context-form.tsx';
import { FormFail } from './form-fail.tsx';
import { inputErrors } from './input-errors.ts';

/** The check's own form, with the browser's verdict as one types and the server's on request. */
export function TryCheck({ check }: { check: Check }) {
  const [inputs, setInputs] = useState<Inputs>({});
  const [context, setContext] = useState<FindingContext>({});
  const [edition, setEdition] = useState(check.defaultEdition);
  const evaluate = useChange(routes.evaluateCheck);
  const problem = evaluate.error ? problemOf(evaluate.error) : null;
  const change = (next: Inputs) => {
    setInputs(next);
    // An answer to other measurements must not stand under these.
    evaluate.reset();
  };
  const send = () =>
    evaluate.mutate({
      params: { checkId: check.id },
      query: { locale: 'en' },
      body: { inputs: askedInputs(check.inputs, inputs), edition, context },
    });
  return (
    <div className="try-check stack">
      {check.editions.length > 1 && (
        <Select
          label="Edition"
          options={check.editions.map((each) => ({ value: each.id, label: each.title.en }))}
          value={edition}
          onChange={setEdition}
        />
      )}
      <CheckForm
        check={check}
        inputs={inputs}
        onChange={change}
        context={context}
        edition={edition}
        serverErrors={inputErrors(problem)}
      />
      <ContextForm context={context} onChange={setContext} />
      <FormFail problem={problem} doing="Asking the server" />
      <p>
        <Button look="go" busy={evaluate.isPending} onClick={send}>
          Ask the server
        </Button>
      </p>
      {evaluate.data && (
        <section aria-live="polite" className="stack">
          <h3>The server’s answer</h3>
          <OutcomeView outcome={evaluate.data} sources="none" />
          <Facts facts={valueFacts(evaluate.data)} />
        </section>
      )}
    </div>
  );
}
