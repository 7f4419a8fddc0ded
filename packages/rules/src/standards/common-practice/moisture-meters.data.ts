import type { Source } from '../../kernel/index.ts';

export const METER_RANGE_SOURCE: Source = {
  id: 'moisture-meter-range',
  title: 'Wood and Timber Condition Assessment Manual, range of moisture meters',
  edition: '2nd edition; range not read',
  section: 'moisture meters',
  basis: 'memory',
};

/** Readings, percent, between which a meter can be believed: above fiber saturation it only says wet. */
export const METER_RANGE_PCT = { from: 7, to: 30 } as const;
