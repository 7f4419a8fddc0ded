import { atLeast, type Source } from '../../kernel/index.ts';
import { type DowelJoint, type YieldLoads, yieldLoads } from './yield-limit.ts';

export const NAIL_YIELD_SOURCE: Source = {
  id: 'nds-12n-notes',
  title: 'NDS bending yield strength and penetration of nails',
  edition: '2018, as transcribed',
  section: 'Table 12N notes, 12.1.6, 12.3.5.3',
  basis: 'second-hand',
};
export const WITHDRAWAL_SOURCE: Source = {
  id: 'nds-12.2-3',
  title: 'NDS withdrawal of smooth nails from side grain',
  edition: '2018, as transcribed',
  section: 'Eq. 12.2-3, Table 12.2C',
  basis: 'second-hand',
};
export const TOE_NAIL_SOURCE: Source = {
  id: 'nds-12.5.4',
  title: 'NDS toe-nail factors',
  edition: '2018, as transcribed',
  section: '12.5.4',
  basis: 'second-hand',
};
export const TOE_NAIL_GEOMETRY_SOURCE: Source = {
  id: 'nds-12.1.6.3',
  title: 'NDS toe-nail driven at 30 degrees, a third of its length from the end',
  edition: '2018, figure not read',
  section: '12.1.6.3',
  basis: 'memory',
};
export const DURATION_SOURCE: Source = {
  id: 'nds-2.3.2',
  title: 'NDS load duration factor',
  edition: '2018, as transcribed',
  section: '2.3.2',
  basis: 'second-hand',
};

/** Load duration factors, from dead load to wind or earthquake. */
export const LOAD_DURATION = { least: 0.9, normal: 1, most: 1.6 } as const;

const YIELD_STEPS = [
  { toIn: 0.142, psi: 100_000 },
  { toIn: 0.177, psi: 90_000 },
  { toIn: 0.236, psi: 80_000 },
  { toIn: 0.273, psi: 70_000 },
] as const;
/** The thickest nail the printed yield strengths reach, inches. */
export const THICKEST_NAIL_IN = 0.273;

/** Bending yield strength of a common steel nail, psi, for diameters up to 0.273 in. Throws RangeError above. */
export function nailYieldPsi(diameterIn: number): number {
  const step = YIELD_STEPS.find((row) => diameterIn <= row.toIn);
  if (!step) throw new RangeError(`No yield strength for a nail of ${diameterIn} in; the table ends at 0.273 in`);
  return step.psi;
}

/** Full lateral value from this penetration, in nail diameters; none below the least. */
export const FULL_PENETRATION_DIAMETERS = 10;
export const LEAST_PENETRATION_DIAMETERS = 6;
/** The tapered tip is two diameters long; half of it bears nothing. */
const HALF_TIP_DIAMETERS = 1;

export interface NailLateral {
  /** The six modes at the penetration there is; none below six diameters. */
  readonly yielding: YieldLoads | undefined;
  /** Length that bears in the main member, inches. */
  readonly mainBearingIn: number;
  /** Penetration over ten diameters, at most 1; 0 below six diameters. */
  readonly penetrationFactor: number;
  /** Reference lateral value, lb, before adjustment factors. */
  readonly referenceLb: number;
  /** Share 0..1 of what the nail takes with ten diameters of penetration. */
  readonly keptShare: number;
}

/**
 * Reference lateral value of one nail, lb, for a penetration in inches into the main member, tip included. From ten
 * diameters on the whole penetration bears. Between six and ten the standard offers two ways, the full value times
 * p/10D, or the equations with half the tip taken off; the lower counts. Below six there is no value.
 */
export function nailLateral(joint: DowelJoint, penetrationIn: number): NailLateral {
  const { diameterIn } = joint;
  const fullIn = FULL_PENETRATION_DIAMETERS * diameterIn;
  if (!atLeast(penetrationIn, LEAST_PENETRATION_DIAMETERS * diameterIn))
    return { yielding: undefined, mainBearingIn: 0, penetrationFactor: 0, referenceLb: 0, keptShare: 0 };
  if (atLeast(penetrationIn, fullIn)) {
    const yielding = yieldLoads(joint, penetrationIn);
    const referenceLb = yielding.lateralLb;
    return { yielding, mainBearingIn: penetrationIn, penetrationFactor: 1, referenceLb, keptShare: 1 };
  }
  const mainBearingIn = penetrationIn - HALF_TIP_DIAMETERS * diameterIn;
  const yielding = yieldLoads(joint, mainBearingIn);
  const fullLb = yieldLoads(joint, fullIn).lateralLb;
  const penetrationFactor = penetrationIn / fullIn;
  const referenceLb = Math.min(yielding.lateralLb, fullLb * penetrationFactor);
  return { yielding, mainBearingIn, penetrationFactor, referenceLb, keptShare: referenceLb / fullLb };
}

/** Reference withdrawal of a smooth nail from side grain, lb per inch of penetration. */
export const withdrawalLbPerIn = (gravity: number, diameterIn: number): number => 1380 * gravity ** 2.5 * diameterIn;

/** Share of a straight nail that a toe-nail keeps. */
export const TOE_NAIL_FACTOR = { lateral: 0.83, withdrawal: 0.67 } as const;

const TOE_NAIL_ANGLE = Math.PI / 6;

/** Where a toe-nail bears, inches, from its length: in the side member, and in the main one for either direction. */
export function toeNailGeometry(nailIn: number): { sideIn: number; lateralIn: number; withdrawalIn: number } {
  const sideIn = nailIn / 3;
  return {
    sideIn,
    lateralIn: nailIn * Math.cos(TOE_NAIL_ANGLE) - sideIn,
    withdrawalIn: nailIn - sideIn / Math.cos(TOE_NAIL_ANGLE),
  };
}
