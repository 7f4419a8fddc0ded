import type { Source } from '../../kernel/index.ts';

export const CHORD_SOURCE: Source = {
  id: 'sdpws-4.3-7',
  title: 'SDPWS, chord force of a shear wall and forces from stories above',
  edition: '2021',
  section: 'Eq. 4.3-7, 4.3.6.4.4',
  basis: 'second-hand',
};
export const LEVER_SOURCE: Source = {
  id: 'plan-check-lever',
  title: 'Lever from the hold-down, wall length less 6 in, as used in a city plan-check calculation',
  edition: 'none',
  section: 'overturning',
  basis: 'common-practice',
};
/** How far inside the wall end a hold-down usually pulls, feet. */
export const USUAL_HOLD_DOWN_OFFSET_FT = 0.5;
