import type { PlaceScope } from '@underlath/contract';
import { useId, useRef } from 'react';
import { useSize } from '../drawing/use-size.ts';
import { formatNumber } from '../i18n/format.ts';
import { useLocale, useT } from '../i18n/locale.tsx';
import { scopeWords } from '../i18n/messages/scope.ts';
import { stepTimes } from './step-times.ts';
import './scope.css';

const namesFromPx = 620;
const NAME_LETTERS = 44;

const shorten = (title: string): string =>
  title.length > NAME_LETTERS ? `${title.slice(0, NAME_LETTERS - 1).trimEnd()}…` : title;

/** The earliest each step can be done: a bar each, thick on the longest chain of steps, a full line across at a hold point. */
export function StepBars({ plan, litId }: { plan: PlaceScope; litId: string | null }) {
  const ref = useRef<SVGSVGElement>(null);
  const { widthPx, textPx } = useSize(ref, { widthPx: 700, textPx: 14 });
  const t = useT(scopeWords);
  const { tag } = useLocale();
  const id = useId();
  const { operations, criticalPath } = plan.scope;
  const times = stepTimes(operations, plan.crewSize);
  const end = Math.max(0, ...times.map(({ to }) => to));
  if (end === 0) return null;
  const named = widthPx >= namesFromPx;
  const longest = Math.max(...operations.map(({ title }) => title.length));
  // Letters are about half as wide as high.
  const left = textPx * (named ? 3 + Math.min(longest, NAME_LETTERS) * 0.54 : 2.2);
  const rowPx = textPx * 1.5;
  const x = (hours: number) => left + (hours / end) * (widthPx - left - textPx * 3.5);
  const day = plan.hoursPerDay;
  const marks = [...Array.from({ length: Math.ceil(end / day) }, (_, at) => at * day), end];
  const heightPx = operations.length * rowPx + textPx * 2;
  return (
    <svg
      ref={ref}
      className="drawing"
      viewBox={`0 0 ${widthPx} ${heightPx}`}
      role="img"
      aria-labelledby={`${id} ${id}d`}
    >
      <title id={id}>{t('bars')}</title>
      <desc id={`${id}d`}>
        {operations
          .map((step, at) =>
            t('barWords', {
              step: step.title,
              from: formatNumber(times[at]?.from ?? 0, tag, 1),
              to: formatNumber(times[at]?.to ?? 0, tag, 1),
            }),
          )
          .join('. ')}
      </desc>
      {marks.map((hour) => (
        <g key={hour}>
          <line className="d-grid" x1={x(hour)} x2={x(hour)} y1={0} y2={heightPx - textPx * 1.6} />
          <text x={x(hour) + 3} y={heightPx - 4} fontSize={textPx}>
            {formatNumber(hour, tag, 1)} h
          </text>
        </g>
      ))}
      {operations.map((step, at) => {
        const { from, to } = times[at] ?? { from: 0, to: 0 };
        const middle = at * rowPx + rowPx / 2;
        const critical = criticalPath.includes(step.id);
        return (
          <g key={step.id}>
            <text x={textPx * 1.6} y={middle + textPx * 0.36} textAnchor="end" fontSize={textPx} fontWeight={700}>
              {at + 1}
            </text>
            {named && (
              <text x={textPx * 2.2} y={middle + textPx * 0.36} fontSize={textPx}>
                {shorten(step.title)}
              </text>
            )}
            {step.holdPoint && (
              <>
                <line className="scope-bar-hold" x1={x(to)} x2={x(to)} y1={middle} y2={heightPx - textPx * 1.6} />
                <text x={x(to) + 5} y={middle + textPx * 0.36} fontSize={textPx} fontWeight={700}>
                  {t('holdLine')}
                </text>
              </>
            )}
            <rect
              className={`scope-bar${critical ? ' scope-bar-critical' : ''}${step.id === litId ? ' scope-bar-lit' : ''}`}
              x={x(from)}
              y={middle - (critical ? rowPx * 0.32 : rowPx * 0.2)}
              width={Math.max(2, x(to) - x(from))}
              height={critical ? rowPx * 0.64 : rowPx * 0.4}
            />
          </g>
        );
      })}
    </svg>
  );
}
