import type { Source } from '../../kernel/index.ts';

export const LEAD_SOURCE: Source = {
  id: '40-cfr-745.83',
  title: 'EPA Renovation, Repair and Painting rule, minor repair and maintenance',
  edition: 'as read in EPA answers and a copy of the rule',
  section: '40 CFR 745.83',
  basis: 'published',
};

/** Housing built before this year is treated as having lead paint. */
export const LEAD_BEFORE_YEAR = 1978;
/** Painted surface that may be disturbed in one room, square feet. */
export const LEAD_ROOM_SF = 6;
/** Painted surface that may be disturbed outside in all, square feet. */
export const LEAD_EXTERIOR_SF = 20;
