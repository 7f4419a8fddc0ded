import { atMost } from '../../kernel/index.ts';
import {
  EDGE_ON_PLATE_IN,
  EDGE_ON_STUD_IN,
  JOINT_IN,
  SHEET_SIDES_IN,
} from '../../standards/sdpws-common/panel-edges.data.ts';
import type { Box } from './panel-layout.bare.ts';

/** A piece of panel on the elevation of its wall, inches from the left end and from the bottom. */
export interface Piece {
  readonly xIn: number;
  readonly yIn: number;
  readonly widthIn: number;
  readonly heightIn: number;
}

export const boxOf = ({ xIn, yIn, widthIn, heightIn }: Piece): Box => ({
  left: xIn,
  bottom: yIn,
  right: xIn + widthIn,
  top: yIn + heightIn,
});

/** An edge as a line: where it stands across its direction, and from where to where it runs. */
interface Edge {
  readonly at: number;
  readonly from: number;
  readonly to: number;
}

/** Length covered by the edges of one joint, each stretch once. */
function coveredIn(joint: Edge[]): number {
  joint.sort((a, b) => a.from - b.from);
  let covered = 0;
  let end = Number.NEGATIVE_INFINITY;
  for (const { from, to } of joint) {
    covered += Math.max(0, to - Math.max(from, end));
    end = Math.max(end, to);
  }
  return covered;
}

/**
 * Length of the joints the edges make: the two panels that meet at one are not counted twice. `held` says which edges
 * stand on wood.
 */
function jointsIn(edges: Edge[], held: (at: number) => boolean): number {
  edges.sort((a, b) => a.at - b.at);
  let length = 0;
  let joint: Edge[] = [];
  for (const edge of edges) {
    if (held(edge.at)) continue;
    if (joint[0] && !atMost(edge.at - joint[0].at, JOINT_IN)) {
      length += coveredIn(joint);
      joint = [];
    }
    joint.push(edge);
  }
  return length + coveredIn(joint);
}

/** Whether an edge stands on the plate or post at one end of its wall part, or past it. */
const atEnd = (at: number, from: number, to: number): boolean =>
  atMost(at - from, EDGE_ON_PLATE_IN) || atMost(to - at, EDGE_ON_PLATE_IN);

/** Length of the joints that no stud, post or plate of the wall part stands behind, inches. Studs count from x = 0. */
export function edgesOffFramingIn(boxes: readonly Box[], studSpacingIn: number, part: Box): number {
  const upright: Edge[] = [];
  const level: Edge[] = [];
  for (const { left, bottom, right, top } of boxes) {
    upright.push({ at: left, from: bottom, to: top }, { at: right, from: bottom, to: top });
    level.push({ at: bottom, from: left, to: right }, { at: top, from: left, to: right });
  }
  const onStud = (xIn: number) =>
    atMost(Math.abs(xIn - Math.round(xIn / studSpacingIn) * studSpacingIn), EDGE_ON_STUD_IN);
  const uprightIn = jointsIn(upright, (xIn) => atEnd(xIn, part.left, part.right) || onStud(xIn));
  return uprightIn + jointsIn(level, (yIn) => atEnd(yIn, part.bottom, part.top));
}

/** Whether a piece is smaller than a sheet in a direction in which it does not reach an end of its wall part. */
export function isSmallInField({ left, bottom, right, top }: Box, part: Box): boolean {
  const endsAcross = atEnd(left, part.left, part.right) || atEnd(right, part.left, part.right);
  const endsAlong = atEnd(bottom, part.bottom, part.top) || atEnd(top, part.bottom, part.top);
  const fits = (wideIn: number, highIn: number) =>
    (endsAcross || atMost(wideIn, right - left + JOINT_IN)) && (endsAlong || atMost(highIn, top - bottom + JOINT_IN));
  const [short, long] = SHEET_SIDES_IN;
  return !fits(short, long) && !fits(long, short);
}

/** Whether two pieces cover the same place by more than a joint. */
export function overlap(a: Piece, b: Piece): boolean {
  const wide = Math.min(a.xIn + a.widthIn, b.xIn + b.widthIn) - Math.max(a.xIn, b.xIn);
  const high = Math.min(a.yIn + a.heightIn, b.yIn + b.heightIn) - Math.max(a.yIn, b.yIn);
  return wide > JOINT_IN && high > JOINT_IN;
}
