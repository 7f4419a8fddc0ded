import type { Source } from '../../kernel/index.ts';
import type { Load, Method, PanelRow } from './shear-walls.data.ts';

/** What the editions of the standard say differently about panel walls. */
export interface ShearWallEdition {
  /** Nominal unit shears of a row, plf, at edge nails 6, 4, 3 and 2 in. */
  readonly nominals: (row: PanelRow, load: Load) => PanelRow['seismicPlf'];
  readonly tableSource: Source;
  /** Design over nominal: one over the ASD divisor, or the LRFD resistance factor. */
  readonly designShare: Readonly<Record<Method, Readonly<Record<Load, number>>>>;
  readonly methodSource: Readonly<Record<Method, Source>>;
  /** Strength share of a wall of this height over length, at most `ASPECT_LIMIT`. */
  readonly aspectFactor: (aspect: number, load: Load, shareByCapacity: boolean) => number;
  readonly aspectSource: Source;
  /** 10d nails with the hold-down on the inside face of the end post. */
  readonly insideHoldDown?: { readonly factor: number; readonly source: Source };
  /** Nominal shear of the framing rule above which abutting panels ask for 3x framing, and its source. */
  readonly wideFraming: { readonly overPlf: number; readonly source: Source };
}

/** Height over length at which strength begins to fall, and over which a blocked wall does not count. */
export const FULL_STRENGTH_ASPECT = 2;
export const ASPECT_LIMIT = 3.5;

/** Edge nails this close ask for 3x framing at abutting panels whatever the load; 10d from the second. Inches. */
export const WIDE_FRAMING_SPACING_IN = 2;
export const WIDE_FRAMING_10D_SPACING_IN = 3;

/** 2b/h, at most 1: equal stiffness along a line of walls of different lengths. */
export const stiffnessShare = (aspect: number): number => Math.min(1, FULL_STRENGTH_ASPECT / aspect);

/** 1.25 - 0.125 h/b past 2, since 2015. */
const SLENDER = { at0: 1.25, perAspect: 0.125 };
export const slenderFactor = (aspect: number): number => Math.min(1, SLENDER.at0 - SLENDER.perAspect * aspect);

/** Nominal over design before 2021, both loads. */
export const TWO_COLUMN_SHARE = {
  asd: { seismic: 1 / 2, wind: 1 / 2 },
  lrfd: { seismic: 0.8, wind: 0.8 },
} as const;

export const TWO_COLUMN_ASD_SOURCE: Source = {
  id: 'sdpws-4.3.3-asd',
  title: 'SDPWS, nominal over 2.0 for ASD, as a paper of Line and Russell tells it',
  edition: '2005 to 2015',
  section: '4.3.3',
  basis: 'second-hand',
};
export const TWO_COLUMN_LRFD_SOURCE: Source = {
  id: 'sdpws-4.3.3-lrfd',
  title: 'SDPWS, 0.80 of nominal for LRFD',
  edition: '2005 to 2015',
  section: '4.3.3',
  basis: 'memory',
};
export const WIDE_FRAMING_SOURCE: Source = {
  id: 'awc-faq-3x',
  title: 'AWC answer on 3x framing at abutting panels',
  edition: 'SDPWS 2008, 2015',
  section: '4.3.7.1',
  basis: 'published',
};
