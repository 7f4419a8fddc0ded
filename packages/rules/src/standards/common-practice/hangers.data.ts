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
  section: 'width, seat gap and end gap within 1/8 in; strength in proportion to the fasteners',
  basis: 'common-practice',
};

/** Largest gap between hanger and joist width, under the joist, and at its end. Inches. */
export const HANGER_GAP_IN = 0.125;
