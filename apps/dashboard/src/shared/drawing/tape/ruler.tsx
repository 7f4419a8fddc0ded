/** A steel tape: ticks at the inch, half, quarter and eighth as far as they can be told apart. */
export function Ruler({
  x,
  y,
  lengthPx,
  inchPx,
  heightPx = 20,
  upright,
}: {
  x: number;
  y: number;
  lengthPx: number;
  inchPx: number;
  heightPx?: number;
  upright?: boolean;
}) {
  const parts = inchPx >= 48 ? 8 : inchPx >= 20 ? 4 : 1;
  const count = Math.floor((lengthPx / inchPx) * parts);
  return (
    <g transform={upright ? `translate(${x} ${y}) rotate(90)` : `translate(${x} ${y})`}>
      <rect className="d-tape" x={0} y={0} width={lengthPx} height={heightPx} />
      {Array.from({ length: count }, (_, at) => at + 1).map((at) => {
        const tall = at % parts === 0 ? 0.62 : at % (parts / 2) === 0 ? 0.45 : 0.28;
        return (
          <line
            key={at}
            className="d-thin"
            x1={(at * inchPx) / parts}
            x2={(at * inchPx) / parts}
            y1={0}
            y2={heightPx * tall}
          />
        );
      })}
    </g>
  );
}
