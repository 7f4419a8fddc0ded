import type { Source } from '../../kernel/index.ts';

export const ANCHOR_SOURCE: Source = {
  id: 'irc-r403.1.6',
  title: 'International Residential Code, foundation anchorage',
  edition: '2006 as quoted, 2024 as transcribed',
  section: 'R403.1.6',
  basis: 'second-hand',
};
export const SEISMIC_ANCHOR_SOURCE: Source = {
  id: 'irc-r403.1.6.1',
  title: 'International Residential Code, foundation anchorage in seismic design categories',
  edition: '2024, as transcribed',
  section: 'R403.1.6.1',
  basis: 'second-hand',
};

/** The layout rules of R403.1.6; lengths in inches. */
export const ANCHOR_RULES = {
  leastDiameterIn: 0.5,
  leastEmbedmentIn: 7,
  /** One bolt stands no farther than this from each end of a plate piece, and no nearer than so many diameters. */
  mostFromEndIn: 12,
  leastFromEndDiameters: 7,
  mostSpacingIn: 72,
  /** In buildings over two stories where earthquakes count. */
  tallSpacingIn: 48,
  tallAboveStories: 2,
  leastBolts: 2,
  /** A piece this short that joins offset braced panels needs one bolt in the middle third of its length. */
  shortPieceIn: 24,
  /** A piece this short there needs none. */
  shortestPieceIn: 12,
} as const;

export const SEISMIC_CATEGORIES = ['A', 'B', 'C', 'D0', 'D1', 'D2', 'E'] as const;
export type SeismicCategory = (typeof SEISMIC_CATEGORIES)[number];

/** Where the closer spacing and the plate washers are asked for: D0 and up, and townhouses in C. */
export const asksSeismicAnchors = (category: SeismicCategory, townhouse: boolean): boolean =>
  category === 'D0' || category === 'D1' || category === 'D2' || category === 'E' || (category === 'C' && townhouse);

/** The plate washer asked for there. */
export const PLATE_WASHER_WORDS = '0.229 x 3 x 3 in';
