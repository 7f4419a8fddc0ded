import type { Check, Situation } from '@underlath/rules';
import { leftOutWords, say } from '@underlath/rules/kernel';
import { type ReactNode, useEffect, useRef, useState } from 'react';
import { CheckDrawing } from '../drawing/check-drawing.tsx';
import { TapePicture } from '../drawing/tape-picture.tsx';
import { useLocale, useT } from '../i18n/locale.tsx';
import { commonWords } from '../i18n/messages/common.ts';
import { measureWords } from '../i18n/messages/measure.ts';
import { Button } from '../ui/button.tsx';
import { FieldQuestion } from './field-question.tsx';
import {
  givenOrDefault,
  type Inputs,
  isOptional,
  pictureOf,
  setAnswer,
  type VisibleField,
  visibleFields,
  withDefaults,
} from './form.ts';
import { LiveVerdict, VerdictLine } from './outcome-view.tsx';
import { useRefusals } from './refusals.tsx';
import { useOutcome } from './use-outcome.ts';
import { useRestedErrors } from './use-rested.ts';
import './measure.css';

export type CheckFormProps = {
  check: Check;
  inputs: Inputs;
  onChange: (inputs: Inputs) => void;
  context?: Situation;
  edition?: string | undefined;
  /** Errors the server found, by path (`counts.flush`). */
  serverErrors?: Readonly<Record<string, string>>;
  /** Told whether anything in the form is refused as it stands; such a form is not sent. */
  onRefused?: (isRefused: boolean) => void;
};

/**
 * The sheet: every question of the check in one column, the verdict at the foot. The drawings that move stand beside
 * their questions; a check without them has its own drawing beside them all, where the question in hand stands out.
 */
export function CheckForm(props: CheckFormProps) {
  const { check, inputs, onChange, context, edition, serverErrors = {}, onRefused } = props;
  const { outcome, errors } = useOutcome(check, inputs, context, edition);
  const [shownErrors, settle] = useRestedErrors(errors);
  const { isRefused, watch } = useRefusals();
  const refused = isRefused || Object.keys(errors).length > 0;
  useEffect(() => onRefused?.(refused), [onRefused, refused]);
  const answers = withDefaults(check.inputs, inputs);
  const [asked, setAsked] = useState<string>();
  const drawnRowByRow = Object.values(check.inputs).some(pictureOf);
  return watch(
    // biome-ignore lint/a11y/noStaticElementInteractions: it only watches which question has the focus
    <div
      onBlur={settle}
      className={drawnRowByRow ? '' : 'check-beside'}
      onFocus={(event) => setAsked(event.target.closest<HTMLElement>('[data-asks]')?.dataset.asks)}
    >
      {!drawnRowByRow && <CheckDrawing check={check} asked={asked} />}
      <div className="check-sheet">
        {visibleFields(check.inputs, inputs).map(({ name, field }) => (
          <div className="check-sheet-row" key={name} data-asks={name}>
            <FieldQuestion
              name={name}
              field={field}
              value={givenOrDefault(name, field, inputs)}
              onChange={(value) => onChange(setAnswer(inputs, name, value))}
              optional={isOptional(field, answers)}
              errors={{ ...serverErrors, ...shownErrors }}
              path={name}
            />
            {pictureOf(field) && (
              <TapePicture check={check} name={name} field={field} value={answers[name]} inputs={answers} />
            )}
          </div>
        ))}
        <LiveVerdict outcome={outcome} />
      </div>
    </div>,
  );
}

export type CheckStepsProps = CheckFormProps & {
  /** Which question is asked; kept by the screen, so that it survives in a draft. */
  step: number;
  onStep: (step: number) => void;
  /** After the last question. */
  onDone: () => void;
  doneLabel?: string;
  /** Puts question and foot into the screen's own frame: the foot holds the actions and sticks to the bottom. */
  children: (parts: { body: ReactNode; foot: ReactNode; at: number; of: number }) => ReactNode;
};

