import { atMost, type Source } from '../../kernel/index.ts';

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

/**
 * A hole with wood on both sides, `edgeIn` from the nearer face. In the middle of the depth the stiffness is
 * 1 - (a/d)^3; off the middle the neutral axis moves as well. Inches; hole plus edge at most the depth.
 */
export function boredSection(depthIn: number, holeIn: number, edgeIn: number): CutSection {
  const a = holeIn / depthIn;
  const near = edgeIn / depthIn;
  const far = Math.max(0, 1 - a - near);
  const left = near + far;
  if (left <= 0) return { moment: 0, stiffness: 0, shear: 0 };
  // Two strips, `near` and `far` high, taken about the centroid of both; the whole section has 1/12 and 1/6.
  const centroid = (near * (near / 2) + far * (1 - far / 2)) / left;
  const own = (near ** 3 + far ** 3) / 12;
  const stiffness = 12 * (own + near * (centroid - near / 2) ** 2 + far * (1 - far / 2 - centroid) ** 2);
  const both = stiffness / (2 * Math.max(centroid, 1 - centroid));
  // A sliver at the face reaches its strength before the rest does; the thicker strip alone may then carry more.
  return { moment: Math.max(both, near ** 2, far ** 2), stiffness, shear: left };
}

/**
 * A hole somewhere in the depth, at the place that leaves least. Bending is weakest where the two strips together carry
 * just what the thicker carries alone; stiffness where the hole lies at the face. Inches.
 */
export function boredAnywhere(depthIn: number, holeIn: number): CutSection {
  let [near, far] = [0, Math.max(0, (depthIn - holeIn) / 2)];
  let moment = boredSection(depthIn, holeIn, far).moment;
  for (let halving = 0; halving < HALVINGS; halving++) {
    const edgeIn = (near + far) / 2;
    const here = boredSection(depthIn, holeIn, edgeIn).moment;
    const alone = (1 - (holeIn + edgeIn) / depthIn) ** 2;
    if (atMost(here, alone)) near = edgeIn;
    else far = edgeIn;
    moment = Math.min(moment, here);
  }
  return { ...boredSection(depthIn, holeIn, 0), moment };
}
/** Enough to tell any two binary numbers apart. */
const HALVINGS = 60;
