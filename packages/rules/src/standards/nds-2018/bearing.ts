import type { Source } from '../../kernel/index.ts';

export const FC_PERP_SOURCE: Source = {
  id: 'nds-supplement-4',
  title: 'NDS Supplement, compression perpendicular to grain',
  edition: '2018, as transcribed',
  section: 'Table 4A',
  basis: 'second-hand',
};
export const FC_PERP_PINE_SOURCE: Source = {
  ...FC_PERP_SOURCE,
  id: 'nds-supplement-4b-addendum',
  edition: 'addendum of March 2012, Southern Pine',
  section: 'Table 4B',
  basis: 'published',
};
export const FC_PERP_MEMORY_SOURCE: Source = {
  ...FC_PERP_SOURCE,
  id: 'nds-supplement-4-memory',
  edition: '2018, not read for this species',
  basis: 'memory',
};
export const BEARING_FACTOR_SOURCE: Source = {
  id: 'nds-3.10.4',
  title: 'NDS bearing area factor',
  edition: '2018, as transcribed',
  section: '3.10.4',
  basis: 'second-hand',
};

export type FramingSpecies =
  | 'douglas-fir-larch'
  | 'southern-pine'
  | 'hem-fir'
  | 'spruce-pine-fir'
  | 'spruce-pine-fir-south'
  | 'redwood';

/** Design value across the grain, psi, and whether it was read. Redwood takes its lower, open-grain value. */
export const FC_PERP_PSI: Record<FramingSpecies, { readonly psi: number; readonly source: Source }> = {
  'douglas-fir-larch': { psi: 625, source: FC_PERP_SOURCE },
  'southern-pine': { psi: 565, source: FC_PERP_PINE_SOURCE },
  'hem-fir': { psi: 405, source: FC_PERP_SOURCE },
  'spruce-pine-fir': { psi: 425, source: FC_PERP_SOURCE },
  'spruce-pine-fir-south': { psi: 335, source: FC_PERP_MEMORY_SOURCE },
  redwood: { psi: 425, source: FC_PERP_MEMORY_SOURCE },
};

export const FC_PERP_SOURCES: readonly Source[] = [FC_PERP_SOURCE, FC_PERP_PINE_SOURCE, FC_PERP_MEMORY_SOURCE];

/** The factor is for short bearings only. */
const FACTOR_BELOW_IN = 6;
const FACTOR_ADDS_IN = 0.375;
/** The printed table starts at 1/2 in with 1.75; a shorter bearing gets no more. */
const FACTOR_TABLE_FROM_IN = 0.5;
const LARGEST_FACTOR = 1.75;

/** Bearing area factor C_b: (lb + 0.375)/lb, at most 1.75, for bearings under 6 in at least 3 in from the end; else 1. */
export function bearingFactor(bearingLengthIn: number, atMemberEnd: boolean): number {
  if (atMemberEnd || bearingLengthIn >= FACTOR_BELOW_IN) return 1;
  if (bearingLengthIn <= FACTOR_TABLE_FROM_IN) return LARGEST_FACTOR;
  return (bearingLengthIn + FACTOR_ADDS_IN) / bearingLengthIn;
}

/** Bearing length, inches, at which the stress across the grain just reaches the design value. */
export function bearingLengthForLoad(
  reactionLb: number,
  widthIn: number,
  fcPerpPsi: number,
  atMemberEnd: boolean,
): number {
  const plainIn = reactionLb / (fcPerpPsi * widthIn);
  const withFactorIn = plainIn - FACTOR_ADDS_IN;
  if (atMemberEnd || withFactorIn >= FACTOR_BELOW_IN) return plainIn;
  return withFactorIn >= FACTOR_TABLE_FROM_IN ? withFactorIn : plainIn / LARGEST_FACTOR;
}
