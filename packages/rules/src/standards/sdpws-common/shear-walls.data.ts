import type { Source } from '../../kernel/index.ts';

export const PANEL_TABLE_SOURCE: Source = {
  id: 'sdpws-4.3a',
  title:
    'SDPWS nominal unit shears of panel walls, from a city plan-check scan; damaged digits restored by the IBC table',
  edition: '2005 to 2015',
  section: 'Table 4.3A',
  basis: 'published',
};
/** The one column of 2021 is the old wind column. */
export const PANEL_TABLE_2021_SOURCE: Source = {
  id: 'sdpws-2021-4.3a',
  title: 'SDPWS nominal unit shears of panel walls, as transcribed',
  edition: '2021',
  section: 'Table 4.3A',
  basis: 'second-hand',
};
export const SPECIES_FACTOR_SOURCE: Source = {
  id: 'sdpws-4.3a-fn3',
  title: 'SDPWS, framing species factor 1 - (0.5 - G)',
  edition: '2005 to 2021, as transcribed; APA B360P 2011 Table 29 note a was read and says the same',
  section: 'Table 4.3A footnote 3',
  basis: 'second-hand',
};
export const THIN_PANEL_SOURCE: Source = {
  id: 'sdpws-4.3a-fn2',
  title: 'SDPWS, 3/8 and 7/16 panels with 8d nails as 15/32: studs at most 16 in, or panels across the studs',
  edition: '2005 to 2021',
  section: 'Table 4.3A footnote 2',
  basis: 'memory',
};
export const PANEL_NAILING_SOURCE: Source = {
  id: 'sdpws-4.3.7.1-spacing',
  title: 'SDPWS, studs and field nails of panel walls',
  edition: '2005 to 2021',
  section: '4.3.7.1',
  basis: 'memory',
};

export const GRADES = ['structural-1', 'sheathing'] as const;
export const THICKNESSES = ['5/16', '3/8', '7/16', '15/32', '19/32'] as const;
export const PANEL_NAILS = ['6d', '8d', '10d'] as const;
export type Grade = (typeof GRADES)[number];
export type Thickness = (typeof THICKNESSES)[number];
export type PanelNail = (typeof PANEL_NAILS)[number];
export type Load = 'seismic' | 'wind';
export type Method = 'asd' | 'lrfd';

/** The columns of the table: spacing of the panel-edge nails, inches. */
export const EDGE_SPACINGS_IN: readonly number[] = [6, 4, 3, 2];
type AtSpacing = readonly [at6: number, at4: number, at3: number, at2: number];

/** One row: blocked panel on framing of G 0.50 or more, common or galvanized box nails. Nominal plf, inches. */
export interface PanelRow {
  readonly penetrationIn: number;
  /** v_s of the editions with two columns. */
  readonly seismicPlf: AtSpacing;
  /** v_w, and the one column v_n of 2021. */
  readonly windPlf: AtSpacing;
}

const row = (penetrationIn: number, seismicPlf: AtSpacing, windPlf: AtSpacing): PanelRow => ({
  penetrationIn,
  seismicPlf,
  windPlf,
});
type Rows = Readonly<Partial<Record<Thickness, Readonly<Partial<Record<PanelNail, PanelRow>>>>>>;

export const PANEL_TABLE: Readonly<Record<Grade, Rows>> = {
  'structural-1': {
    '5/16': { '6d': row(1.25, [400, 600, 780, 1020], [560, 840, 1090, 1430]) },
    '3/8': { '8d': row(1.375, [460, 720, 920, 1220], [645, 1010, 1290, 1710]) },
    '7/16': { '8d': row(1.375, [510, 790, 1010, 1340], [715, 1105, 1415, 1875]) },
    '15/32': {
      '8d': row(1.375, [560, 860, 1100, 1460], [785, 1205, 1540, 2045]),
      '10d': row(1.5, [680, 1020, 1330, 1740], [950, 1430, 1860, 2435]),
    },
  },
  sheathing: {
    '5/16': { '6d': row(1.25, [360, 540, 700, 900], [505, 755, 980, 1260]) },
    '3/8': {
      '6d': row(1.25, [400, 600, 780, 1020], [560, 840, 1090, 1430]),
      '8d': row(1.375, [440, 640, 820, 1060], [615, 895, 1150, 1485]),
    },
    '7/16': { '8d': row(1.375, [480, 700, 900, 1170], [670, 980, 1260, 1640]) },
    '15/32': {
      '8d': row(1.375, [520, 760, 980, 1280], [730, 1065, 1370, 1790]),
      '10d': row(1.5, [620, 920, 1200, 1540], [870, 1290, 1680, 2155]),
    },
    '19/32': { '10d': row(1.5, [680, 1020, 1330, 1740], [950, 1430, 1860, 2435]) },
  },
};

/** The row whose values a thin panel with 8d nails may use on close studs; undefined for every other row. */
export const thinPanelRow = (grade: Grade, thickness: Thickness, nail: PanelNail): PanelRow | undefined =>
  nail === '8d' && (thickness === '3/8' || thickness === '7/16') ? PANEL_TABLE[grade]['15/32']?.['8d'] : undefined;
/** Studs at most this far apart let a thin panel use the thicker row, inches. */
export const THIN_PANEL_STUDS_IN = 16;

/** Studs and field nails farther apart leave the table, inches. */
export const STUD_LIMIT_IN = 24;
export const FIELD_LIMIT_IN = 12;
/** Field nails of 3/8 and 7/16 panels on studs at the limit, inches. */
export const THIN_FIELD_LIMIT_IN = 6;

const FULL_GRAVITY = 0.5;
/** Share of the table value for framing of specific gravity G, never over 1. G 0.3 to 0.8. */
export const speciesFactor = (gravity: number): number => Math.min(1, 1 - (FULL_GRAVITY - gravity));
