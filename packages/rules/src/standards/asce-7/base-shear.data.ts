import type { Source } from '../../kernel/index.ts';

export const STORY_FACTOR_SOURCE: Source = {
  id: 'asce-7-12.14.8',
  title: 'ASCE 7 simplified earthquake procedure, V = F S_DS W / R',
  edition: '7-10 to 7-22',
  section: '12.14.8.1',
  basis: 'memory',
};
export const SITE_SOURCE: Source = {
  id: 'asce-7-12.14.8.1-sds',
  title: 'ASCE 7, S_DS = (2/3) Fa Ss with Fa 1.0 on rock and 1.4 on soil',
  edition: '7-22',
  section: '12.14.8.1',
  basis: 'second-hand',
};
export const SYSTEM_SOURCE: Source = {
  id: 'asce-7-12.2-1',
  title: 'ASCE 7 response factors of light-frame walls',
  edition: '7-16',
  section: 'Table 12.2-1 A.15, A.17, B.22',
  basis: 'second-hand',
};
export const ASD_EARTHQUAKE_SOURCE: Source = {
  id: 'asce-7-asd-0.7e',
  title: 'ASD earthquake load 0.7 E, importance as R / Ie, redundancy 1.3, as used in city plan-check calculations',
  edition: 'ASCE 7, as quoted',
  section: 'earthquake load',
  basis: 'second-hand',
};

/** F by number of stories; the procedure stops after the last. */
const STORY_FACTORS = [1, 1.1, 1.2] as const;
export const SIMPLIFIED_STORY_LIMIT = STORY_FACTORS.length;
/** F of a house of so many stories; undefined past the procedure. */
export const storyFactor = (stories: number): number | undefined => STORY_FACTORS[stories - 1];

/** R of the walls that brace the house. */
export const RESPONSE_FACTOR = { 'bearing-wall': 6.5, 'building-frame': 7, 'other-panels': 2 } as const;
export type BracingSystem = keyof typeof RESPONSE_FACTOR;

const SITE_FACTOR = { rock: 1, soil: 1.4 } as const;
export type Site = keyof typeof SITE_FACTOR;
/** Ss is not taken higher by the procedure. */
const SS_LIMIT = 1.5;
/** S_DS in g from Ss in g, 0 to 5. */
export const designAcceleration = (ss: number, site: Site): number =>
  (2 / 3) * SITE_FACTOR[site] * Math.min(ss, SS_LIMIT);

/** ASD share of an earthquake load at strength level. */
export const ASD_SHARE = 0.7;
/** Redundancy the regular procedure may ask for. */
export const REDUNDANCY = 1.3;
