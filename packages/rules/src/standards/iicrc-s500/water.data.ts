import type { Source } from '../../kernel/index.ts';

export const WATER_SOURCE: Source = {
  id: 'iicrc-s500',
  title: 'IICRC S500, categories of water',
  edition: 'as quoted',
  section: 'categories 1 to 3',
  basis: 'second-hand',
};
export const WATER_UNKNOWN_SOURCE: Source = {
  id: 'unknown-water',
  title: 'Water of unknown origin is treated as the worst',
  edition: 'trade habit',
  section: 'unknown origin',
  basis: 'common-practice',
};

/** 1 clean, 2 significantly contaminated, 3 grossly contaminated. */
export type WaterCategory = 1 | 2 | 3;

/** Category by where the water came from; what it touched and time can make it worse, never better. */
export const WATER_CATEGORY = {
  'supply-line': 1,
  'rain-or-snow': 1,
  'tub-or-sink': 1,
  appliance: 2,
  'toilet-bowl': 2,
  seepage: 2,
  sewage: 3,
  'toilet-backflow': 3,
  flood: 3,
  unknown: 3,
} as const satisfies Record<string, WaterCategory>;
export type WaterOrigin = keyof typeof WATER_CATEGORY;
