import type { Source } from '../../kernel/index.ts';

export const ROD_LOSS_SOURCE: Source = {
  id: 'rod-loss',
  title: 'Rusted rods: tension in proportion to the stress area left; deep pits are flagged',
  edition: 'none',
  section: 'stress area; pits over 10% of the diameter',
  basis: 'common-practice',
};
export const ROD_PROTECTION_SOURCE: Source = {
  id: 'irc-r317.3.1',
  title: 'International Residential Code, fasteners in treated wood',
  edition: 'as quoted on a plan note',
  section: 'R317.3.1: hot-dip galvanized or stainless',
  basis: 'second-hand',
};

/** Pits deeper than this share of the diameter are flagged whatever the calipers say. */
export const DEEP_PIT_SHARE = 0.1;
