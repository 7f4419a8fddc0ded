import type { Source } from '../../kernel/index.ts';

export const PANEL_EDGE_SOURCE: Source = {
  id: 'sdpws-4.3.7.1-edges',
  title: 'SDPWS, framing or blocking behind every panel edge',
  edition: '2008 to 2021',
  section: '4.3.7.1(1), (2)',
  basis: 'memory',
};
export const SMALL_PIECE_SOURCE: Source = {
  id: 'trade-small-pieces',
  title: 'Trade habit, small pieces of wall panel',
  edition: 'current',
  section: 'fillers',
  basis: 'common-practice',
};

/** A panel edge this far from the middle of a 2x stud still leaves its nail 3/8 in of panel and wood under it. Inches. */
export const EDGE_ON_STUD_IN = 0.375;
/** Edges this close are one joint: panels are set about 1/8 in apart. Inches. */
export const JOINT_IN = 0.25;
/** Trade habit avoids smaller pieces. Inches. */
export const SMALL_PIECE_IN = 12;
/** Often quoted for walls; it is a rule for floors and roofs. Inches. */
export const DIAPHRAGM_PIECE_IN = 24;
