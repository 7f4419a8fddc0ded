import type { Source } from '../../kernel/index.ts';

export const PANEL_EDGE_SOURCE: Source = {
  id: 'sdpws-4.3.7.1-edges',
  title: 'SDPWS, framing or blocking behind every panel edge',
  edition: '2008 to 2021',
  section: '4.3.7.1(1), (2)',
  basis: 'memory',
};
/** Remembered: panels not smaller than 4 x 8 ft except at boundaries and at changes in framing. */
export const PANEL_SIZE_SOURCE: Source = {
  id: 'sdpws-4.3.7.1-size',
  title: 'SDPWS, least size of wall panels away from the ends',
  edition: '2008 to 2021',
  section: '4.3.7.1(1)',
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
/**
 * A panel that stops this far short of the outer face of a 1-1/2 in plate or post still covers 3/4 in of it: 3/8 in of
 * panel and 3/8 in of wood at the nail. Inches.
 */
export const EDGE_ON_PLATE_IN = 0.75;
/**
 * Edges this close are one joint, edges farther apart have bare framing between them. Panels are set about 1/8 in
 * apart; twice that leaves room for a tape read to 1/16 in at either edge. Inches.
 */
export const JOINT_IN = 0.25;
/** A whole sheet, upright or on its side; up to a joint narrower still is one, as sheets are cut to leave theirs. Inches. */
export const SHEET_SIDES_IN = [48, 96] as const;
/** Trade habit avoids smaller pieces. Inches. */
export const SMALL_PIECE_IN = 12;
/** Often quoted for walls; it is a rule for floors and roofs. Inches. */
export const DIAPHRAGM_PIECE_IN = 24;
