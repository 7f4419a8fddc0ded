import type { Source } from '../../kernel/index.ts';

export const SHRINKAGE_SOURCE: Source = {
  id: 'wood-handbook-4-3',
  title: 'Wood Handbook, shrinkage from green to ovendry, and the change within 6 to 14% moisture',
  edition: 'FPL-GTR-190',
  section: 'Table 4-3; p. 13-18',
  basis: 'published',
};
/** Read in part: the rows of the table that were seen agree with the closed form below. */
export const COEFFICIENT_SOURCE: Source = {
  id: 'wood-handbook-13-5',
  title: 'Wood Handbook, dimensional change coefficients, worked out from the shrinkage',
  edition: 'FPL-GTR-190, as quoted in charts',
  section: 'Table 13-5',
  basis: 'second-hand',
};
export const WIDE_RANGE_SOURCE: Source = {
  id: 'wood-handbook-13-3',
  title: 'Wood Handbook, change outside 6 to 14% moisture',
  edition: 'FPL-GTR-190; form confirmed, text not read',
  section: 'Equation 13-3',
  basis: 'memory',
};
export type MovementSpecies = keyof typeof SHRINKAGE_PCT;

/** Shrinkage from green to ovendry in percent, radial and tangential. */
export const SHRINKAGE_PCT = {
  'douglas-fir-coast': { radial: 4.8, tangential: 7.6 },
  'douglas-fir-interior-north': { radial: 3.8, tangential: 6.9 },
  'douglas-fir-interior-west': { radial: 4.8, tangential: 7.5 },
  'western-larch': { radial: 4.5, tangential: 9.1 },
  'western-hemlock': { radial: 4.2, tangential: 7.8 },
  'white-fir': { radial: 3.3, tangential: 7.0 },
  'grand-fir': { radial: 3.4, tangential: 7.5 },
  'noble-fir': { radial: 4.3, tangential: 8.3 },
  'lodgepole-pine': { radial: 4.3, tangential: 6.7 },
  'engelmann-spruce': { radial: 3.8, tangential: 7.1 },
  'loblolly-pine': { radial: 4.8, tangential: 7.4 },
  'longleaf-pine': { radial: 5.1, tangential: 7.5 },
  'shortleaf-pine': { radial: 4.6, tangential: 7.7 },
  'slash-pine': { radial: 5.4, tangential: 7.6 },
} as const;

/**
 * Moisture at which wood stops swelling, percent, as Equation 13-3 takes it. Another page takes 28 for Douglas fir-larch
 * and western hemlock and 26 for southern pine.
 */
export const FIBER_SATURATION_PCT = 30;
/** Within these moistures the change is linear, percent. */
const LINEAR_FROM_PCT = 6;
const LINEAR_TO_PCT = 14;

const inLinearRange = (pct: number): boolean => pct >= LINEAR_FROM_PCT && pct <= LINEAR_TO_PCT;

/** Coefficient per percent of moisture from the total shrinkage: S/(3000 - 20 S), the closed form of Table 13-5. */
export const coefficientPerPct = (shrinkagePct: number): number => shrinkagePct / (3000 - 20 * shrinkagePct);

export interface Movement {
  /** Negative shrinks, positive swells. */
  readonly changeIn: number;
  readonly method: 'linear-coefficient' | 'equation-13-3';
}

/**
 * Change of a dimension across the grain between two moistures (percent). Within 6 to 14% the linear coefficient,
 * otherwise Equation 13-3; moisture above fiber saturation (30%) changes nothing.
 */
export function movementAcrossGrain(sizeIn: number, shrinkagePct: number, fromPct: number, toPct: number): Movement {
  const from = Math.min(fromPct, FIBER_SATURATION_PCT);
  const to = Math.min(toPct, FIBER_SATURATION_PCT);
  if (inLinearRange(fromPct) && inLinearRange(toPct))
    return { changeIn: sizeIn * coefficientPerPct(shrinkagePct) * (to - from), method: 'linear-coefficient' };
  const under = (FIBER_SATURATION_PCT * 100) / shrinkagePct - FIBER_SATURATION_PCT + from;
  return { changeIn: (sizeIn * (to - from)) / under, method: 'equation-13-3' };
}
