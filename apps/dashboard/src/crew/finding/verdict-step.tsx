import type { FindingContext } from '@underlath/contract';
import { editionUnder } from '@underlath/rules';
import type { Check } from '@underlath/rules/kernel';
import { useT } from '../../shared/i18n/locale.tsx';
import { commonWords } from '../../shared/i18n/messages/common.ts';
import { crewWords } from '../../shared/i18n/messages/crew.ts';
import { askedInputs, type Inputs, visibleFields } from '../../shared/measure/form.ts';
import { OutcomeView, useSaid } from '../../shared/measure/outcome-view.tsx';
import { type LiveOutcome, useOutcome } from '../../shared/measure/use-outcome.ts';
import { Button } from '../../shared/ui/button.tsx';
import { RadioGroup } from '../../shared/ui/choice.tsx';
import { TextArea } from '../../shared/ui/field.tsx';
import { CrewFrame } from '../crew-frame.tsx';
import { contextOf } from './context.ts';
import { type StepProps, useDraftEditions, useDraftPlace, useFinishDraft } from './step.ts';

/** What the rule says, what to do now, what else to know, and save. */
export function VerdictStep({ check, draft, change, go, back }: StepProps & { check: Check }) {
  const t = useT(crewWords);
  const { place } = useDraftPlace(draft);
  const context = contextOf(draft.context, place);
  const finish = useFinishDraft();
  const editions = useDraftEditions(draft);
  const edition = editionUnder(check, editions, draft.inputs);
  const { outcome, errors } = useOutcome(check, draft.inputs, context, edition);
  const save = () => finish({ ...draft, context, inputs: askedInputs(check.inputs, draft.inputs) });
  const firstRefused = Object.keys(errors)[0];
  const mend = () => go('measure', firstRefused === undefined ? undefined : stepOf(check, draft.inputs, firstRefused));
  return (
    <CrewFrame
      back={back}
      foot={
        firstRefused !== undefined ? (
          <Button look="go" wide onClick={mend}>
            {t('measureNow')}
          </Button>
        ) : draft.locationId ? (
          <Button look="go" wide onClick={save}>
            {t('saveFinding')}
          </Button>
        ) : (
          <Button look="go" wide onClick={() => go('where')}>
            {t('whereTitle')}
          </Button>
        )
      }
    >
      <h1>{t('verdictTitle')}</h1>
      <Verdict outcome={outcome} errors={errors} onMeasure={() => go('measure')} />
      {check.role === 'gravity' && <About context={draft.context} onChange={(next) => change({ context: next })} />}
      <TextArea
        label={t('noteLabel')}
        hint={t('noteHint')}
        value={draft.note}
        onChange={(note) => change({ note })}
        maxLength={4000}
      />
    </CrewFrame>
  );
}

/** The question at which a refused measurement stands (`counts.flush` at `counts`). */
const stepOf = (check: Check, inputs: Inputs, path: string): number =>
  Math.max(
    0,
    visibleFields(check.inputs, inputs).findIndex(({ name }) => name === path.split('.')[0]),
  );

function Verdict({ outcome, errors, onMeasure }: LiveOutcome & { onMeasure: () => void }) {
  const t = useT(crewWords);
  const said = useSaid(outcome);
  const problems = Object.values(errors);
  return (
    <>
      {said && <OutcomeView outcome={said} sources="folded" />}
      {problems.length > 0 && (
        <div className="field-error" role="alert">
          {problems.map((problem) => (
            <p key={problem}>{problem}</p>
          ))}
        </div>
      )}
      {outcome && outcome.missing.length > 0 && <Button onClick={onMeasure}>{t('measureNow')}</Button>}
    </>
  );
}

/** Two facts that decide how grave a failing support is. Unknown is an answer, and is taken cautiously. */
function About({ context, onChange }: { context: FindingContext; onChange: (context: FindingContext) => void }) {
  const t = useT(crewWords);
  const c = useT(commonWords);
  const ask = (name: 'shored' | 'occupiedBelow') => (
    <RadioGroup
      label={t(name)}
      layout="row"
      value={context[name] === undefined ? 'unknown' : context[name] ? 'yes' : 'no'}
      options={[
        { value: 'yes', label: c('yes') },
        { value: 'no', label: c('no') },
        { value: 'unknown', label: c('notKnown') },
      ]}
      onChange={(value) => {
        const { [name]: _old, ...rest } = context;
        onChange(value === 'unknown' ? rest : { ...rest, [name]: value === 'yes' });
      }}
    />
  );
  return (
    <section className="stack">
      <h2>{t('aboutTitle')}</h2>
      {ask('shored')}
      {ask('occupiedBelow')}
    </section>
  );
}
