import type { Text } from './text.ts';

/** Every drawing has this size, in units of its own: a phone shows one unit as about 2 px, the picker as about 1. */
export const SHEET = { width: 180, height: 122 } as const;

/**
 * What a surface is made of or shows. `wood` is lumber along its grain, `wood-end` lumber cut across (crossed
 * corners), `loss` what is gone or in question (hatched), `opening` a hole through to paper, `gap` an empty space,
 * `unseen` what is not opened yet, `tool` what a person holds.
 */
export type Look =
  | 'wood'
  | 'wood-end'
  | 'panel'
  | 'metal'
  | 'bolt'
  | 'concrete'
  | 'masonry'
  | 'loss'
  | 'opening'
  | 'gap'
  | 'unseen'
  | 'tool'
  | 'ink';

/** Lines after ISO 128: thick what is cut or in question, thin what is beyond, dashed hidden, long-dash-dot centers. */
export type LineKind = 'thick' | 'thin' | 'hidden' | 'center' | 'limit';

type Ends = readonly [x1: number, y1: number, x2: number, y2: number];
type Points = readonly number[];

/**
 * One thing on the sheet, as plain JSON. Right and down are positive.
 * `at` places and `line` corners are x, y, x, y and so on. A `path` is SVG path data with absolute M, L, Q, C and Z.
 */
export type Shape =
  | { readonly box: readonly [x: number, y: number, width: number, height: number]; readonly look: Look }
  | { readonly outline: Points; readonly look: Look }
  | { readonly circle: readonly [cx: number, cy: number, radius: number]; readonly look: Look }
  | { readonly line: Points; readonly kind: LineKind }
  | { readonly path: string; readonly kind: LineKind }
  | { readonly ring: readonly [cx: number, cy: number, radius: number]; readonly kind: LineKind }
  /** Nail heads filled, holes open, bolts from above. */
  | { readonly mark: 'nail' | 'hole' | 'bolt'; readonly at: Points }
  /** The same in a row, both ends included. */
  | { readonly mark: 'nail' | 'hole' | 'bolt'; readonly row: Ends; readonly count: number }
  | { readonly word: Text; readonly at: readonly [x: number, y: number]; readonly anchor?: 'start' | 'middle' | 'end' }
  | Dimension
  | Pointer;

/**
 * A measured length: from one end to the other, drawn `off` units to the side (right of the direction of travel on
 * paper is positive: below a line that runs right, left of one that runs down). `of` is the input it shows, parts of
 * groups and lists dotted (`tie.widthIn`).
 */
export interface Dimension {
  readonly dim: Ends;
  readonly off: number;
  readonly of: string;
}

/** Where an answer that is no length is read, looked at or counted: a line from its name to the thing. */
export interface Pointer {
  readonly point: Ends;
  readonly of: string;
}

/** Where the tape goes, drawn: how a check shows what to measure. */
export interface Drawing {
  /** What is seen, from where. */
  readonly title: Text;
  /** Drawn in this order, later ones over earlier ones. */
  readonly shapes: readonly Shape[];
}
