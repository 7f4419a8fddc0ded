import { type Dimension, type Pointer, SHEET } from '../kernel/index.ts';
import type { Mark, PathMark, TextMark } from './lay-out.ts';
import { circlePoints, svgPathOf } from './surfaces.ts';

/** What stands on a dimension: a letter of the key, or a measured value. */
export interface Label {
  readonly words: string;
  /** Set for a length, so that a screen can set its fraction as one. */
  readonly inches?: number;
  readonly letter?: boolean;
}

const WITNESS_GAP = 2.5;
const TICK = 2.6;
/** Width of a letter as a share of its height, on the wide side so that words are never cut off. */
const LETTER_WIDTH = 0.58;

export const widthOf = (words: string, size: number): number => words.length * size * LETTER_WIDTH;

const clamp = (value: number, low: number, high: number): number => Math.min(Math.max(value, low), Math.max(low, high));

/** A label with its middle as near to a place as the sheet allows. */
function labelAt(label: Label, x: number, y: number, size: number, asked: boolean): Mark[] {
  const half = (label.letter ? size * 1.2 : widthOf(label.words, size)) / 2;
  const cx = clamp(x, half + 1, SHEET.width - half - 1);
  const cy = clamp(y, size * 0.7, SHEET.height - size * 0.7);
  const words: TextMark = {
    pen: label.letter ? 'letter' : asked ? 'asked-value' : 'value',
    words: label.words,
    x: cx,
    y: cy + size * 0.36,
    anchor: 'middle',
    size: label.letter ? size * 0.85 : size,
    ...(label.inches === undefined ? {} : { inches: label.inches }),
  };
  if (!label.letter) return [words];
  return [{ pen: asked ? 'asked-disc' : 'disc', d: svgPathOf(circlePoints([cx, cy, size * 0.62]), true) }, words];
}

/** The middle of the line when the label fits between the ticks, else beside it: past the end, or to the outside. */
function placeOf(ends: readonly [number, number, number, number], outward: number, width: number): [number, number] {
  const [x1, y1, x2, y2] = ends;
  const [mx, my] = [(x1 + x2) / 2, (y1 + y2) / 2];
  const level = Math.abs(x2 - x1) >= Math.abs(y2 - y1);
  if (!level) return [mx + outward * (width / 2 + 3), my];
  if (Math.abs(x2 - x1) >= width + 6) return [mx, my];
  const right = Math.max(x1, x2) + 4 + width / 2;
  return right + width / 2 <= SHEET.width ? [right, my] : [Math.min(x1, x2) - 4 - width / 2, my];
}

/** Witness lines, the line between them, slanted ticks, and the label. */
export function dimensionMarks(shape: Dimension, label: Label | undefined, size: number, asked: boolean): Mark[] {
  const [x1, y1, x2, y2] = shape.dim;
  const length = Math.hypot(x2 - x1, y2 - y1) || 1;
  const [dx, dy] = [(x2 - x1) / length, (y2 - y1) / length];
  const [nx, ny] = [-dy, dx];
  const sign = Math.sign(shape.off);
  const on = (x: number, y: number, off: number): [number, number] => [x + nx * off, y + ny * off];
  const [a, b] = [on(x1, y1, shape.off), on(x2, y2, shape.off)];
  const witness = [[x1, y1] as const, [x2, y2] as const].map(([x, y]) =>
    svgPathOf([on(x, y, sign * WITNESS_GAP), on(x, y, shape.off + sign * WITNESS_GAP)]),
  );
  const ticks = [a, b].map(([x, y]) =>
    svgPathOf([
      [x - (dx - nx) * TICK, y - (dy - ny) * TICK],
      [x + (dx - nx) * TICK, y + (dy - ny) * TICK],
    ]),
  );
  const lines: PathMark[] = [
    ...(asked ? [{ pen: 'tape' as const, d: svgPathOf([a, b]) }] : []),
    { pen: 'dimension', d: sign === 0 ? '' : witness.join('') },
    { pen: asked ? 'asked' : 'dimension', d: svgPathOf([a, b]) },
    { pen: asked ? 'asked-tick' : 'tick', d: ticks.join('') },
  ];
  const drawn = lines.filter((line) => line.d !== '');
  if (!label) return drawn;
  const width = label.letter ? size * 1.2 : widthOf(label.words, size);
  const outward = Math.sign(nx * shape.off) || 1;
  const [x, y] = placeOf([...a, ...b], outward, width);
  return [...drawn, ...labelAt(label, x, y, size, asked)];
}

/** A dot on the thing, a thin line, and the label at its other end. */
export function pointerMarks(shape: Pointer, label: Label | undefined, size: number, asked: boolean): Mark[] {
  const [x1, y1, x2, y2] = shape.point;
  const line = svgPathOf([
    [x1, y1],
    [x2, y2],
  ]);
  return [
    { pen: asked ? 'asked' : 'dimension', d: line },
    { pen: 'ink', d: svgPathOf(circlePoints([x2, y2, asked ? 2.6 : 1.7]), true) },
    ...(label ? labelAt(label, x1, y1, size, asked) : []),
  ];
}
