import type { Source } from '../../kernel/index.ts';

export const IRC_BEARING_SOURCE: Source = {
  id: 'irc-r502.6',
  title: 'International Residential Code, bearing of joists and beams',
  edition: '2009, 2015, 2018 as quoted',
  section: 'R502.6',
  basis: 'second-hand',
};

/** Least bearing length at a member end, inches. Steel counts as metal. */
export const LEAST_BEARING_IN = { wood: 1.5, steel: 1.5, masonry: 3 } as const;
