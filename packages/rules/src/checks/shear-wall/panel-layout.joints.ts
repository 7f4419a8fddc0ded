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

const verticalEdges = ({ xIn, yIn, widthIn, heightIn }: Piece): Edge[] =>
  [xIn, xIn + widthIn].map((at) => ({ at, from: yIn, to: yIn + heightIn }));
const horizontalEdges = ({ xIn, yIn, widthIn, heightIn }: Piece): Edge[] =>
  [yIn, yIn + heightIn].map((at) => ({ at, from: xIn, to: xIn + widthIn }));

/** Edges inside the outline: those on it stand on end posts and plates. */
function inside(edges: readonly Edge[]): Edge[] {
  const places = edges.map((edge) => edge.at);
  const [first, last] = [Math.min(...places), Math.max(...places)];
  return edges.filter((edge) => !atMost(edge.at - first, JOINT_IN) && !atMost(last - edge.at, JOINT_IN));
}

/** Length covered by edges of one joint, each stretch once. */
function coveredIn(edges: readonly Edge[]): number {
  let [covered, end] = [0, Number.NEGATIVE_INFINITY];
  for (const edge of [...edges].sort((a, b) => a.from - b.from || a.to - b.to)) {
    covered += Math.max(0, edge.to - Math.max(edge.from, end));
    end = Math.max(end, edge.to);
  }
  return covered;
}

/** Length of the joints the edges make: the two panels that meet at one are not counted twice. */
function jointsIn(edges: readonly Edge[]): number {
  const joints: Edge[][] = [];
  for (const edge of [...edges].sort((a, b) => a.at - b.at)) {
    const joint = joints.at(-1);
    if (joint?.[0] && atMost(edge.at - joint[0].at, JOINT_IN)) joint.push(edge);
    else joints.push([edge]);
  }
  return joints.reduce((sum, joint) => sum + coveredIn(joint), 0);
}

const onStud = (xIn: number, spacingIn: number): boolean =>
  atMost(Math.abs(xIn - Math.round(xIn / spacingIn) * spacingIn), EDGE_ON_STUD_IN);

/** Length of the joints between pieces that no stud, post or plate stands behind, inches. Studs count from x = 0. */
export function edgesOffFramingIn(pieces: readonly Piece[], studSpacingIn: number): number {
  const upright = inside(pieces.flatMap(verticalEdges)).filter((edge) => !onStud(edge.at, studSpacingIn));
  return jointsIn(upright) + jointsIn(inside(pieces.flatMap(horizontalEdges)));
}

/** Whether two pieces cover the same place by more than a joint. */
export function overlap(a: Piece, b: Piece): boolean {
  const wide = Math.min(a.xIn + a.widthIn, b.xIn + b.widthIn) - Math.max(a.xIn, b.xIn);
  const high = Math.min(a.yIn + a.heightIn, b.yIn + b.heightIn) - Math.max(a.yIn, b.yIn);
  return wide > JOINT_IN && high > JOINT_IN;
}