/** One question a screen, for a gloved hand: the question, the drawing that moves with the value, keys, the verdict. */
export function CheckSteps(props: CheckStepsProps) {
  const {
    check,
    inputs,
    onChange,
    context,
    edition,
    serverErrors = {},
    step,
    onStep,
    onDone,
    doneLabel,
    children,
  } = props;
  const { locale } = useLocale();
  const t = useT(measureWords);
  const c = useT(commonWords);
  const { outcome, errors } = useOutcome(check, inputs, context, edition);
  const [shownErrors, settle] = useRestedErrors(errors);
  const { isRefused, watch } = useRefusals();
  const steps = visibleFields(check.inputs, inputs);
  const at = Math.min(step, steps.length - 1);
  const current = steps[at];
  const heading = useRef<HTMLHeadingElement>(null);
  const shown = useRef(current?.name);
  useEffect(() => {
    // A new question takes the focus, so that it is read aloud and the keyboard starts there.
    if (shown.current !== current?.name) heading.current?.focus();
    shown.current = current?.name;
  }, [current?.name]);
  if (!current) return null;
  const { name, field } = current;
  const leftOut = leftOutWords(field);
  const answers = withDefaults(check.inputs, inputs);
  const value = givenOrDefault(name, field, inputs);
  const last = at === steps.length - 1;
  const elsewhere = Object.keys(shownErrors).filter((path) => !standsAt(path, name));
  const refusedHere = isRefused || Object.keys(errors).some((path) => standsAt(path, name));
  const go = () => {
    if (refusedHere || (last && Object.keys(errors).length > 0)) settle();
    else if (last) onDone();
    else onStep(at + 1);
  };
  const body = watch(
    <>
      <div className="question">
        <h1 ref={heading} tabIndex={-1}>
          {say(field.label, locale)}
        </h1>
        {field.howToMeasure && <p className="soft">{say(field.howToMeasure, locale)}</p>}
        {leftOut && <p className="soft">{say(leftOut, locale)}</p>}
      </div>
      <TapePicture check={check} name={name} field={field} value={value} inputs={answers} />
      <FieldQuestion
        key={name}
        name={name}
        field={field}
        value={value}
        onChange={(next) => onChange(setAnswer(inputs, name, next))}
        optional={isOptional(field, answers)}
        pad
        labelHidden
        errors={{ ...serverErrors, ...shownErrors }}
        path={name}
      />
      {outcome && outcome.verdict !== 'undetermined' && outcome.reasons[0] && <p>{say(outcome.reasons[0], locale)}</p>}
      {elsewhere.map((path) => (
        <Elsewhere
          key={path}
          words={shownErrors[path] ?? ''}
          step={steps.findIndex((one) => standsAt(path, one.name))}
          steps={steps}
          onStep={onStep}
        />
      ))}
    </>,
  );
  const foot = (
    <div className="step-foot">
      <VerdictLine outcome={outcome} />
      {value === undefined && !isRefused ? (
        <Button wide onClick={go}>
          {t(field.kind === 'list' ? 'cantTellList' : 'cantTell')}
        </Button>
      ) : (
        <Button look="go" wide onClick={go}>
          {last ? (doneLabel ?? c('done')) : c('next')}
        </Button>
      )}
    </div>
  );
  return children({ body, foot, at: at + 1, of: steps.length });
}

const standsAt = (path: string, name: string): boolean => path === name || path.startsWith(`${name}.`);

type ElsewhereProps = { words: string; step: number; steps: readonly VisibleField[]; onStep: (step: number) => void };

/** What this answer rules out at another question, and the way there. */
function Elsewhere({ words, step, steps, onStep }: ElsewhereProps) {
  const { locale } = useLocale();
  const t = useT(measureWords);
  const question = steps[step];
  return (
    <div className="field-error" role="alert">
      <p>{words}</p>
      {question && (
        <Button onClick={() => onStep(step)}>{t('mend', { what: say(question.field.label, locale) })}</Button>
      )}
    </div>
  );
}
