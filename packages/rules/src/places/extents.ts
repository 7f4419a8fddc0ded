import { rectangleSf } from '../kernel/index.ts';
import { addIn, timesIn, timesToCover, timesWithin } from './ticks.ts';

/** A rectangle on an elevation or plan, inches from its lower left corner. */
export interface Rect {
  readonly xIn: number;
  readonly yIn: number;
  readonly widthIn: number;
  readonly heightIn: number;
}

/** The sheet a place is drawn on: its sizes, and its framing from the left end, on center. Null: spacing not known. */
export interface Ground {
  readonly kind: 'wall' | 'floor' | 'roof';
  readonly widthIn: number;
  readonly heightIn: number;
  readonly framingSpacingIn: number | null;
  /** Of a wall; nothing said is none. */
  readonly openings?: readonly Rect[];
}

export const rightIn = (rect: Rect): number => addIn(rect.xIn, rect.widthIn);
export const topIn = (rect: Rect): number => addIn(rect.yIn, rect.heightIn);

/** A rectangle from its edges. */
export const between = (leftIn: number, bottomIn: number, toRightIn: number, toTopIn: number): Rect => ({
  xIn: leftIn,
  yIn: bottomIn,
  widthIn: addIn(toRightIn, -leftIn),
  heightIn: addIn(toTopIn, -bottomIn),
});

/** The rectangle to the millionth of an inch, so that sums of its sides are exact. */
export const onTicks = ({ xIn, yIn, widthIn, heightIn }: Rect): Rect => ({
  xIn: addIn(xIn, 0),
  yIn: addIn(yIn, 0),
  widthIn: addIn(widthIn, 0),
  heightIn: addIn(heightIn, 0),
});

type Span = readonly [fromIn: number, toIn: number];

function joinSpans(spans: readonly Span[]): Span[] {
  const joined: [number, number][] = [];
  for (const [from, to] of [...spans].sort((a, b) => a[0] - b[0])) {
    const last = joined.at(-1);
    if (last && from <= last[1]) last[1] = Math.max(last[1], to);
    else joined.push([from, to]);
  }
  return joined;
}

const sorted = (values: readonly number[]): number[] => [...new Set(values)].sort((a, b) => a - b);

/**
 * The same area as rectangles that do not overlap, from left to right and then upward: exact, whatever the number of
 * overlaps. Rectangles side by side over the same height are joined. Widths and heights must be above 0.
 */
export function disjoint(rects: readonly Rect[]): Rect[] {
  const done: Rect[] = [];
  // What reaches the last edge, by its height: where it begins, and from where up to where.
  let open = new Map<string, readonly [leftIn: number, span: Span]>();
  const sides = rects.map((rect) => ({ fromIn: rect.xIn, toIn: rightIn(rect), span: [rect.yIn, topIn(rect)] as Span }));
  const edges = sorted(sides.flatMap(({ fromIn, toIn }) => [fromIn, toIn]));
  for (const [at, leftIn] of edges.entries()) {
    const next = new Map<string, readonly [leftIn: number, span: Span]>();
    for (const span of joinSpans(
      sides.filter(({ fromIn, toIn }) => fromIn <= leftIn && toIn > leftIn).map(({ span }) => span),
    )) {
      const key = span.join(' ');
      next.set(key, open.get(key) ?? [leftIn, span]);
    }
    for (const [key, [fromIn, [bottomIn, toTopIn]]] of open)
      if (!next.has(key)) done.push(between(fromIn, bottomIn, edges[at] as number, toTopIn));
    open = next;
  }
  return done.sort((a, b) => a.xIn - b.xIn || a.yIn - b.yIn);
}

/** Square feet that the rectangles cover together; what overlaps counts once. */
export const unionSf = (rects: readonly Rect[]): number => disjointSf(disjoint(rects));

/** Square feet of rectangles of which none overlaps another. */
export const disjointSf = (parts: readonly Rect[]): number =>
  parts.reduce((sum, rect) => sum + rect.widthIn * rect.heightIn, 0) * rectangleSf(1, 1);

/** Whether two rectangles share more than an edge. */
export const overlaps = (a: Rect, b: Rect): boolean =>
  a.xIn < rightIn(b) && b.xIn < rightIn(a) && a.yIn < topIn(b) && b.yIn < topIn(a);

/** Whether the rectangles of `cover` leave nothing of `rect` uncovered. */
export function covers(cover: readonly Rect[], rect: Rect): boolean {
  const inside = cover.filter((one) => overlaps(one, rect)).map((one) => clip(one, rect));
  return inside.length > 0 && unionSf(inside) === unionSf([rect]);
}

/** The part of a rectangle inside another that it overlaps. */
export const clip = (rect: Rect, within: Rect): Rect =>
  between(
    Math.max(rect.xIn, within.xIn),
    Math.max(rect.yIn, within.yIn),
    Math.min(rightIn(rect), rightIn(within)),
    Math.min(topIn(rect), topIn(within)),
  );

export const wholeGround = (ground: Ground): Rect => between(0, 0, ground.widthIn, ground.heightIn);

/** 0 and the whole multiples of a spacing, inches, that lie before an end; 0 alone without a spacing. */
export function multiplesIn(spacingIn: number | null, endIn: number): number[] {
  const multiples = [0];
  if (spacingIn)
    for (let count = 1, xIn = spacingIn; xIn < endIn; xIn = timesIn(++count, spacingIn)) multiples.push(xIn);
  return multiples;
}

/**
 * Where a sheet's edge finds framing behind it: both ends, and the middle of every stud or joist between. With no
 * spacing known, nothing between the ends.
 */
export function framingLinesIn({ widthIn, framingSpacingIn }: Ground): number[] {
  return [...multiplesIn(framingSpacingIn, widthIn), widthIn];
}

/** Stretches a rectangle sideways to the nearest framing on each side, so that what is cut can be fastened again. */
export function snapToFraming(rect: Rect, ground: Ground): Rect {
  // Without a spacing there is nothing to snap to, and the whole width would be a guess.
  if (!ground.framingSpacingIn) return rect;
  const { framingSpacingIn, widthIn } = ground;
  const leftIn = timesIn(timesWithin(rect.xIn, framingSpacingIn), framingSpacingIn);
  const farIn = Math.min(widthIn, timesIn(timesToCover(rightIn(rect), framingSpacingIn), framingSpacingIn));
  return between(leftIn, rect.yIn, farIn, topIn(rect));
}

/** A rectangle grown by a margin all around, kept inside its place. */
export const grow = (rect: Rect, byIn: number, ground: Ground): Rect =>
  byIn === 0
    ? rect
    : clip(between(rect.xIn - byIn, rect.yIn - byIn, rightIn(rect) + byIn, topIn(rect) + byIn), wholeGround(ground));
