import type { Source } from '../../kernel/index.ts';

export const PRESUMED_SOURCE: Source = {
  id: '29-cfr-1926.1101',
  title: 'OSHA asbestos standard for construction, presumed asbestos-containing material',
  edition: 'as quoted',
  section: '29 CFR 1926.1101',
  basis: 'second-hand',
};

/** Buildings of this year and before. */
export const PRESUMED_THROUGH_YEAR = 1980;

/** Whether the rule presumes asbestos in a material of that age; the others may still contain it. */
export const PRESUMED = {
  'pipe-insulation': true,
  surfacing: true,
  flooring: true,
  wallboard: false,
  roofing: false,
  siding: false,
  vermiculite: false,
  other: false,
} as const;
export type SuspectMaterial = keyof typeof PRESUMED;
