import { atMost, type Source } from '../../kernel/index.ts';

export const UNBLOCKED_SOURCE: Source = {
  id: 'sdpws-4.3.5.3',
  title: 'SDPWS unblocked panel walls',
  edition: '2021, as transcribed; 2015 section 4.3.3.2',
  section: '4.3.5.3, Table 4.3.5.3',
  basis: 'second-hand',
};

/** Height over length, and height in feet, up to which an unblocked wall counts. */
export const UNBLOCKED_ASPECT_LIMIT = 2;
export const UNBLOCKED_HEIGHT_LIMIT_FT = 16;

/** Shares of the blocked value at studs 12, 16, 20 and 24 in, edge nails 6 in; by field nail spacing. Inches. */
const STUDS_IN = [12, 16, 20, 24] as const;
export const UNBLOCKED_ROWS = [
  { fieldSpacingIn: 6, factors: [1, 0.8, 0.6, 0.5] },
  { fieldSpacingIn: 12, factors: [0.8, 0.6, 0.5, 0.4] },
] as const;

/** Share of the blocked value (edge nails 6 in) an unblocked wall keeps; between columns the wider one, past them undefined. */
export function unblockedFactor(studSpacingIn: number, fieldSpacingIn: number): number | undefined {
  const row = UNBLOCKED_ROWS.find((candidate) => atMost(fieldSpacingIn, candidate.fieldSpacingIn));
  const column = STUDS_IN.findIndex((spacingIn) => atMost(studSpacingIn, spacingIn));
  return row?.factors[column];
}
