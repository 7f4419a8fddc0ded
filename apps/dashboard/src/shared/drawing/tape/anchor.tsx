import { clamp } from '../frame.ts';
import { DimensionLine, Hatch } from '../marks.tsx';
import type { TapeProps } from '../tape-picture.tsx';
import { Board, Limit, Picture, Rod, Word } from './pieces.tsx';

/** Rod, nut and washer from the side. The rod end moves with the value; what is missing of the nut is hatched. */
export function RodProjection({ value, t }: TapeProps) {
  const faceX = 236;
  const nutPx = 62;
  const pxPerIn = 108;
  const shown = value ?? 0;
  const endX = clamp(faceX + shown * pxPerIn, faceX - nutPx - 26, 336);
  const [top, thick] = [62, 34];
  return (
    <Picture height={168} title={t('rodTitle')}>
      <Board x={0} y={8} width={162} height={142} />
      <rect className="d-metal" x={162} y={16} width={12} height={126} />
      <rect className="d-sheet" x={174} y={top - 30} width={nutPx} height={thick + 60} strokeWidth={2.6} />
      <path className="d-thin" d={`M174 ${top - 7}h${nutPx}M174 ${top + thick + 7}h${nutPx}`} />
      <Rod x={26} y={top} length={endX - 26} thick={thick} threadsFrom={126} />
      {shown < 0 && <Hatch x={endX} y={top} width={faceX - endX} height={thick} color="var(--ink-soft)" dashed />}
      <Limit x1={faceX} y1={4} x2={faceX} y2={164} word={t('nutFace')} wx={faceX + 7} wy={18} />
      <Word x={12} y={30}>
        {t('post')}
      </Word>
      <Word x={44} y={top + 22}>
        {t('rod')}
      </Word>
      <Word x={180} y={top - 36}>
        {t('nut')}
      </Word>
      {value === null ? (
        <DimensionLine
          x1={faceX}
          y1={top + thick}
          x2={faceX + 46}
          y2={top + thick}
          off={52}
          label="?"
          textPx={19}
          bold
        />
      ) : (
        value !== 0 && (
          <DimensionLine
            x1={Math.min(endX, faceX)}
            y1={top + thick}
            x2={Math.max(endX, faceX)}
            y2={top + thick}
            off={52}
            inches={Math.abs(value)}
            textPx={19}
            bold
          />
        )
      )}
    </Picture>
  );
}

/** The rod end on, with the measure across its threads. */
export function RodDiameter({ value, t }: TapeProps) {
  const half = (value ?? 0.75) * 52;
  const [cx, cy] = [175, 68];
  return (
    <Picture height={172} title={t('rodAcross')}>
      <Hexagon cx={cx} cy={cy} r={70} />
      <circle className="d-metal-light" cx={cx} cy={cy} r={half} />
      <circle className="d-hidden" cx={cx} cy={cy} r={half * 0.86} />
      <DimensionLine
        x1={cx - half}
        y1={cy}
        x2={cx + half}
        y2={cy}
        off={92}
        {...(value === null ? { label: '?' } : { inches: value })}
        textPx={19}
        bold
      />
      <Word x={cx} y={cy + 5} anchor="middle">
        {t('rod')}
      </Word>
    </Picture>
  );
}

function Hexagon({ cx, cy, r, dashed }: { cx: number; cy: number; r: number; dashed?: boolean }) {
  const points = Array.from({ length: 6 }, (_, at) => {
    const angle = (Math.PI / 3) * at;
    return `${cx + r * Math.cos(angle)},${cy + r * Math.sin(angle)}`;
  }).join(' ');
  return <polygon className={dashed ? 'd-hidden' : 'd-sheet'} points={points} />;
}

/** A regular and a heavy nut side by side; the chosen one is drawn full. */
export function NutKind({ inputs, t }: TapeProps) {
  const chosen = inputs.nut;
  return (
    <Picture height={176} title={t('nutKinds')}>
      {[
        { value: 'hex', cx: 96, r: 56, word: t('nutRegular') },
        { value: 'heavy-hex', cx: 250, r: 66, word: t('nutHeavy') },
      ].map((nut) => (
        <g key={nut.value}>
          <Hexagon cx={nut.cx} cy={74} r={nut.r} dashed={chosen !== undefined && chosen !== nut.value} />
          <circle className="d-metal-light" cx={nut.cx} cy={74} r={30} />
          <path
            className="d-thin"
            d={`M${nut.cx - nut.r * 0.5} ${74 - nut.r * 0.866}h${nut.r}M${nut.cx - nut.r * 0.5} ${74 + nut.r * 0.866}h${nut.r}`}
          />
          <Word x={nut.cx} y={164} anchor="middle" bold={chosen === nut.value}>
            {nut.word}
          </Word>
        </g>
      ))}
    </Picture>
  );
}
