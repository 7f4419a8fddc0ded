import type { Source } from '../../kernel/index.ts';
import type { FramingSpecies } from './bearing.ts';

export const NOTCH_SHEAR_SOURCE: Source = {
  id: 'nds-3.4.3.2',
  title: 'NDS shear at a notch on the tension face',
  edition: '2018, as transcribed',
  section: '3.4.3.2(a)',
  basis: 'second-hand',
};
export const FV_SOURCE: Source = {
  id: 'nds-supplement-fv',
  title: 'NDS Supplement, shear parallel to grain',
  edition: '2018, as transcribed',
  section: 'Table 4A',
  basis: 'second-hand',
};
const FV_PINE_SOURCE: Source = {
  ...FV_SOURCE,
  id: 'nds-supplement-fv-addendum',
  edition: 'addendum of March 2012, Southern Pine',
  section: 'Table 4B',
  basis: 'published',
};
const FV_MEMORY_SOURCE: Source = {
  ...FV_SOURCE,
  id: 'nds-supplement-fv-memory',
  edition: '2018, not read for this species',
  basis: 'memory',
};

/** Shear design value parallel to grain, psi, normal duration and dry, and whether it was read. */
export const FV_PSI: Record<FramingSpecies, { readonly psi: number; readonly source: Source }> = {
  'douglas-fir-larch': { psi: 180, source: FV_SOURCE },
  'southern-pine': { psi: 175, source: FV_PINE_SOURCE },
  'hem-fir': { psi: 150, source: FV_SOURCE },
  'spruce-pine-fir': { psi: 135, source: FV_SOURCE },
  'spruce-pine-fir-south': { psi: 135, source: FV_MEMORY_SOURCE },
  redwood: { psi: 160, source: FV_MEMORY_SOURCE },
};
export const FV_SOURCES: readonly Source[] = [FV_SOURCE, FV_PINE_SOURCE, FV_MEMORY_SOURCE];

/** Shear a rectangular section carries, pounds: two thirds of the stress times its area. */
export const shearCapacityLb = (fvPsi: number, widthIn: number, depthIn: number): number =>
  (2 / 3) * fvPsi * widthIn * depthIn;

/** Share of its shear an end keeps when notched to `leftIn` on the tension face: (dn/d)^2 on the depth left. Inches. */
export const endNotchShare = (depthIn: number, leftIn: number): number => Math.max(0, leftIn / depthIn) ** 3;
