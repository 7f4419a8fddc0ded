import type { Location, Severity } from '@underlath/contract';
import type { PlaceNode } from '../../shared/places/place-tree.ts';

/** The places that themselves are not safe: `worst` of a story speaks for its walls too, so parents are left out. */
export function placesToMakeSafe(nodes: readonly PlaceNode[]): Location[] {
  return nodes.flatMap(({ place, inside }) => {
    if (place.worst !== ('make-safe' satisfies Severity)) return [];
    const below = placesToMakeSafe(inside);
    return below.length > 0 ? below : [place];
  });
}
