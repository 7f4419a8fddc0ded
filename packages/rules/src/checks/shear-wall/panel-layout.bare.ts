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

/** What no box covers of a part, as boxes side by side: exact, whatever overlaps. */
function uncovered(part: Box, boxes: readonly Box[]): Box[] {
  const upward = [...boxes].sort((a, b) => a.bottom - b.bottom);
  const bare: Box[] = [];
  let left = part.left;
  for (const right of uprightEdges(part, boxes)) {
    // Edges a rounding apart are one edge.
    if (atMost(right, left)) continue;
    const middle = (left + right) / 2;
    let reached = part.bottom;
    for (const { left: from, right: to, bottom, top } of upward) {
      if (from >= middle || to <= middle) continue;
      const below = Math.min(bottom, part.top);
      if (!atMost(below, reached)) bare.push({ left, bottom: reached, right, top: below });
      reached = Math.max(reached, top);
    }
    if (!atMost(part.top, reached)) bare.push({ left, bottom: reached, right, top: part.top });
    left = right;
  }
  return bare;
}

/** Where boxes begin and end along a part, from left to right. */
function uprightEdges(part: Box, boxes: readonly Box[]): Float64Array {
  const edges = new Float64Array(2 * boxes.length + 1);
  for (let at = 0; at < boxes.length; at++) {
    const { left, right } = boxes[at] as Box;
    edges[2 * at] = Math.min(part.right, Math.max(part.left, left));
    edges[2 * at + 1] = Math.min(part.right, Math.max(part.left, right));
  }
  edges[2 * boxes.length] = part.right;
  return edges.sort();
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
