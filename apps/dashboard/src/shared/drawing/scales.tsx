import { useId, useRef } from 'react';
import { formatMoney } from '../i18n/format.ts';
import { useLocale, useT } from '../i18n/locale.tsx';
import { drawingWords } from '../i18n/messages/drawing.ts';
import { useSize } from './use-size.ts';
import './drawing.css';

type MeasureScaleProps = {
  /** What was measured, in the unit of the limit. Null: not measured yet, only the limit is drawn. */
  value: number | null;
  limit: number;
  /** True when a larger value is better (a seat's length), false when it is worse (a cut's share). */
  moreIsBetter: boolean;
  /** Writes a value with its unit. */
  format: (value: number) => string;
  /** Words for the limit: "flush". */
  limitName?: string;
  /** Ends of the scale; chosen around value and limit when left out. */
  from?: number;
  to?: number;
  /** Distance of the small ticks. */
  tick?: number;
};

/** Round ends for a scale that shows both the value and the limit with air around them. */
export function scaleEnds(value: number | null, limit: number): { from: number; to: number; tick: number } {
  const low = Math.min(limit, value ?? limit);
  const high = Math.max(limit, value ?? limit);
  const span = Math.max(high - low, Math.abs(limit) * 0.5, 1e-6) * 1.7;
  const middle = (low + high) / 2;
  const tick = niceStep(span / 10);
  const start = middle - span / 2;
  // What can't be below zero starts at zero, unless zero is so far off that it would flatten the difference.
  const from = low >= 0 && low < span ? 0 : Math.floor(start / tick) * tick;
  return { from, to: Math.ceil((middle + span / 2) / tick) * tick, tick };
}

function niceStep(rough: number): number {
  const power = 10 ** Math.floor(Math.log10(rough));
  const step = [1, 2, 2.5, 5, 10].find((candidate) => candidate * power >= rough) ?? 10;
  return step * power;
}

/** A measurement against its limit: how far off is seen before it is read. */
export function MeasureScale({ value, limit, moreIsBetter, format, limitName, ...given }: MeasureScaleProps) {
  const ref = useRef<SVGSVGElement>(null);
  const { widthPx, textPx } = useSize(ref, { widthPx: 330, textPx: 14 });
  const t = useT(drawingWords);
  const id = useId();
  const auto = scaleEnds(value, limit);
  const { from, to, tick } = { from: given.from ?? auto.from, to: given.to ?? auto.to, tick: given.tick ?? auto.tick };
  const x = (v: number) => 8 + ((v - from) / (to - from)) * (widthPx - 16);
  const axis = textPx * 1.6 + 18;
  const fits = value !== null && (moreIsBetter ? value >= limit : value <= limit);
  const anchorFor = (at: number, words: string) => {
    const half = words.length * textPx * 0.29;
    if (at - half < 0) return 'start';
    return at + half > widthPx ? 'end' : 'middle';
  };
  const limitWords = t('limitAt', { value: limitName ?? format(limit) });
  const shown = value === null ? null : Math.min(to, Math.max(from, value));
  const ticks = Array.from({ length: Math.min(81, Math.round((to - from) / tick) + 1) }, (_, at) => from + at * tick);
  const bad = moreIsBetter ? [from, limit] : [limit, to];
  return (
    <svg
      ref={ref}
      className="drawing"
      viewBox={`0 0 ${widthPx} ${axis + textPx * 1.6 + 10}`}
      role="img"
      aria-labelledby={id}
    >
      <title id={id}>
        {value === null ? limitWords : t('scaleWords', { value: format(value), limit: limitName ?? format(limit) })}
      </title>
      <line className="d-thin" x1={x(from)} y1={axis} x2={x(to)} y2={axis} />
      <line className="scale-bad" x1={x(bad[0] ?? from)} y1={axis} x2={x(bad[1] ?? to)} y2={axis} />
      {ticks.map((v, at) => (
        <line key={v} className="d-thin" x1={x(v)} x2={x(v)} y1={axis} y2={axis - (at % 5 === 0 ? 9 : 5)} />
      ))}
      <line className="scale-limit" x1={x(limit)} x2={x(limit)} y1={axis - 16} y2={axis + 10} />
      <text x={x(limit)} y={axis - 22} textAnchor={anchorFor(x(limit), limitWords)} fontSize={textPx} fontWeight={600}>
        {limitWords}
      </text>
      {value !== null && shown !== null && (
        <>
          <circle className={fits ? 'scale-dot scale-dot-fits' : 'scale-dot'} cx={x(shown)} cy={axis} r={7} />
          <text
            x={x(shown)}
            y={axis + textPx + 12}
            textAnchor={anchorFor(x(shown), format(value))}
            fontSize={textPx * 1.07}
            fontWeight={800}
          >
            {format(value)}
          </text>
        </>
      )}
    </svg>
  );
}

type RangeBarProps = { lowCents: number; p50Cents: number; p80Cents: number; highCents: number };

/** A price range as a bar with the even chance (P50) and four-in-five (P80) marked. */
export function RangeBar({ lowCents, p50Cents, p80Cents, highCents }: RangeBarProps) {
  const ref = useRef<SVGSVGElement>(null);
  const { widthPx, textPx } = useSize(ref, { widthPx: 330, textPx: 14 });
  const { tag } = useLocale();
  const t = useT(drawingWords);
  const id = useId();
  const money = (cents: number) => formatMoney(cents, tag, { trim: true });
  const x = (cents: number) => 4 + ((cents - lowCents) / Math.max(1, highCents - lowCents)) * (widthPx - 8);
  const top = textPx + 10;
  const below = top + 16 + textPx + 8;
  return (
    <svg ref={ref} className="drawing" viewBox={`0 0 ${widthPx} ${below + 6}`} role="img" aria-labelledby={id}>
      <title id={id}>{t('rangeWords', { p50: money(p50Cents), p80: money(p80Cents) })}</title>
      <rect className="range-all" x={x(lowCents)} y={top} width={x(highCents) - x(lowCents)} height={14} />
      <rect className="range-likely" x={x(lowCents)} y={top} width={x(p80Cents) - x(lowCents)} height={14} />
      <line className="scale-limit" x1={x(p50Cents)} x2={x(p50Cents)} y1={top - 6} y2={top + 20} />
      <line className="scale-limit" x1={x(p80Cents)} x2={x(p80Cents)} y1={top - 6} y2={top + 20} />
      <text x={x(p50Cents)} y={top - 10} textAnchor="middle" fontSize={textPx} fontWeight={600}>
        P50 {money(p50Cents)}
      </text>
      <text
        x={Math.min(x(p80Cents), widthPx - textPx * 4.5)}
        y={below}
        textAnchor="middle"
        fontSize={textPx}
        fontWeight={600}
      >
        P80 {money(p80Cents)}
      </text>
    </svg>
  );
}

/** How much of a link's strength may still be counted: a bar that is full, part full, empty, or dashed for unseen. */
export function ShareBar({ share, unseen }: { share: number | null; unseen?: boolean }) {
  return (
    <svg className="share-bar" viewBox="0 0 100 9" preserveAspectRatio="none" aria-hidden="true">
      <rect
        className={unseen || share === null ? 'share-unseen' : 'share-all'}
        x={0.6}
        y={0.6}
        width={98.8}
        height={7.8}
      />
      {share !== null && !unseen && <rect className="d-ink" x={0} y={0} width={share * 100} height={9} />}
    </svg>
  );
}
