import type { Source } from '../../kernel/index.ts';

export const DEAD_LOAD_SOURCE: Source = {
  id: 'asce-7-dead-load',
  title: 'Share of dead load against overturning, ASD, as used in a city plan-check calculation',
  edition: 'ASCE 7, as quoted',
  section: '0.6 - 0.7 x 0.2 S_DS',
  basis: 'second-hand',
};
/** Share of the dead load that may resist overturning in wind, ASD, and what earthquakes take off per unit of S_DS. */
const WIND_DEAD_FACTOR = 0.6;
const OFF_PER_SDS = 0.14;

/** Share of the dead load that may resist overturning in an earthquake, ASD. S_DS in g, 0 to 3. */
export const seismicDeadFactor = (sds: number): number => WIND_DEAD_FACTOR - OFF_PER_SDS * sds;
