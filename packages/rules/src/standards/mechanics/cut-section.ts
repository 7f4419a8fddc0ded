import type { Source } from '../../kernel/index.ts';

export const CUT_SECTION_SOURCE: Source = {
  id: 'cut-section',
  title: 'Strength of what a cut leaves of a rectangular section, from mechanics',
  edition: 'none',
  section: 'section modulus, second moment and shear depth; screening only',
  basis: 'common-practice',
};

/** What a cut section keeps of the whole one, 0..1. */
export interface CutSection {
  readonly moment: number;
  readonly stiffness: number;
  /** Depth left to carry shear, over the whole depth. */
  readonly shear: number;
}

/** A notch from one face: bending goes with the square of the depth left, stiffness with its cube. Inches. */
export function notchedSection(depthIn: number, notchIn: number): CutSection {
  const left = Math.max(0, 1 - notchIn / depthIn);
  return { moment: left ** 2, stiffness: left ** 3, shear: left };
}

/** Two strips of a unit depth, `near` and `far` high, with the hole between them; the whole section has a stiffness of 1/12. */
const stripsCentroid = (near: number, far: number): number => (near * (near / 2) + far * (1 - far / 2)) / (near + far);
const stripsStiffness = (near: number, far: number, centroid: number): number =>
  near ** 3 + far ** 3 + 12 * (near * (centroid - near / 2) ** 2 + far * (1 - far / 2 - centroid) ** 2);

/** Bending strength of both strips together. */
function stripsMoment(near: number, far: number): number {
  const centroid = stripsCentroid(near, far);
  return stripsStiffness(near, far, centroid) / (2 * Math.max(centroid, 1 - centroid));
}

/**
 * A hole with wood on both sides, `edgeIn` from the nearer face. In the middle of the depth the stiffness is
 * 1 - (a/d)^3; off the middle the neutral axis moves as well. Inches; hole plus edge at most the depth.
 */
export function boredSection(depthIn: number, holeIn: number, edgeIn: number): CutSection {
  if (holeIn <= 0) return WHOLE;
  const near = edgeIn / depthIn;
  const far = Math.max(0, 1 - holeIn / depthIn - near);
  if (near + far <= 0) return { moment: 0, stiffness: 0, shear: 0 };
  // A sliver at the face reaches its strength before the rest does; the thicker strip alone may then carry more.
  const moment = Math.max(stripsMoment(near, far), near ** 2, far ** 2);
  return { moment, stiffness: stripsStiffness(near, far, stripsCentroid(near, far)), shear: near + far };
}
const WHOLE: CutSection = { moment: 1, stiffness: 1, shear: 1 };

/**
 * A hole somewhere in the depth, at the place that leaves least. Bending is weakest where the two strips together carry
 * just what the thicker carries alone; stiffness where the hole lies at the face. Inches.
 */
export function boredAnywhere(depthIn: number, holeIn: number): CutSection {
  const atFace = boredSection(depthIn, holeIn, 0);
  if (atFace.shear <= 0 || holeIn <= 0) return atFace;
  const left = atFace.shear;
  let [near, far] = [0, left / 2];
  for (let halving = 0; halving < HALVINGS; halving++) {
    const edge = (near + far) / 2;
    if (stripsMoment(edge, left - edge) <= (left - edge) ** 2) near = edge;
    else far = edge;
  }
  return { ...atFace, moment: Math.max(stripsMoment(near, left - near), (left - near) ** 2) };
}
/** To a billionth of the depth, as near as two measures may be and still count as one. */
const HALVINGS = 30;
