import type { PlaceScope, ScopeStep } from '@underlath/contract';
import { formatNumber } from '../i18n/format.ts';
import { useLocale, useT } from '../i18n/locale.tsx';
import { scopeWords } from '../i18n/messages/scope.ts';
import { waitingFor } from './step-times.ts';
import './scope.css';

const units: Record<ScopeStep['quantity']['unit'], string> = { each: '×', sf: ' ft²', lf: ' ft' };

type ScopeStepsProps = {
  plan: PlaceScope;
  /** The step whose area is lit. */
  litId: string | null;
  onLight: (id: string | null) => void;
  /** With hours and what each step waits for; a crew needs the order and the amounts. */
  detailed?: boolean;
};

/** What is done, in an order that can be followed; hold points stand across the list. */
export function ScopeSteps({ plan, litId, onLight, detailed = false }: ScopeStepsProps) {
  const t = useT(scopeWords);
  const { tag } = useLocale();
  const { operations, criticalPath } = plan.scope;
  const numberOf = new Map(plan.findings.map(({ id, number }) => [id, number]));
  const placeOf = new Map(operations.map(({ id }, at) => [id, at + 1]));
  const list = (numbers: readonly (number | undefined)[]) =>
    numbers
      .filter((one) => one !== undefined)
      .toSorted((a, b) => a - b)
      .join(', ');
  const holdHelp = (step: ScopeStep, at: number) => {
    const waiting = waitingFor(operations, step.id);
    return waiting.length === operations.length - at - 1
      ? t('holdAll')
      : t('holdSome', { list: list(waiting.map((id) => placeOf.get(id))) });
  };
  return (
    <ol className="scope-steps">
      {operations.map((step, at) => (
        <li key={step.id} className={step.holdPoint ? 'scope-hold' : undefined}>
          <button
            type="button"
            className="scope-step"
            aria-pressed={step.id === litId}
            onClick={() => onLight(step.id === litId ? null : step.id)}
          >
            <span className="scope-number" aria-hidden="true">
              {at + 1}
            </span>
            <span className="scope-what">
              {step.holdPoint && <span className="scope-hold-word">{t('hold')}</span>}
              <b>{step.title}</b>
              <span className="soft">
                {t('forFindings', { list: list(step.for.map((id) => numberOf.get(id))) })}
                {detailed && step.after.length > 0 && (
                  <> · {t('afterSteps', { list: list(step.after.map((id) => placeOf.get(id))) })}</>
                )}
              </span>
              {step.assumed && <span className="scope-assumed">{t('assumed')}</span>}
            </span>
            <span className="scope-amount">
              {formatNumber(step.quantity.value, tag, 2)}
              {units[step.quantity.unit]}
            </span>
            {detailed && (
              <span className="scope-hours">
                {step.hours.high > 0 ? (
                  <>
                    {formatNumber(step.hours.likely, tag, 1)} h
                    <span className="soft">
                      {t('hoursRange', {
                        low: formatNumber(step.hours.low, tag, 1),
                        high: formatNumber(step.hours.high, tag, 1),
                      })}
                    </span>
                    {criticalPath.includes(step.id) && <span className="scope-critical">{t('longestChain')}</span>}
                  </>
                ) : (
                  <span className="soft">{t('noHours')}</span>
                )}
              </span>
            )}
          </button>
          {step.holdPoint && <p className="scope-hold-help">{holdHelp(step, at)}</p>}
        </li>
      ))}
    </ol>
  );
}
