import type { Source } from '../../kernel/index.ts';
import { LARGE_DOWEL_IN } from './yield-limit.ts';

export const DOWEL_BEARING_SOURCE: Source = {
  id: 'nds-12.3.3',
  title: 'NDS dowel bearing strength',
  edition: '2018, as transcribed',
  section: '12.3.3, Tables 12.3.3 and 12.3.3B',
  basis: 'second-hand',
};
export const DOWEL_BEARING_MEMORY_SOURCE: Source = {
  id: 'nds-12.3.3-memory',
  title: 'NDS dowel bearing strength of OSB and of thin steel plates',
  edition: '2018, not read',
  section: 'Tables 12.3.3B and 12P',
  basis: 'memory',
};

/** Table 12.3.3 prints the strength under nails to 50 psi, and the printed nail tables follow it. */
const TABLE_STEP_PSI = 50;

/** Strength of wood under a dowel thinner than 1/4 in, psi: 16600 G^1.84 to the nearest 50 psi. */
export const nailBearingPsi = (gravity: number): number =>
  Math.round((16_600 * gravity ** 1.84) / TABLE_STEP_PSI) * TABLE_STEP_PSI;

/** Strength between along (`parallelPsi`) and across the grain (`acrossPsi`) by Hankinson's formula, psi. */
export function hankinsonPsi(parallelPsi: number, acrossPsi: number, angleDeg: number): number {
  const sine2 = Math.sin((angleDeg * Math.PI) / 180) ** 2;
  return (parallelPsi * acrossPsi) / (parallelPsi * sine2 + acrossPsi * (1 - sine2));
}

/** Strength of wood under a dowel of any thickness, psi; the angle to the grain counts from 1/4 in on. */
export function dowelBearingPsi(gravity: number, diameterIn: number, angleDeg: number): number {
  if (diameterIn < LARGE_DOWEL_IN) return nailBearingPsi(gravity);
  return hankinsonPsi(11_200 * gravity, (6100 * gravity ** 1.45) / Math.sqrt(diameterIn), angleDeg);
}

/** Strength of other side members under a nail, psi, and whether it was read. */
export const SIDE_PLATE_PSI = {
  osb: { psi: 4650, source: DOWEL_BEARING_MEMORY_SOURCE },
  plywood: { psi: 3350, source: DOWEL_BEARING_SOURCE },
  'structural-1-plywood': { psi: 4650, source: DOWEL_BEARING_SOURCE },
  steel: { psi: 61_850, source: DOWEL_BEARING_MEMORY_SOURCE },
} as const;
