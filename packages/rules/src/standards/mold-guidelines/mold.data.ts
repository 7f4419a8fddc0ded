import type { Source } from '../../kernel/index.ts';

export const MOLD_BANDS_SOURCE: Source = {
  id: 'mold-bands',
  title: 'EPA 402-K-01-001, Mold Remediation in Schools and Commercial Buildings: sizes of a job',
  edition: '2001, reprinted 2008, as quoted',
  section: 'Table 2',
  basis: 'second-hand',
};
export const MOLD_EPA_SOURCE: Source = {
  id: 'mold-epa-hud-cdc',
  title: 'EPA, HUD and CDC: a specialist above 10 SF',
  edition: 'as summed up by NIEHS, 2013',
  section: 'size of the job',
  basis: 'second-hand',
};
export const MOLD_NYC_SOURCE: Source = {
  id: 'mold-nyc',
  title: 'New York City health department: a specialist above 100 SF',
  edition: 'as summed up by NIEHS, 2013',
  section: 'size of the job',
  basis: 'second-hand',
};

/** Up to here a job is small, square feet. */
export const MOLD_SMALL_SF = 10;
/** Up to here it is medium, and large above. */
export const MOLD_MEDIUM_SF = 100;

/** Above so many square feet each guide asks for a specialist. */
export const MOLD_SPECIALIST_ABOVE_SF = { 'epa-hud-cdc': MOLD_SMALL_SF, nyc: MOLD_MEDIUM_SF } as const;
export type MoldGuide = keyof typeof MOLD_SPECIALIST_ABOVE_SF;
