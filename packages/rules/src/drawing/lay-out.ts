import { type Drawing, type Fields, type LineKind, type Locale, type Look, type Shape, say } from '../kernel/index.ts';
import { dimensionMarks, type Label, pointerMarks } from './dimensions.ts';
import { boxPoints, circlePoints, pointsOf, surface, svgPathOf } from './surfaces.ts';

export type { Label } from './dimensions.ts';

/** How a path is drawn; screens give each a class, the SVG file gives each its attributes. */
export type PathPen =
  | Look
  | LineKind
  | 'grain'
  | 'cross'
  | 'hatch'
  | 'hole'
  | 'dimension'
  | 'tick'
  | 'tape'
  | 'asked'
  | 'asked-tick'
  | 'disc'
  | 'asked-disc';
export type TextPen = 'word' | 'value' | 'asked-value' | 'letter';

export interface PathMark {
  readonly pen: PathPen;
  readonly d: string;
}
export interface TextMark {
  readonly pen: TextPen;
  readonly words: string;
  /** Set for a length, so that a screen can set its fraction as one. */
  readonly inches?: number;
  readonly x: number;
  readonly y: number;
  readonly anchor: 'start' | 'middle' | 'end';
  readonly size: number;
}
/** All there is to paint: paths and words, in order. */
export type Mark = PathMark | TextMark;

export interface LayOutOptions {
  readonly locale: Locale;
  /** Height of the words in units of the sheet; left out, nothing is written (the picker). */
  readonly textSize?: number;
  /** The input that is asked for: its dimensions stand out. A group or list stands for its parts. */
  readonly asked?: string;
  /** What was answered so far; "?" when left out, nothing when null. */
  readonly answer?: Label | null;
  /** Give every dimension the letter of its input; left out, only where several are asked for at once. */
  readonly letters?: boolean;
}

const NAIL = 1.9;
const HOLE = 2.1;
const BOLT = 4;

function markAt(mark: 'nail' | 'hole' | 'bolt', x: number, y: number): PathMark[] {
  if (mark === 'nail') return [{ pen: 'ink', d: svgPathOf(circlePoints([x, y, NAIL]), true) }];
  if (mark === 'hole') return [{ pen: 'hole', d: svgPathOf(circlePoints([x, y, HOLE]), true) }];
  const corner = (at: number): [number, number] => [
    x + BOLT * Math.cos((Math.PI / 3) * at),
    y + BOLT * Math.sin((Math.PI / 3) * at),
  ];
  return [
    { pen: 'bolt', d: svgPathOf([0, 1, 2, 3, 4, 5].map(corner), true) },
    { pen: 'thin', d: svgPathOf(circlePoints([x, y, BOLT * 0.5]), true) },
  ];
}

function rowMarks({ mark, row, count }: Extract<Shape, { row: unknown }>): PathMark[] {
  const [x1, y1, x2, y2] = row;
  return Array.from({ length: count }, (_, at) => at / Math.max(1, count - 1)).flatMap((share) =>
    markAt(mark, x1 + share * (x2 - x1), y1 + share * (y2 - y1)),
  );
}

/** The inputs a drawing shows, in the order of their letters A, B, C. */
export const keysOf = (drawing: Drawing): string[] => [
  ...new Set(drawing.shapes.flatMap((shape) => ('of' in shape ? [shape.of] : []))),
];

/** The letter of the key at a place in it: A to Z. */
export const letterAt = (at: number): string => String.fromCharCode('A'.charCodeAt(0) + at);

/** The label of every input, parts of groups and lists dotted, as a drawing names them. */
export function inputLabels(fields: Fields, locale: Locale, before = ''): Record<string, string> {
  return Object.assign(
    {},
    ...Object.entries(fields).map(([name, field]) => ({
      [before + name]: say(field.label, locale),
      ...(field.kind === 'group' ? inputLabels(field.fields, locale, `${before}${name}.`) : {}),
      ...(field.kind === 'list' ? inputLabels(field.item, locale, `${before}${name}.`) : {}),
    })),
  );
}

/** Whether an input, or a part of the group or list that is asked for. */
export const isAsked = (of: string, asked: string | undefined): boolean =>
  asked !== undefined && (of === asked || of.startsWith(`${asked}.`));

function labelOf(of: string, keys: readonly string[], options: LayOutOptions): Label | undefined {
  if (options.textSize === undefined) return undefined;
  const asked = keys.filter((key) => isAsked(key, options.asked));
  if (options.letters || (asked.length > 1 && asked.includes(of)))
    return { words: letterAt(keys.indexOf(of)), letter: true };
  if (!asked.includes(of) || options.answer === null) return undefined;
  return options.answer ?? { words: '?' };
}

function marksOf(shape: Shape, keys: readonly string[], options: LayOutOptions): Mark[] {
  const size = options.textSize ?? 0;
  if ('box' in shape) return surface(boxPoints(shape.box), shape.look);
  if ('outline' in shape) return surface(pointsOf(shape.outline), shape.look);
  if ('circle' in shape) return surface(circlePoints(shape.circle), shape.look);
  if ('line' in shape) return [{ pen: shape.kind, d: svgPathOf(pointsOf(shape.line)) }];
  if ('path' in shape) return [{ pen: shape.kind, d: shape.path }];
  if ('ring' in shape) return [{ pen: shape.kind, d: svgPathOf(circlePoints(shape.ring), true) }];
  if ('row' in shape) return rowMarks(shape);
  if ('mark' in shape) return pointsOf(shape.at).flatMap(([x, y]) => markAt(shape.mark, x, y));
  if ('dim' in shape)
    return dimensionMarks(shape, labelOf(shape.of, keys, options), size, isAsked(shape.of, options.asked));
  if ('point' in shape)
    return pointerMarks(shape, labelOf(shape.of, keys, options), size, isAsked(shape.of, options.asked));
  if (options.textSize === undefined) return [];
  const [x, y] = shape.at;
  return [{ pen: 'word', words: shape.word[options.locale], x, y, anchor: shape.anchor ?? 'start', size }];
}

/**
 * Lays a drawing out as paths and words. What is asked for comes last, over everything else; a pointer that would lead
 * to no word is left out.
 */
export function layOut(drawing: Drawing, options: LayOutOptions): Mark[] {
  const keys = keysOf(drawing);
  const leads = (shape: Shape): boolean =>
    !('point' in shape) || labelOf(shape.of, keys, options) !== undefined || isAsked(shape.of, options.asked);
  const shown = drawing.shapes.filter(leads);
  const last = (shape: Shape): number => ('of' in shape && isAsked(shape.of, options.asked) ? 1 : 0);
  return shown.toSorted((a, b) => last(a) - last(b)).flatMap((shape) => marksOf(shape, keys, options));
}
