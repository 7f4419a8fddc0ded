import type { Source } from '../../kernel/index.ts';

export const HANGER_HOLES_SOURCE: Source = {
  id: 'hanger-holes',
  title:
    'Hanger makers as inspectors sum them up: every specified hole, the specified nail, no screws in place of nails',
  edition: 'inspector notes',
  section: 'hanger nailing',
  basis: 'second-hand',
};
export const HANGER_FIT_SOURCE: Source = {
  id: 'hanger-fit',
  title: 'Typical published installation notes of hangers',
  edition: 'none',
  section:
    'width, seat gap and end gap within 1/8 in, up to 1/4 in only filled; strength in proportion to the fasteners',
  basis: 'common-practice',
};

export const HANGER_DEPTH_SOURCE: Source = {
  id: 'irc-r507.6.2',
  title:
    'International Residential Code, hangers that keep deck joists upright; inside a house it is a habit of the trade',
  edition: '2024, as quoted',
  section: 'R507.6.2: at least 60% of the joist depth',
  basis: 'second-hand',
};

/** A hanger shallower than this share of its joist lets it roll. */
export const LEAST_HANGER_DEPTH_SHARE = 0.6;
/** Up to this gap a hanger with its nails still holds, and the gap is only filled. Inches. */
export const SHORT_HANGER_GAP_IN = 0.25;
/** Largest gap between hanger and joist width, under the joist, and at its end. Inches. */
export const HANGER_GAP_IN = 0.125;
