import type { TapeProps } from '../tape-picture.tsx';
import { Picture, Word } from './pieces.tsx';

/** Old paint letting go of a window frame. */
export function OldPaint({ t }: TapeProps) {
  return (
    <Picture height={190} title={t('oldPaintTitle')}>
      <rect className="d-wood" x={70} y={12} width={210} height={166} />
      <rect className="d-sheet" x={98} y={40} width={154} height={110} />
      <path className="d-thick" d="M175 40v110M98 95h154" />
      <Flake x={76} y={60} />
      <Flake x={256} y={96} />
      <Flake x={150} y={20} />
      <Flake x={206} y={156} />
      <Word x={64} y={70} anchor="end">
        {t('oldPaint')}
      </Word>
    </Picture>
  );
}

export function Flake({ x, y, s = 1 }: { x: number; y: number; s?: number }) {
  return (
    <path
      className="d-sheet"
      d={`M${x} ${y}l${9 * s} ${-4 * s}l${7 * s} ${6 * s}l${-3 * s} ${8 * s}l${-9 * s} ${3 * s}z`}
    />
  );
}
