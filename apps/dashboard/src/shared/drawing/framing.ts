import type { LocationKind, Opening, Rectangle } from '@underlath/contract';

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

export type SizedPlace = DrawnPlace & { widthIn: number; heightIn: number };

/** Dressed thickness of nominal 2-inch lumber: studs, plates and joists seen on their narrow face. */
export const MEMBER_IN = 1.5;

/** A place has a drawing when both its sizes are known; a beam line takes its member's depth for height. */
export function sized(place: DrawnPlace): SizedPlace | null {
  const heightIn = place.heightIn ?? (place.kind === 'beam-line' ? place.memberDepthIn : null);
  return place.widthIn !== null && heightIn !== null ? { ...place, widthIn: place.widthIn, heightIn } : null;
}

/** Left edges of members at a spacing on center from the left end, with one flush at the far end. */
export function memberEdges(widthIn: number, spacingIn: number | null): number[] {
  const last = widthIn - MEMBER_IN;
  const edges = [0];
  if (spacingIn) {
    // The first space is measured from the end to the center of the next member, as sheathing needs it.
    for (let x = spacingIn - MEMBER_IN / 2; x < last - MEMBER_IN; x += spacingIn) edges.push(x);
  }
  if (last > 0) edges.push(last);
  return edges;
}

const crosses = (edge: number, opening: Opening) =>
  edge + MEMBER_IN > opening.xIn && edge < opening.xIn + opening.widthIn;

/** Plates, studs, cripples and the frame of every opening of a wall, as rectangles. */
export function wallMembers(place: SizedPlace): Rectangle[] {
  const { widthIn, heightIn } = place;
  const solesIn = MEMBER_IN;
  const plateBottomIn = heightIn - 2 * MEMBER_IN;
  const bar = (xIn: number, yIn: number, w: number, h: number): Rectangle => ({ xIn, yIn, widthIn: w, heightIn: h });
  const plates = [
    bar(0, 0, widthIn, MEMBER_IN),
    bar(0, plateBottomIn, widthIn, MEMBER_IN),
    bar(0, plateBottomIn + MEMBER_IN, widthIn, MEMBER_IN),
  ];
  const studs = memberEdges(widthIn, place.framingSpacingIn).flatMap((x) => {
    const opening = place.openings.find((candidate) => crosses(x, candidate));
    if (!opening) return [bar(x, solesIn, MEMBER_IN, plateBottomIn - solesIn)];
    const headIn = opening.yIn + opening.heightIn;
    const under = opening.yIn > solesIn ? [bar(x, solesIn, MEMBER_IN, opening.yIn - solesIn)] : [];
    const over = headIn < plateBottomIn ? [bar(x, headIn, MEMBER_IN, plateBottomIn - headIn)] : [];
    return [...under, ...over];
  });
  const trims = place.openings.flatMap((o) => [
    bar(o.xIn - MEMBER_IN, solesIn, MEMBER_IN, plateBottomIn - solesIn),
    bar(o.xIn + o.widthIn, solesIn, MEMBER_IN, plateBottomIn - solesIn),
  ]);
  return [...plates, ...studs, ...trims];
}

/** Joists (or rafters) of a floor or roof in plan, running bottom to top between two rims. */
export function floorMembers(place: SizedPlace): Rectangle[] {
  const { widthIn, heightIn } = place;
  const rims = [0, heightIn - MEMBER_IN].map((yIn) => ({ xIn: 0, yIn, widthIn, heightIn: MEMBER_IN }));
  const joists = memberEdges(widthIn, place.framingSpacingIn).map((xIn) => ({
    xIn,
    yIn: MEMBER_IN,
    widthIn: MEMBER_IN,
    heightIn: heightIn - 2 * MEMBER_IN,
  }));
  return [...rims, ...joists];
}
