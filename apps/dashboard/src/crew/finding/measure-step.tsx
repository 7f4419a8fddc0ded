import type { Check } from '@underlath/rules/kernel';
import { useT } from '../../shared/i18n/locale.tsx';
import { commonWords } from '../../shared/i18n/messages/common.ts';
import { measureWords } from '../../shared/i18n/messages/measure.ts';
import { CheckSteps } from '../../shared/measure/check-form.tsx';
import { CrewFrame } from '../crew-frame.tsx';
import { contextOf } from './context.ts';
import { type StepProps, useDraftPlace } from './step.ts';

/** The check's own questions, one a screen, with the verdict so far under them. */
export function MeasureStep({ check, draft, change, go, back }: StepProps & { check: Check }) {
  const c = useT(commonWords);
  const m = useT(measureWords);
  const { place } = useDraftPlace(draft);
  return (
    <CheckSteps
      check={check}
      inputs={draft.inputs}
      onChange={(inputs) => change({ inputs })}
      context={contextOf(draft.context, place)}
      step={draft.question}
      onStep={(question) => go('measure', question)}
      onDone={() => go('verdict')}
      doneLabel={c('next')}
    >
      {({ body, foot, at, of }) => (
        <CrewFrame back={back} progress={m('step', { at, of })} foot={foot}>
          {body}
        </CrewFrame>
      )}
    </CheckSteps>
  );
}
