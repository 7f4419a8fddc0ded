import { clamp } from '../frame.ts';
import { DimensionLine, Hatch } from '../marks.tsx';
import type { TapeProps } from '../tape-picture.tsx';
import { Board, BoardEnd, Picture, Word } from './pieces.tsx';

/** A beam end on its support from the side: the length that really rests on it moves with the value. */
export function SeatLength({ value, inputs, t }: TapeProps) {
  const shown = clamp(value ?? 1.5, 0, 6);
  const pxPerIn = 34;
  const edgeX = 128;
  const endX = edgeX - shown * pxPerIn;
  const steel = inputs.support === 'steel';
  const supportClass = inputs.support === 'masonry' ? 'd-concrete' : steel ? 'd-metal' : 'd-wood-deep';
  const left = Math.max(6, edgeX - 118);
  return (
    <Picture height={232} title={t('seatTitle')}>
      <rect className={supportClass} x={left} y={112} width={edgeX - left} height={108} />
      <Board x={Math.max(8, endX)} y={36} width={336 - Math.max(8, endX)} height={76} />
      {shown > 0 && (
        <Hatch x={Math.max(8, endX)} y={105} width={edgeX - Math.max(8, endX)} height={7} color="var(--ink-soft)" />
      )}
      <DimensionLine
        x1={Math.max(8, endX)}
        y1={112}
        x2={edgeX}
        y2={112}
        off={32}
        {...(value === null ? { label: '?' } : { inches: value })}
        textPx={19}
        bold
      />
      <Word x={230} y={80} anchor="middle">
        {t('beam')}
      </Word>
      <Word x={(left + edgeX) / 2} y={206} anchor="middle">
        {t('support')}
      </Word>
    </Picture>
  );
}

/** The beam end on: how wide it is where it rests. */
export function SeatWidth({ value, t }: TapeProps) {
  const wide = clamp((value ?? 3.5) * 26, 32, 190);
  const x = 175 - wide / 2;
  return (
    <Picture height={220} title={t('seatWidthTitle')}>
      <BoardEnd x={x} y={14} width={wide} height={110} />
      <rect
        className="d-wood-deep"
        x={175 - Math.max(wide, 130) / 2 - 10}
        y={124}
        width={Math.max(wide, 130) + 20}
        height={34}
      />
      <DimensionLine
        x1={x}
        y1={158}
        x2={x + wide}
        y2={158}
        off={38}
        {...(value === null ? { label: '?' } : { inches: value })}
        textPx={19}
        bold
      />
    </Picture>
  );
}

/** A strap nailed over the joint: it holds; friction and shims do not. */
export function SeatConnection({ t }: TapeProps) {
  return (
    <Picture height={196} title={t('seatHoldTitle')}>
      <rect className="d-wood-deep" x={60} y={100} width={110} height={90} />
      <Board x={86} y={24} width={252} height={76} />
      <rect className="d-metal" x={112} y={44} width={26} height={116} />
      {[56, 76, 122, 142].map((y) => (
        <circle key={y} className="d-ink" cx={125} cy={y} r={3.2} />
      ))}
      <Word x={236} y={68} anchor="middle">
        {t('beam')}
      </Word>
      <Word x={186} y={150}>
        {t('strap')}
      </Word>
      <path className="d-thin" d="M184 145l-44 -8" />
    </Picture>
  );
}

/** How near the end of the beam its seat is. */
export function SeatAtEnd({ t }: TapeProps) {
  return (
    <Picture height={196} title={t('seatAtEndTitle')}>
      <rect className="d-wood-deep" x={100} y={100} width={72} height={90} />
      <Board x={40} y={24} width={298} height={76} />
      <DimensionLine x1={40} y1={24} x2={100} y2={24} off={-4} label={'3"'} textPx={19} bold />
      <Word x={236} y={68} anchor="middle">
        {t('beam')}
      </Word>
    </Picture>
  );
}
