import type { Source } from '../../kernel/index.ts';

export const DECAY_MOISTURE_SOURCE: Source = {
  id: 'wood-handbook-decay-moisture',
  title: 'Wood Handbook, moisture and temperature for decay',
  edition: 'FPL-GTR-190 text as read',
  section: 'chapters 5 and 14',
  basis: 'published',
};
export const ACTIVE_DECAY_SOURCE: Source = {
  id: 'decay-fiber-saturation',
  title: 'Canadian research text on decay: infection seldom starts below fiber saturation',
  edition: 'as quoted',
  section: 'moisture for decay',
  basis: 'second-hand',
};

/** Kept below this decay neither starts nor goes on, percent of dry weight. */
export const DECAY_STOPS_BELOW_PCT = 20;
/** From about fiber saturation (28 to 30%) decay can start by itself, percent. */
export const DECAY_STARTS_FROM_PCT = 28;

/** Degrees Fahrenheit: fungi stop outside `stops` and slow down outside `slows`. */
export const FUNGI_F = { stops: { below: 35, above: 100 }, slows: { below: 50, above: 95 } } as const;
