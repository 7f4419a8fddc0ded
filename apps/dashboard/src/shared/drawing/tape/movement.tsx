import { clamp } from '../frame.ts';
import { DimensionLine } from '../marks.tsx';
import type { TapeProps } from '../tape-picture.tsx';
import { BoardEnd, Picture, Word } from './pieces.tsx';

/** Two ends of a board: with flat grain the rings lie along the measured depth, with upright grain across it. */
export function GrainDirection({ t }: TapeProps) {
  return (
    <Picture height={176} title={t('grainTitle')}>
      <rect className="d-wood-deep" x={70} y={14} width={44} height={126} />
      {[80, 92, 104].map((x) => (
        <path key={x} className="d-grain" d={`M${x} 14q4 63 0 126`} />
      ))}
      <rect className="d-wood-deep" x={236} y={14} width={44} height={126} />
      {[32, 54, 76, 98, 120].map((y) => (
        <path key={y} className="d-grain" d={`M236 ${y}q22 5 44 0`} />
      ))}
      <Word x={92} y={164} anchor="middle">
        {t('flatGrain')}
      </Word>
      <Word x={258} y={164} anchor="middle">
        {t('uprightGrain')}
      </Word>
    </Picture>
  );
}

/** The end of an I-joist: two flanges and a web. */
export function IJoistEnd({ x, y, height }: { x: number; y: number; height: number }) {
  return (
    <g>
      <rect className="d-wood-deep" x={x + 19} y={y + 20} width={10} height={height - 40} />
      <rect className="d-wood" x={x} y={y} width={48} height={24} />
      <rect className="d-wood" x={x} y={y + height - 24} width={48} height={24} />
    </g>
  );
}

/** The size that shrinks: across the grain, from face to face. */
export function AcrossGrain({ value, t }: TapeProps) {
  const tall = clamp((value ?? 9.25) * 13, 40, 168);
  return (
    <Picture height={tall + 46} title={t('acrossGrainTitle')}>
      <BoardEnd x={140} y={22} width={56} height={tall} />
      <DimensionLine
        x1={196}
        y1={22}
        x2={196}
        y2={22 + tall}
        off={44}
        {...(value === null ? { label: '?' } : { inches: value })}
        textPx={19}
        bold
      />
    </Picture>
  );
}
