import type { Source } from '../../kernel/index.ts';

export const LA_HOLD_DOWN_SOURCE: Source = {
  id: 'lamc-91.2305.5',
  title: 'Los Angeles Municipal Code, hold-downs',
  edition: 'as read',
  section: '91.2305.5',
  basis: 'published',
};
/** Percent of the published capacity that Los Angeles counts for a hold-down not tested by cycles. */
export const LA_NOT_CYCLIC_PCT = 75;
