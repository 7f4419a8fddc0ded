import { clamp } from '../frame.ts';
import { Dimension } from '../marks.tsx';
import type { TapeProps } from '../tape-picture.tsx';
import { BoardEnd, Picture, Word } from './pieces.tsx';

/** Two unlike members under one floor: the sawn one shrinks across its grain, the I-joist hardly does. */
export function UnlikeMembers({ t }: TapeProps) {
  return (
    <Picture height={212} title={t('unlikeTitle')}>
      <BoardEnd x={52} y={44} width={44} height={134} />
      <path className="d-hidden" d="M40 30h68" />
      <IJoistEnd x={230} y={30} height={148} />
      <path className="d-thick" d="M8 44h140L196 30h146" />
      <path className="d-thin" d="M8 178h334" />
      <Word x={74} y={202} anchor="middle">
        {t('sawn')}
      </Word>
      <Word x={254} y={202} anchor="middle">
        {t('iJoist')}
      </Word>
      <Dimension x1={140} y1={30} x2={140} y2={44} off={26} label="?" textPx={17} bold />
    </Picture>
  );
}

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
      <Dimension
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

/** From one member to the next. */
export function MemberSpacing({ value, t }: TapeProps) {
  return (
    <Picture height={190} title={t('memberSpacingTitle')}>
      <path className="d-thick" d="M8 22h334" />
      <BoardEnd x={60} y={24} width={36} height={104} />
      <BoardEnd x={238} y={24} width={36} height={104} />
      <Dimension
        x1={78}
        y1={128}
        x2={256}
        y2={128}
        off={38}
        {...(value === null ? { label: '?' } : { inches: value })}
        textPx={19}
        bold
      />
    </Picture>
  );
}
