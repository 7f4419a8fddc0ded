import type { Source } from '../../kernel/index.ts';

export const SILICA_LIMIT_SOURCE: Source = {
  id: '29-cfr-1926.1153',
  title: 'OSHA silica standard for construction, exposure limits',
  edition: 'as quoted',
  section: '29 CFR 1926.1153',
  basis: 'second-hand',
};
export const SILICA_TABLE_SOURCE: Source = {
  id: '29-cfr-1926.1153-table-1',
  title: 'California Title 8, 1532.3, which has the rows of the OSHA silica standard 29 CFR 1926.1153',
  edition: 'as read',
  section: 'Table 1 (i) to (iv)',
  basis: 'published',
};
export const SILICA_DRILL_SOURCE: Source = {
  id: '29-cfr-1926.1153-table-1-drills',
  title: 'OSHA silica standard for construction, Table 1',
  edition: "row as quoted in a tool maker's guide",
  section: 'Table 1 (vii)',
  basis: 'second-hand',
};
export const SILICA_MEMORY_SOURCE: Source = {
  ...SILICA_DRILL_SOURCE,
  id: '29-cfr-1926.1153-table-1-memory',
  edition: 'not read',
  section: 'Table 1 (x) to (xii)',
  basis: 'memory',
};

/** Permissible exposure, micrograms of respirable silica per cubic meter, mean of 8 hours. */
export const SILICA_LIMIT_UG_M3 = 50;
/** Below this the standard asks for nothing. */
export const SILICA_ACTION_UG_M3 = 25;
/** Table 1 asks for more breathing protection above so many hours a shift. */
export const SILICA_LONG_SHIFT_HOURS = 4;

/** Protection factor of the mask that goes with the tool's own dust control, 0 for none: up to 4 hours, and longer. */
type Mask = readonly [short: number, long: number];
export interface SilicaRow {
  readonly outdoors: Mask;
  /** Null where the row is for outdoor work only. */
  readonly indoors: Mask | null;
  readonly source: Source;
}

/** The rows of Table 1 that a house job meets. */
export const SILICA_TABLE = {
  'masonry-saw': { outdoors: [0, 0], indoors: [0, 0], source: SILICA_TABLE_SOURCE },
  'handheld-saw': { outdoors: [0, 10], indoors: [10, 10], source: SILICA_TABLE_SOURCE },
  'fiber-cement-saw': { outdoors: [0, 0], indoors: null, source: SILICA_TABLE_SOURCE },
  'walk-behind-saw': { outdoors: [0, 0], indoors: [10, 10], source: SILICA_TABLE_SOURCE },
  drill: { outdoors: [0, 0], indoors: [0, 0], source: SILICA_DRILL_SOURCE },
  jackhammer: { outdoors: [0, 10], indoors: [10, 10], source: SILICA_MEMORY_SOURCE },
  'mortar-grinder': { outdoors: [10, 25], indoors: [10, 25], source: SILICA_MEMORY_SOURCE },
  grinder: { outdoors: [0, 0], indoors: [0, 10], source: SILICA_MEMORY_SOURCE },
} as const satisfies Record<string, SilicaRow>;
export type SilicaTask = keyof typeof SILICA_TABLE;
