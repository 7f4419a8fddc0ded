import type { Severity } from '@underlath/rules/kernel';
import { formatLength, lengthParts } from '@underlath/rules/kernel';
import { type ReactNode, useId } from 'react';
import './drawing.css';

/** The ink a severity is drawn in: dark enough for a thin line. */
export const severityInk: Record<Severity, string> = {
  'make-safe': 'var(--red-line)',
  engineer: 'var(--orange-line)',
  repair: 'var(--yellow-line)',
  record: 'var(--blue-line)',
};

/** 45-degree hatch. Put one in the drawing and fill with `url(#id)`. */
export function HatchPattern({ id, color, gapPx = 7 }: { id: string; color: string; gapPx?: number }) {
  return (
    <pattern id={id} width={gapPx} height={gapPx} patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
      <rect width={gapPx} height={gapPx} fill={color} fillOpacity={0.14} />
      <line x1={0} y1={0} x2={0} y2={gapPx} stroke={color} strokeWidth={2.2} />
    </pattern>
  );
}

/** An id that is safe inside `url(#...)`. */
export function useDrawingId(): string {
  return `d${useId().replace(/[^\w-]/g, '')}`;
}

type HatchProps = { x: number; y: number; width: number; height: number; color: string; dashed?: boolean };

/** A hatched rectangle on its own, for pictures. */
export function Hatch({ color, dashed, ...box }: HatchProps) {
  const id = useDrawingId();
  return (
    <g>
      <defs>
        <HatchPattern id={id} color={color} />
      </defs>
      <rect {...box} fill={`url(#${id})`} stroke={color} strokeWidth={2} strokeDasharray={dashed ? '5 4' : undefined} />
    </g>
  );
}

/** A length as text inside an SVG, with the fraction set as one. */
export function LengthSpans({ inches, style = 'feet-inches' }: { inches: number; style?: 'feet-inches' | 'inches' }) {
  const parts = lengthParts(inches, { style });
  const showWhole = parts.whole > 0 || parts.numerator === 0 || parts.feet > 0;
  return (
    <>
      {parts.negative && '−'}
      {parts.feet > 0 && `${parts.feet}'-`}
      {showWhole && parts.whole}
      {parts.numerator > 0 && (
        <>
          {/* A thin space keeps "7 3/8" from being read as "73/8" when copied. */}
          {showWhole && '\u2009'}
          <tspan className="d-sup" dy="-0.35em">
            {parts.numerator}
          </tspan>
          <tspan dy="0.35em">⁄</tspan>
          <tspan className="d-sub" dy="0.12em">
            {parts.denominator}
          </tspan>
          <tspan dy="-0.12em">{'"'}</tspan>
        </>
      )}
      {parts.numerator === 0 && '"'}
    </>
  );
}

type DimensionProps = {
  /** Both ends on the thing measured; a dimension is level or plumb. */
  x1: number;
  y1: number;
  x2: number;
  y2: number;
  /** How far off the dimension line stands; the sign says to which side (down and right are positive). */
  off: number;
  inches?: number;
  label?: string;
  textPx?: number;
  bold?: boolean;
};

/** Room the words of a dimension need on its line, ticks included. */
const wordsPx = (words: string, textPx: number) => words.length * textPx * 0.55 + 10;

/** Witness lines, a dimension line, slanted ticks, and the length set on it, or past its end where there is no room. */
export function DimensionLine({ x1, y1, x2, y2, off, inches, label, textPx = 14, bold }: DimensionProps) {
  const plumb = x1 === x2;
  const sign = Math.sign(off);
  const [ox, oy] = plumb ? [off, 0] : [0, off];
  const [gx, gy] = plumb ? [sign * 5, 0] : [0, sign * 5];
  const words = inches === undefined ? (label ?? '') : formatLength(inches);
  const fits = wordsPx(words, textPx) <= Math.abs(plumb ? y2 - y1 : x2 - x1);
  const at = fits
    ? { x: (x1 + x2) / 2 + ox, y: (y1 + y2) / 2 + oy - 5, anchor: 'middle' as const }
    : plumb
      ? {
          x: x1 + ox + sign * 10,
          y: (y1 + y2) / 2 + textPx * 0.36,
          anchor: sign > 0 ? ('start' as const) : ('end' as const),
        }
      : { x: Math.max(x1, x2) + 10, y: y1 + oy + textPx * 0.36, anchor: 'start' as const };
  return (
    <g className="d-dimension">
      <line x1={x1 + gx} y1={y1 + gy} x2={x1 + ox + gx} y2={y1 + oy + gy} />
      <line x1={x2 + gx} y1={y2 + gy} x2={x2 + ox + gx} y2={y2 + oy + gy} />
      <line x1={x1 + ox} y1={y1 + oy} x2={x2 + ox} y2={y2 + oy} />
      <path className="d-tick" d={`M${x1 + ox - 4} ${y1 + oy + 4}l8 -8M${x2 + ox - 4} ${y2 + oy + 4}l8 -8`} />
      <text
        className="d-halo"
        x={at.x}
        y={at.y}
        textAnchor={at.anchor}
        fontSize={textPx}
        fontWeight={bold ? 800 : 600}
        transform={plumb && fits ? `rotate(-90 ${at.x} ${at.y + 5})` : undefined}
      >
        {inches === undefined ? label : <LengthSpans inches={inches} />}
      </text>
    </g>
  );
}

type LeaderProps = {
  from: { x: number; y: number };
  to: { x: number; y: number };
  title: string;
  detail?: string | undefined;
  side: 'left' | 'right';
  textPx: number;
};

/** A dot on the thing, a thin line, and its name with a halo so that it reads over anything. */
export function Leader({ from, to, title, detail, side, textPx }: LeaderProps) {
  const x = to.x + (side === 'right' ? 5 : -5);
  const anchor = side === 'right' ? 'start' : 'end';
  const y = detail ? to.y - textPx * 0.2 : to.y + textPx * 0.35;
  return (
    <g className="d-leader">
      <polyline points={`${from.x},${from.y} ${to.x},${to.y}`} />
      <circle cx={from.x} cy={from.y} r={2.8} />
      <text className="d-halo" x={x} y={y} textAnchor={anchor} fontSize={textPx} fontWeight={700}>
        {title}
      </text>
      {detail && (
        <text className="d-halo d-soft" x={x} y={y + textPx * 1.15} textAnchor={anchor} fontSize={textPx}>
          {detail}
        </text>
      )}
    </g>
  );
}

/** A numbered disc in ink. */
export function NumberDisc({ x, y, number, r = 11 }: { x: number; y: number; number: number; r?: number }) {
  return (
    <g className="d-disc">
      <circle cx={x} cy={y} r={r} />
      <text
        className="d-disc-number"
        x={x}
        y={y + r * 0.43}
        textAnchor="middle"
        fontSize={r * (number > 99 ? 0.95 : 1.27)}
        fontWeight={800}
      >
        {number}
      </text>
    </g>
  );
}

/** Lines and words that a reader who listens gets in another way: from the title, the buttons or the list. */
export function Unspoken({ className, children }: { className?: string; children: ReactNode }) {
  return (
    // biome-ignore lint/a11y/noAriaHiddenOnFocusable: a <g> without tabindex takes no focus
    <g className={className} aria-hidden="true">
      {children}
    </g>
  );
}
