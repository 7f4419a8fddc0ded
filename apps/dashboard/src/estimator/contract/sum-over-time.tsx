import type { Contract, LedgerEntry } from '@underlath/contract';
import { useId, useRef } from 'react';
import { type Size, useSize } from '../../shared/drawing/use-size.ts';
import { formatDate, formatMoney } from '../../shared/i18n/format.ts';
import { useSiteZone } from '../../shared/i18n/site-zone.tsx';
import { today } from '../desk/numbers.ts';
import { dayShare, labelsWithRoom, type SumPlot, sumPlotOf } from './sum-over-time-layout.ts';

const heightPx = 230;
const edgePx = 4;
/** A letter's width as a share of the text's size, taken from words of this family. */
const letterShare = 0.5;

const money = (cents: number) => formatMoney(cents, 'en-US', { trim: true });
const dayWords = (day: string) => formatDate(day, 'en-US');

type SumOverTimeProps = { contract: Contract; entries: readonly LedgerEntry[] };

/** The sum from the start of the contract to its finish: a step for each change of it, what waits with a dashed line. */
export function SumOverTime({ contract, entries }: SumOverTimeProps) {
  const ref = useRef<HTMLDivElement>(null);
  const size = useSize(ref, { widthPx: 800, textPx: 14 });
  const id = useId();
  const { finishOn, pendingCents } = contract;
  const now = today(useSiteZone());
  const plot = sumPlotOf(entries, { today: now, finishOn, pendingCents });
  if (!plot) return <p className="soft">Once the contract has a start, its sum over time is drawn here.</p>;
  return (
    <div ref={ref}>
      <svg className="drawing sum-plot" viewBox={`0 0 ${size.widthPx} ${heightPx}`} role="img" aria-labelledby={id}>
        <title id={id}>{wordsOf(plot)}</title>
        <Plot plot={plot} size={size} finishOn={finishOn} now={now} />
      </svg>
    </div>
  );
}

function wordsOf({ originalCents, steps, nowCents, waitingCents, from }: SumPlot): string {
  const words = steps.map(({ on, name, toCents }) => `${dayWords(on)}, ${name}: ${money(toCents)}`);
  return [
    `Contract sum over time, from ${money(originalCents)} on ${dayWords(from)}`,
    ...words,
    `Now ${money(nowCents)}`,
    ...(waitingCents === null ? [] : [`${money(waitingCents)} if what waits is approved`]),
  ].join('. ');
}

type PlotProps = { plot: SumPlot; size: Size; finishOn: string | null; now: string };

function Plot({ plot, size, finishOn, now }: PlotProps) {
  const { textPx, widthPx } = size;
  const [top, bottom] = [textPx * 3, heightPx - textPx * 3.4];
  const axis = heightPx - textPx * 1.6;
  const x = (day: string) => edgePx + dayShare(day, plot.from, plot.to) * (widthPx - 2 * edgePx);
  // The steps show differences, so the foot of the plot is just under the lowest sum and nothing is filled down to it.
  const y = (cents: number) =>
    bottom - ((cents - plot.lowCents) / Math.max(1, plot.highCents - plot.lowCents)) * (bottom - top);
  const path = plot.steps.map(({ on, toCents }) => `H${x(on)} V${y(toCents)}`).join(' ');
  const up = plot.waitingCents === null || plot.waitingCents >= plot.nowCents;
  return (
    <>
      <line className="d-thin" x1={x(plot.from)} x2={x(plot.to)} y1={axis} y2={axis} />
      <line className="d-grid" x1={x(now)} x2={x(now)} y1={textPx * 1.3} y2={axis} />
      <path className="sum-line" d={`M${x(plot.from)} ${y(plot.originalCents)} ${path} H${x(now)}`} />
      <line className="sum-ahead" x1={x(now)} x2={x(plot.to)} y1={y(plot.nowCents)} y2={y(plot.nowCents)} />
      {plot.waitingCents !== null && (
        <>
          <path className="sum-waiting" d={`M${x(now)} ${y(plot.nowCents)} V${y(plot.waitingCents)} H${x(plot.to)}`} />
          <text x={x(plot.to)} y={y(plot.waitingCents) + (up ? -7 : textPx + 4)} fontSize={textPx} textAnchor="end">
            {money(plot.waitingCents)} if approved
          </text>
        </>
      )}
      <text
        x={x(plot.to)}
        y={y(plot.nowCents) + (up ? textPx + 4 : -7)}
        fontSize={textPx}
        fontWeight={700}
        textAnchor="end"
      >
        {money(plot.nowCents)} now
      </text>
      <StepNames plot={plot} size={size} x={x} y={y} />
      <Days plot={plot} size={size} x={x} axis={axis} now={now} finishOn={finishOn} />
    </>
  );
}

type Scale = (value: number) => number;

function StepNames({ plot, size, x, y }: { plot: SumPlot; size: Size; x: (day: string) => number; y: Scale }) {
  const { textPx } = size;
  const labels = plot.steps.map((step) => ({
    ...step,
    xPx: x(step.on) + 6,
    widthPx: step.name.length * textPx * letterShare + 6,
  }));
  const shown = labelsWithRoom(labels);
  return (
    <>
      <text x={edgePx} y={y(plot.originalCents) + textPx + 4} fontSize={textPx} fontWeight={700}>
        {money(plot.originalCents)}
      </text>
      {labels.map(
        ({ key, xPx, name, toCents }, at) =>
          shown[at] && (
            <text key={key} x={xPx} y={y(toCents) - 6} fontSize={textPx} className="d-soft">
              {name}
            </text>
          ),
      )}
    </>
  );
}

type DaysProps = {
  plot: SumPlot;
  size: Size;
  x: (day: string) => number;
  axis: number;
  now: string;
  finishOn: string | null;
};

function Days({ plot, size, x, axis, now, finishOn }: DaysProps) {
  const { textPx, widthPx } = size;
  const y = axis + textPx + 4;
  const nowHalfPx = (`today, ${dayWords(now)}`.length * textPx * letterShare) / 2;
  const anchor = x(now) < nowHalfPx ? 'start' : x(now) > widthPx - nowHalfPx ? 'end' : 'middle';
  return (
    <>
      <text x={x(now)} y={textPx} fontSize={textPx} textAnchor={anchor}>
        today, {dayWords(now)}
      </text>
      <text x={x(plot.from)} y={y} fontSize={textPx} className="d-soft">
        {dayWords(plot.from)}
      </text>
      {finishOn === plot.to && (
        <text x={x(plot.to)} y={y} fontSize={textPx} textAnchor="end" className="d-soft">
          finish {dayWords(finishOn)}
        </text>
      )}
    </>
  );
}
