import { clamp } from '../frame.ts';
import { DimensionLine, Hatch } from '../marks.tsx';
import type { TapeProps } from '../tape-picture.tsx';
import { BoardEnd, Picture, Word } from './pieces.tsx';

type Side = 'width' | 'depth' | 'top' | 'bottom' | 'side';

const sides: Record<string, Side> = {
  widthIn: 'width',
  depthIn: 'depth',
  lossTopIn: 'top',
  lossBottomIn: 'bottom',
  lossSideIn: 'side',
};

/** The end of a member with the wood that no longer counts hatched away; the size asked for is dimensioned. */
export function SectionLoss({ name, value, inputs, t }: TapeProps) {
  const of = sides[name];
  const read = (name: string, fallback: number) => (typeof inputs[name] === 'number' ? inputs[name] : fallback);
  const widthIn = of === 'width' ? (value ?? 1.5) : read('widthIn', 1.5);
  const depthIn = of === 'depth' ? (value ?? 9.25) : read('depthIn', 9.25);
  const scale = Math.min(170 / depthIn, 150 / widthIn);
  const [w, h] = [Math.max(26, widthIn * scale), Math.max(26, depthIn * scale)];
  const [x, y] = [150 - w / 2, 22];
  const loss = (side: 'top' | 'bottom' | 'side', name: string, most: number) => {
    const inches = of === side ? (value ?? 0) : read(name, 0);
    return clamp(inches * scale, 0, most);
  };
  const top = loss('top', 'lossTopIn', h);
  const bottom = loss('bottom', 'lossBottomIn', h - top);
  const side = loss('side', 'lossSideIn', w);
  const label = value === null ? { label: '?' } : { inches: value };
  return (
    <Picture height={h + 74} title={t('sectionLossTitle')}>
      <BoardEnd x={x} y={y} width={w} height={h} />
      {top > 0 && <Lost x={x} y={y} width={w} height={top} />}
      {bottom > 0 && <Lost x={x} y={y + h - bottom} width={w} height={bottom} />}
      {side > 0 && <Lost x={x} y={y} width={side} height={h} />}
      {of === 'width' && <DimensionLine x1={x} y1={y + h} x2={x + w} y2={y + h} off={36} {...label} textPx={19} bold />}
      {of === 'depth' && <DimensionLine x1={x + w} y1={y} x2={x + w} y2={y + h} off={44} {...label} textPx={19} bold />}
      {of === 'top' && (
        <DimensionLine x1={x + w} y1={y} x2={x + w} y2={y + Math.max(top, 16)} off={44} {...label} textPx={19} bold />
      )}
      {of === 'bottom' && (
        <DimensionLine
          x1={x + w}
          y1={y + h - Math.max(bottom, 16)}
          x2={x + w}
          y2={y + h}
          off={44}
          {...label}
          textPx={19}
          bold
        />
      )}
      {of === 'side' && (
        <DimensionLine x1={x} y1={y + h} x2={x + Math.max(side, 16)} y2={y + h} off={36} {...label} textPx={19} bold />
      )}
      {(top > 0 || bottom > 0 || side > 0) && (
        <Word x={x - 10} y={y + (bottom > 0 ? h - 6 : 18)} anchor="end">
          {t('lostWood')}
        </Word>
      )}
    </Picture>
  );
}

function Lost(box: { x: number; y: number; width: number; height: number }) {
  return (
    <g>
      <rect fill="var(--sheet)" {...box} />
      <Hatch {...box} color="var(--ink-soft)" dashed />
    </g>
  );
}
