import type { Source } from '../../kernel/index.ts';

export const WASHER_BEARING_SOURCE: Source = {
  id: 'nds-3.10.2-washer',
  title: 'NDS bearing across the grain under a plate washer',
  edition: '2018, as transcribed',
  section: '3.10.2',
  basis: 'second-hand',
};

/** The hole in a washer is this much wider than the bolt, inches. */
const HOLE_OVER_BOLT_IN = 1 / 16;

/** Area of a square washer less its hole, square inches; below zero when the hole is wider than the washer. */
export const washerNetAreaIn2 = (sideIn: number, boltDiameterIn: number): number =>
  sideIn ** 2 - (Math.PI / 4) * (boltDiameterIn + HOLE_OVER_BOLT_IN) ** 2;
