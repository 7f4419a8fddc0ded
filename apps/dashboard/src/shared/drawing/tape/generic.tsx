import { Dimension } from '../marks.tsx';
import type { TapeProps } from '../tape-picture.tsx';
import { Ruler } from './ruler.tsx';

/** A tape along a board, for a measurement with no drawing of its own. */
export function GenericTape({ value, t }: TapeProps) {
  const widthPx = value === null ? 180 : 40 + Math.min(240, Math.abs(value) * 16);
  return (
    <svg className="drawing" viewBox="0 0 350 130" role="img" aria-label={t('tapeHere')}>
      <rect className="d-wood" x={24} y={34} width={300} height={34} />
      <path className="d-grain" d="M24 45q80 -5 150 0t150 0M24 57q60 4 150 0t150 0" />
      <Ruler x={24} y={70} lengthPx={300} inchPx={16} />
      <Dimension
        x1={24}
        y1={34}
        x2={24 + widthPx}
        y2={34}
        off={-12}
        {...(value === null ? { label: '?' } : { inches: value })}
        textPx={17}
        bold
      />
    </svg>
  );
}
