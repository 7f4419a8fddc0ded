import { atMost } from '../../kernel/index.ts';
import { EDGE_ON_STUD_IN, JOINT_IN } from '../../standards/sdpws-common/panel-edges.data.ts';

/** A piece of panel on the elevation of its wall, inches from the left end and from the bottom. */
export interface Piece {
  readonly xIn: number;
  readonly yIn: number;
  readonly widthIn: number;
  readonly heightIn: number;
}

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
 * Length of the joints the edges make: the two panels that meet at one are not counted twice. Edges on the outline, the
 * first and the last, stand on end posts and plates; `held` says which of the others stand on wood.
 */
function jointsIn(edges: Edge[], held?: (at: number) => boolean): number {
  edges.sort((a, b) => a.at - b.at);
  const first = edges[0]?.at ?? 0;
  const last = edges.at(-1)?.at ?? 0;
  let length = 0;
  let joint: Edge[] = [];
  for (const edge of edges) {
    if (atMost(edge.at - first, JOINT_IN) || atMost(last - edge.at, JOINT_IN) || held?.(edge.at)) continue;
    if (joint[0] && !atMost(edge.at - joint[0].at, JOINT_IN)) {
      length += coveredIn(joint);
      joint = [];
    }
    joint.push(edge);
  }
  return length + coveredIn(joint);
}

/** Length of the joints between pieces that no stud, post or plate stands behind, inches. Studs count from x = 0. */
export function edgesOffFramingIn(pieces: readonly Piece[], studSpacingIn: number): number {
  const upright: Edge[] = [];
  const level: Edge[] = [];
  for (const { xIn, yIn, widthIn, heightIn } of pieces) {
    const [right, top] = [xIn + widthIn, yIn + heightIn];
    upright.push({ at: xIn, from: yIn, to: top }, { at: right, from: yIn, to: top });
    level.push({ at: yIn, from: xIn, to: right }, { at: top, from: xIn, to: right });
  }
  const onStud = (xIn: number) =>
    atMost(Math.abs(xIn - Math.round(xIn / studSpacingIn) * studSpacingIn), EDGE_ON_STUD_IN);
  return jointsIn(upright, onStud) + jointsIn(level);
}

/** Whether two pieces cover the same place by more than a joint. */
export function overlap(a: Piece, b: Piece): boolean {
  const wide = Math.min(a.xIn + a.widthIn, b.xIn + b.widthIn) - Math.max(a.xIn, b.xIn);
  const high = Math.min(a.yIn + a.heightIn, b.yIn + b.heightIn) - Math.max(a.yIn, b.yIn);
  return wide > JOINT_IN && high > JOINT_IN;
}
