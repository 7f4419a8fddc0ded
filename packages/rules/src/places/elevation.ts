import type { Ground, Rect } from './extents.ts';
import { MEMBER_IN, memberEdgesIn, membersOf } from './framing.ts';

/** What an elevation or plan is drawn from. Inches. */
export interface ElevationPlace {
  readonly kind: string;
  readonly widthIn: number | null;
  readonly heightIn: number | null;
  readonly framingSpacingIn: number | null;
  /** A beam line without a height takes its member's depth. */
  readonly memberDepthIn?: number | null;
  readonly openings: readonly Rect[];
}

export type SizedPlace<P extends ElevationPlace = ElevationPlace> = Omit<P, 'widthIn' | 'heightIn'> & {
  readonly widthIn: number;
  readonly heightIn: number;
};

/** How a part of the drawing is painted: `member` thin, `plate` on top of members, `beam` as wood with its grain, `opening` crossed out. */
export type ElevationPart = 'member' | 'plate' | 'beam' | 'opening' | 'outline';

/** A part of the drawing, inches from the lower left corner of the place, in the order it is painted. */
export interface ElevationMark {
  readonly part: ElevationPart;
  readonly rect: Rect;
}

/** What stands on a beam is shown so far above it. */
export const JOIST_END_IN = 5.5;

/** A place has a drawing when both its sizes are known; null where one is not. */
export function sized<P extends ElevationPlace>(place: P): SizedPlace<P> | null {
  const depthIn = place.kind === 'beam-line' ? (place.memberDepthIn ?? null) : null;
  const [widthIn, heightIn] = [place.widthIn, place.heightIn ?? depthIn];
  return widthIn !== null && heightIn !== null ? { ...place, widthIn, heightIn } : null;
}

const isFramed = (place: SizedPlace): place is SizedPlace & Ground =>
  place.kind === 'wall' || place.kind === 'floor' || place.kind === 'roof';

/** The drawing of a place without its findings: the same marks on every screen and on paper. */
export function layOutElevation(place: SizedPlace): ElevationMark[] {
  const { widthIn, heightIn } = place;
  const whole = { xIn: 0, yIn: 0, widthIn, heightIn };
  return [
    ...(isFramed(place) ? framingMarks(place) : []),
    ...(place.kind === 'beam-line' ? beamMarks(place, whole) : []),
    ...place.openings.map((rect): ElevationMark => ({ part: 'opening', rect })),
    { part: 'outline', rect: whole },
  ];
}

function framingMarks(place: SizedPlace & Ground): ElevationMark[] {
  const members = membersOf(place);
  const marksOf = (run: 'upright' | 'level', part: ElevationPart): ElevationMark[] =>
    members.filter((member) => member.run === run).map(({ rect }) => ({ part, rect }));
  return [...marksOf('upright', 'member'), ...marksOf('level', 'plate')];
}

/** Joist ends above it where their spacing is known. */
function beamMarks({ widthIn, heightIn, framingSpacingIn }: SizedPlace, whole: Rect): ElevationMark[] {
  const joists = framingSpacingIn ? memberEdgesIn(widthIn, framingSpacingIn) : [];
  return [
    ...joists.map(
      (xIn): ElevationMark => ({
        part: 'member',
        rect: { xIn, yIn: heightIn, widthIn: MEMBER_IN, heightIn: JOIST_END_IN },
      }),
    ),
    { part: 'beam', rect: whole },
  ];
}
