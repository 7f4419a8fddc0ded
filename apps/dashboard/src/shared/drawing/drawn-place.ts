import type { LocationKind, Opening } from '@underlath/contract';
import type { SizedPlace as Sized } from '@underlath/rules/places';

/** What an elevation or plan is drawn from: a location of the contract has all of it. */
export type DrawnPlace = {
  kind: LocationKind;
  name: string;
  widthIn: number | null;
  heightIn: number | null;
  framingSpacingIn: number | null;
  memberDepthIn: number | null;
  openings: readonly Opening[];
};

export type SizedDrawnPlace = Sized<DrawnPlace>;
