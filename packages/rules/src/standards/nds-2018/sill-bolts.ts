import type { Source } from '../../kernel/index.ts';
import { dowelBearingPsi } from './dowel-bearing.ts';
import { type YieldLoads, yieldLoads } from './yield-limit.ts';

export const SILL_BOLT_SOURCE: Source = {
  id: 'nds-12e',
  title: 'NDS bolts through a sill into concrete',
  edition: '2018, as transcribed',
  section: 'Table 12E',
  basis: 'second-hand',
};

/** What Table 12E takes: concrete of 2500 psi or more, 6 in of embedment, ordinary bolts. */
const CONCRETE_PSI = 7500;
const EMBEDMENT_IN = 6;
const BOLT_YIELD_PSI = 45_000;
export const SILL_THICKNESS_IN = 1.5;

/**
 * Yield loads of one anchor bolt through a wood sill into concrete, lb, before adjustment factors. The angle is
 * between the load and the grain of the sill, 0 along the wall, 90 out of it. Bolts 1/2 to 1 in.
 */
export const sillBoltLoads = (
  diameterIn: number,
  gravity: number,
  angleDeg: number,
  sillIn: number = SILL_THICKNESS_IN,
): YieldLoads =>
  yieldLoads(
    {
      diameterIn,
      sideBearingIn: sillIn,
      mainPsi: CONCRETE_PSI,
      sidePsi: dowelBearingPsi(gravity, diameterIn, angleDeg),
      yieldPsi: BOLT_YIELD_PSI,
      grainAngleDeg: angleDeg,
    },
    EMBEDMENT_IN,
  );
