import type { Source } from '../../kernel/index.ts';

export const OVERDRIVEN_SOURCE: Source = {
  id: 'apa-tt-012',
  title: 'APA guidance on overdriven nails, as summarized by a public retrofit page; the original was not read',
  edition: 'TT-012 (summary)',
  section: 'overdriven perimeter nails',
  basis: 'second-hand',
};
export const TIGHT_NAILS_SOURCE: Source = {
  id: 'apa-tt-012a-note',
  title: 'APA TT-012A as an engineering office sums it up: added nails at 4 in or less may split the framing',
  edition: 'TT-012A (summary)',
  section: 'adding nails',
  basis: 'second-hand',
};
/** Remembered: the panel counts as the thickness left under the head. Nothing is decided by it. */
export const THICKNESS_LEFT_SOURCE: Source = {
  id: 'apa-tt-012-thickness',
  title: 'APA guidance on overdriven nails, panel counted as the thickness left under the head; not read',
  edition: 'TT-012',
  section: 'thickness left',
  basis: 'memory',
};
export const EDGE_DISTANCE_SOURCE: Source = {
  id: 'sdpws-4.3.7.1',
  title: 'SDPWS, nails at least 3/8 in from the panel edge; not read for panel walls',
  edition: '2008 to 2021',
  section: '4.3.7.1',
  basis: 'memory',
};

/** Share of perimeter nails that may be overdriven 1/16 to 1/8 in with nothing added. */
export const OVERDRIVEN_SHARE_LIMIT = 0.2;
/** A head deeper than this is never accepted unchanged; the thickness left is shown for it. Inches. */
export const DEEP_HEAD_IN = 0.125;
/** One nail is added for this many overdriven. */
export const OVERDRIVEN_PER_ADDED_NAIL = 2;
export const STAPLES_PER_NAIL = 3;
/** Nails closer than this may split the framing, inches. */
export const TIGHT_SPACING_IN = 4;
