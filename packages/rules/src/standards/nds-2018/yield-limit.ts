import type { Source } from '../../kernel/index.ts';

export const YIELD_SOURCE: Source = {
  id: 'nds-12.3.1',
  title: 'NDS yield limit equations for dowels in single shear',
  edition: '2018 (second-hand)',
  section: '12.3.1, Tables 12.3.1A and 12.3.1B',
  basis: 'published',
};

export const YIELD_MODES = ['Im', 'Is', 'II', 'IIIm', 'IIIs', 'IV'] as const;
/** How the joint gives way: the dowel crushes the wood (I), tilts (II), or bends at one (III) or two (IV) hinges. */
export type YieldMode = (typeof YIELD_MODES)[number];

/** A joint of one dowel through a side member into a main member. Inches and psi, all above zero. */
export interface DowelJoint {
  readonly diameterIn: number;
  readonly mainBearingIn: number;
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

export interface YieldLoads {
  /** Reference design load of each mode, lb. */
  readonly loadsLb: Readonly<Record<YieldMode, number>>;
  readonly governing: YieldMode;
  /** The smallest of the six, lb. */
  readonly lateralLb: number;
}

/** The six yield loads of a dowel in single shear and the mode that governs, lb, before any adjustment factor. */
export function yieldLoads(joint: DowelJoint): YieldLoads {
  const { diameterIn: d, mainBearingIn: lm, sideBearingIn: ls, mainPsi: fm, sidePsi: fs, yieldPsi: fy } = joint;
  const rd = reductions(d, joint.grainAngleDeg ?? 0);
  const re = fm / fs;
  const rt = lm / ls;
  const k1 = (Math.sqrt(re + 2 * re ** 2 * (1 + rt + rt ** 2) + rt ** 2 * re ** 3) - re * (1 + rt)) / (1 + re);
  const k2 = -1 + Math.sqrt(2 * (1 + re) + (2 * fy * (1 + 2 * re) * d ** 2) / (3 * fm * lm ** 2));
  const k3 = -1 + Math.sqrt((2 * (1 + re)) / re + (2 * fy * (2 + re) * d ** 2) / (3 * fm * ls ** 2));
  const loadsLb = {
    Im: (d * lm * fm) / rd.one,
    Is: (d * ls * fs) / rd.one,
    II: (k1 * d * ls * fs) / rd.two,
    IIIm: (k2 * d * lm * fm) / ((1 + 2 * re) * rd.bending),
    IIIs: (k3 * d * ls * fm) / ((2 + re) * rd.bending),
    IV: (d ** 2 / rd.bending) * Math.sqrt((2 * fm * fy) / (3 * (1 + re))),
  };
  let governing: YieldMode = 'Im';
  for (const mode of YIELD_MODES) if (loadsLb[mode] < loadsLb[governing]) governing = mode;
  return { loadsLb, governing, lateralLb: loadsLb[governing] };
}
