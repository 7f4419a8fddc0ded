import type { Source } from '../../kernel/index.ts';

export const YIELD_SOURCE: Source = {
  id: 'nds-12.3.1',
  title: 'NDS yield limit equations for dowels in single shear',
  edition: '2018, as transcribed',
  section: '12.3.1, Tables 12.3.1A and 12.3.1B',
  basis: 'second-hand',
};

export const YIELD_MODES = ['Im', 'Is', 'II', 'IIIm', 'IIIs', 'IV'] as const;
/** How the joint gives way: the dowel crushes the wood (I), tilts (II), or bends at one (III) or two (IV) hinges. */
export type YieldMode = (typeof YIELD_MODES)[number];

/** A joint of one dowel through a side member into a main member. Inches and psi, all above zero. */
export interface DowelJoint {
  readonly diameterIn: number;
  readonly sideBearingIn: number;
  readonly mainPsi: number;
  readonly sidePsi: number;
  readonly yieldPsi: number;
  /** Angle between the load and the grain of the wood it crushes, 0 to 90 degrees; small dowels don't feel it. */
  readonly grainAngleDeg?: number;
}

/** From this diameter a dowel crushes wood along the grain otherwise than across it. */
export const LARGE_DOWEL_IN = 0.25;
const SLENDER_IN = 0.17;

/** Reduction terms R_d for modes I, II and III-IV (Table 12.3.1B). */
function reductions(diameterIn: number, angleDeg: number): { one: number; two: number; bending: number } {
  if (diameterIn < LARGE_DOWEL_IN) {
    const all = diameterIn <= SLENDER_IN ? 2.2 : 10 * diameterIn + 0.5;
    return { one: all, two: all, bending: all };
  }
  const angle = 1 + (0.25 * angleDeg) / 90;
  return { one: 4 * angle, two: 3.6 * angle, bending: 3.2 * angle };
}

export interface YieldLoads extends Readonly<Record<YieldMode, number>> {
  /** The smallest of the six, lb. */
  readonly lateralLb: number;
}

/** The mode with the smallest load. */
export const governingMode = (loads: YieldLoads): YieldMode =>
  YIELD_MODES.find((mode) => loads[mode] === loads.lateralLb) ?? 'IV';

/** The reference load of each yield mode of a dowel in single shear, lb, before any adjustment factor. Inches. */
export function yieldLoads(joint: DowelJoint, mainBearingIn: number): YieldLoads {
  const lm = mainBearingIn;
  const { diameterIn: d, sideBearingIn: ls, mainPsi: fm, sidePsi: fs, yieldPsi: fy } = joint;
  const rd = reductions(d, joint.grainAngleDeg ?? 0);
  const re = fm / fs;
  const rt = lm / ls;
  const bend = (2 * fy * d * d) / (3 * fm);
  const tilt = re + 2 * re * re * (1 + rt + rt * rt) + rt * rt * re * re * re;
  const k1 = (Math.sqrt(tilt) - re * (1 + rt)) / (1 + re);
  const k2 = -1 + Math.sqrt(2 * (1 + re) + (bend * (1 + 2 * re)) / (lm * lm));
  const k3 = -1 + Math.sqrt((2 * (1 + re)) / re + (bend * (2 + re)) / (ls * ls));
  const Im = (d * lm * fm) / rd.one;
  const Is = (d * ls * fs) / rd.one;
  const II = (k1 * d * ls * fs) / rd.two;
  const IIIm = (k2 * d * lm * fm) / ((1 + 2 * re) * rd.bending);
  const IIIs = (k3 * d * ls * fm) / ((2 + re) * rd.bending);
  const IV = ((d * d) / rd.bending) * Math.sqrt((2 * fm * fy) / (3 * (1 + re)));
  return { Im, Is, II, IIIm, IIIs, IV, lateralLb: Math.min(Im, Is, II, IIIm, IIIs, IV) };
}
