import { atMost, rectangleSf } from '../../kernel/index.ts';
import { EDGE_ON_PLATE_IN, JOINT_IN } from '../../standards/sdpws-common/panel-edges.data.ts';

/** A rectangle on the elevation of a wall, by its edges: inches from the left end and from the bottom. */
export interface Box {
  readonly left: number;
  readonly bottom: number;
  readonly right: number;
  readonly top: number;
}

/** Grown by `byIn` to every side. */
const grow = ({ left, bottom, right, top }: Box, byIn: number): Box => ({
  left: left - byIn,
  bottom: bottom - byIn,
  right: right + byIn,
  top: top + byIn,
});

/** Where one slice from `fromIn` to `toIn` is not covered by the spans, sorted or not. */
function openSpans(spans: readonly (readonly [number, number])[], fromIn: number, toIn: number): [number, number][] {
  const open: [number, number][] = [];
  let reached = fromIn;
  for (const [from, to] of [...spans].sort((a, b) => a[0] - b[0])) {
    if (!atMost(Math.min(from, toIn), reached)) open.push([reached, Math.min(from, toIn)]);
    reached = Math.max(reached, to);
  }
  if (!atMost(toIn, reached)) open.push([reached, toIn]);
  return open;
}

/** What no box covers of a part, as boxes side by side: exact, whatever overlaps. */
function uncovered(part: Box, boxes: readonly Box[]): Box[] {
  const inside = (xIn: number) => Math.min(part.right, Math.max(part.left, xIn));
  const edges = [part.left, part.right, ...boxes.flatMap((box) => [inside(box.left), inside(box.right)])];
  edges.sort((a, b) => a - b);
  const bare: Box[] = [];
  let left = part.left;
  for (const right of edges) {
    // Edges a rounding apart are one edge.
    if (atMost(right, left)) continue;
    const middle = (left + right) / 2;
    const spans = boxes
      .filter((box) => box.left < middle && middle < box.right)
      .map((box) => [box.bottom, box.top] as const);
    for (const [bottom, top] of openSpans(spans, part.bottom, part.top)) bare.push({ left, bottom, right, top });
    left = right;
  }
  return bare;
}

/** A piece that stops on the plate or post at the edge of its part reaches that edge. */
const reachEdges = (box: Box, part: Box): Box => ({
  left: atMost(box.left - part.left, EDGE_ON_PLATE_IN) ? part.left : box.left,
  bottom: atMost(box.bottom - part.bottom, EDGE_ON_PLATE_IN) ? part.bottom : box.bottom,
  right: atMost(part.right - box.right, EDGE_ON_PLATE_IN) ? part.right : box.right,
  top: atMost(part.top - box.top, EDGE_ON_PLATE_IN) ? part.top : box.top,
});

const areaSf = (boxes: readonly Box[]): number =>
  boxes.reduce((sum, { left, bottom, right, top }) => sum + rectangleSf(right - left, top - bottom), 0);

/**
 * Square feet of a wall part with no panel on it. Gaps up to a joint wide are joints: the pieces are grown until these
 * close, and what stays open is grown back.
 */
export function bareSf(pieces: readonly Box[], part: Box): number {
  const half = JOINT_IN / 2;
  const open = uncovered(
    part,
    pieces.map((piece) => grow(reachEdges(piece, part), half)),
  );
  if (open.length === 0) return 0;
  const rest = uncovered(
    part,
    open.map((box) => grow(box, half)),
  );
  return areaSf([part]) - areaSf(rest);
}
