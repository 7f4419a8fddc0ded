/** A flake of paint letting go. */
export function Flake({ x, y, s = 1 }: { x: number; y: number; s?: number }) {
  return (
    <path
      className="d-sheet"
      d={`M${x} ${y}l${9 * s} ${-4 * s}l${7 * s} ${6 * s}l${-3 * s} ${8 * s}l${-9 * s} ${3 * s}z`}
    />
  );
}
