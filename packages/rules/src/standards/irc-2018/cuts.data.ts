import type { Source } from '../../kernel/index.ts';

/** How much of a stud may be notched or bored. Shares of the stud depth. */
export interface StudCutRule {
  readonly id: string;
  readonly notchShare: { readonly bearing: number; readonly nonBearing: number };
  readonly holeShare: { readonly bearing: number; readonly nonBearing: number; readonly doubled: number };
  /** Least wood between a hole and the edge of the stud, inches. */
  readonly edgeIn: number;
  /** The print says the opposite of what is meant about the edge. */
  readonly edgeMisprinted: boolean;
  readonly source: Source;
}

/** How much of a sawn joist, rafter or beam may be notched or bored. Shares of its depth. */
export interface JoistCutRule {
  readonly id: string;
  readonly notchShare: number;
  readonly notchLengthShare: number;
  readonly endNotchShare: number;
  readonly holeShare: number;
  /** Least wood between a hole and the top, the bottom, or another hole or notch, inches. */
  readonly edgeIn: number;
  /** Share of the span at each end in which a notch may stand. */
  readonly notchZoneShare: number;
  /** From this actual thickness (4 in nominal) the tension face may be notched only at the ends, inches. */
  readonly thickFromIn: number;
  readonly source: Source;
}

const IRC = 'International Residential Code';

export const STUD_CUTS_2018: StudCutRule = {
  id: 'irc-2018',
  notchShare: { bearing: 0.25, nonBearing: 0.4 },
  holeShare: { bearing: 0.4, nonBearing: 0.6, doubled: 0.6 },
  edgeIn: 0.625,
  edgeMisprinted: true,
  source: { id: 'irc-2018-R602.6', title: IRC, edition: '2018', section: 'R602.6', basis: 'published' },
};

export const JOIST_CUTS_2018: JoistCutRule = {
  id: 'irc-2018',
  notchShare: 1 / 6,
  notchLengthShare: 1 / 3,
  endNotchShare: 1 / 4,
  holeShare: 1 / 3,
  edgeIn: 2,
  notchZoneShare: 1 / 3,
  thickFromIn: 3.5,
  source: {
    id: 'irc-2018-R502.8.1',
    title: IRC,
    edition: '2018 (as quoted; R802.7.1 on roofs was read and says the same)',
    section: 'R502.8.1',
    basis: 'second-hand',
  },
};

export const ENGINEERED_CUTS_2018: Source = {
  id: 'irc-2018-R502.8.2',
  title: IRC,
  edition: '2018, as adopted by a state in 2020',
  section: 'R502.8.2, R802.7.2',
  basis: 'published',
};
