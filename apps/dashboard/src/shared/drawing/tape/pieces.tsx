import { type ReactNode, useId } from 'react';

type Box = { x: number; y: number; width: number; height: number };

/** A picture with its words; the words inside are in CSS pixels at 350 px of width. */
export function Picture({ height, title, children }: { height: number; title: string; children: ReactNode }) {
  const id = useId();
  return (
    <svg className="drawing picture" viewBox={`0 0 350 ${height}`} role="img" aria-labelledby={id}>
      <title id={id}>{title}</title>
      {children}
    </svg>
  );
}

/** A board with its grain along x. `deep` is the one behind. */
export function Board({ deep, plain, ...box }: Box & { deep?: boolean; plain?: boolean }) {
  const lines = plain ? [] : [0.22, 0.46, 0.7, 0.88].filter((_, at) => at * 22 < box.height);
  const { x, y, width, height } = box;
  return (
    <g>
      <rect className={deep ? 'd-wood-deep' : 'd-wood'} {...box} />
      {lines.map((share, at) => {
        const lift = (at % 2 ? 1 : -1) * Math.min(4, height * 0.05);
        const gy = y + height * share;
        return (
          <path key={share} className="d-grain" d={`M${x} ${gy}q${width / 4} ${lift} ${width / 2} 0t${width / 2} 0`} />
        );
      })}
    </g>
  );
}

/** The end of a board: its cut face with growth rings. */
export function BoardEnd({ x, y, width, height }: Box) {
  const clip = `e${useId().replace(/[^\w-]/g, '')}`;
  const cx = x + width / 2;
  return (
    <g>
      <rect className="d-wood-deep" x={x} y={y} width={width} height={height} />
      <clipPath id={clip}>
        <rect x={x} y={y} width={width} height={height} />
      </clipPath>
      <g clipPath={`url(#${clip})`}>
        {[0.35, 0.6, 0.85, 1.1, 1.35].map((r) => (
          <circle key={r} className="d-grain" cx={cx} cy={y + height * 1.15} r={height * r} />
        ))}
      </g>
      <rect className="d-outline" x={x} y={y} width={width} height={height} />
    </g>
  );
}

/** Rod with threads from `threadsFrom` to its end, lying along x. */
export function Rod({
  x,
  y,
  length,
  thick,
  threadsFrom,
}: {
  x: number;
  y: number;
  length: number;
  thick: number;
  threadsFrom: number;
}) {
  const count = Math.max(0, Math.floor((x + length - threadsFrom) / 7));
  return (
    <g>
      <rect className="d-metal-light" x={x} y={y} width={length} height={thick} />
      {Array.from({ length: count }, (_, at) => threadsFrom + at * 7).map((tx) => (
        <line key={tx} className="d-thin" x1={tx} y1={y} x2={tx + 5} y2={y + thick} />
      ))}
    </g>
  );
}

/** A word on the drawing. */
export function Word({
  x,
  y,
  children,
  anchor = 'start',
  bold = true,
}: {
  x: number;
  y: number;
  children: ReactNode;
  anchor?: 'start' | 'middle' | 'end';
  bold?: boolean;
}) {
  return (
    <text className="d-halo" x={x} y={y} textAnchor={anchor} fontSize={15.5} fontWeight={bold ? 650 : 400}>
      {children}
    </text>
  );
}

/** A limit as a long-dash-dot line with its word. */
export function Limit({
  x1,
  y1,
  x2,
  y2,
  word,
  wx,
  wy,
  anchor,
}: {
  x1: number;
  y1: number;
  x2: number;
  y2: number;
  word: string;
  wx: number;
  wy: number;
  anchor?: 'start' | 'middle' | 'end';
}) {
  return (
    <g>
      <line className="d-limit" x1={x1} y1={y1} x2={x2} y2={y2} />
      <Word x={wx} y={wy} anchor={anchor ?? 'start'}>
        {word}
      </Word>
    </g>
  );
}
