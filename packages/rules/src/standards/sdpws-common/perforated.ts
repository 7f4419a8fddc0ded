import { atMost, type Source } from '../../kernel/index.ts';
import { SDPWS_2021 } from '../sdpws-2021/shear-walls.ts';
import { ASPECT_LIMIT, stiffnessShare } from './edition.ts';

export const PERFORATED_SOURCE: Source = {
  id: 'sdpws-perforated',
  title: 'SDPWS perforated walls, shear adjustment factor by equation',
  edition: '2015, 2021',
  section: 'Eq. 4.3-5, 4.3-6; 2021 section 4.3.2.3',
  basis: 'second-hand',
};
export const PERFORATED_HEIGHT_LIMIT_FT = 20;
/** Largest nominal shear a perforated wall may count, plf. */
const NOMINAL_LIMIT_PLF = 2435;
/** The same as design strength: by the smallest and the largest share of nominal that a method and a load allow. */
export const PERFORATED_DESIGN_LIMIT_PLF = {
  least: NOMINAL_LIMIT_PLF * SDPWS_2021.designShare.asd.seismic,
  most: NOMINAL_LIMIT_PLF * SDPWS_2021.designShare.lrfd.wind,
} as const;

/** Length a full-height segment counts for, feet: all up to h/b 2, times 2b/h up to 3.5, none past it. */
export function countedLengthFt(segmentFt: number, heightFt: number): number {
  const aspect = heightFt / segmentFt;
  return atMost(aspect, ASPECT_LIMIT) ? segmentFt * stiffnessShare(aspect) : 0;
}

const LEAST_OPENING_HEIGHT_SHARE = 1 / 3;
/** Opening area that counts, square feet: its height is never taken under a third of the wall. Feet in. */
export const countedOpeningSf = (widthFt: number, openingFt: number, heightFt: number): number =>
  widthFt * Math.max(openingFt, heightFt * LEAST_OPENING_HEIGHT_SHARE);

/**
 * Shear adjustment factor C_o, 0 to 1. `lengthFt` is the whole wall, `segmentsFt` the sum of counted segments,
 * `openingsSf` the sum of counted opening areas. Zero when no segment counts.
 */
export function perforatedFactor(lengthFt: number, heightFt: number, segmentsFt: number, openingsSf: number): number {
  if (segmentsFt <= 0) return 0;
  const r = 1 / (1 + openingsSf / (heightFt * segmentsFt));
  return Math.min(1, ((r / (3 - 2 * r)) * lengthFt) / segmentsFt);
}
