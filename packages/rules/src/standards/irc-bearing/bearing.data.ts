import type { Source } from '../../kernel/index.ts';

export const IRC_BEARING_SOURCE: Source = {
  id: 'irc-r502.6',
  title: 'International Residential Code, bearing of joists and beams',
  edition: '2009, 2015, 2018 as quoted',
  section: 'R502.6',
  basis: 'second-hand',
};

export const POSITIVE_CONNECTION_SOURCE: Source = {
  id: 'irc-r502.9',
  title:
    'International Residential Code, fastening of floor framing: posts and beams are held by more than gravity and friction',
  edition: '2018, a digest of it as read; 2024 as quoted',
  section: 'R502.9, with R407.3 and R507.5.2',
  basis: 'second-hand',
};

/** Least bearing length at a member end, inches. Steel counts as metal. */
export const LEAST_BEARING_IN = { wood: 1.5, steel: 1.5, masonry: 3 } as const;
