import type { Location, Severity } from '@underlath/contract';

export type PlaceNode = { place: Location; inside: PlaceNode[] };

/** The places of a project as a tree, in their own order; one whose parent is missing stands at the top. */
export function placeTree(places: readonly Location[]): PlaceNode[] {
  const known = new Set(places.map((place) => place.id));
  const inside = (parentId: string | null): PlaceNode[] =>
    places
      .filter((place) => (place.parentId !== null && known.has(place.parentId) ? place.parentId : null) === parentId)
      .toSorted((a, b) => a.position - b.position || a.name.localeCompare(b.name))
      .map((place) => ({ place, inside: inside(place.id) }));
  return inside(null);
}

/** The places that themselves are not safe: `worst` of a story speaks for its walls too, so parents are left out. */
export function placesToMakeSafe(nodes: readonly PlaceNode[]): Location[] {
  return nodes.flatMap(({ place, inside }) => {
    if (place.worst !== ('make-safe' satisfies Severity)) return [];
    const below = placesToMakeSafe(inside);
    return below.length > 0 ? below : [place];
  });
}

/** A place with every place around it, the outermost first: "First story, Kitchen, East wall". */
export function placePath(places: readonly Location[], placeId: string | null): Location[] {
  const path: Location[] = [];
  let place = places.find((candidate) => candidate.id === placeId);
  while (place && !path.includes(place)) {
    path.unshift(place);
    const parentId = place.parentId;
    place = places.find((candidate) => candidate.id === parentId);
  }
  return path;
}

/** The node of one place, wherever it stands. */
export function findNode(nodes: readonly PlaceNode[], placeId: string): PlaceNode | undefined {
  for (const node of nodes) {
    const found = node.place.id === placeId ? node : findNode(node.inside, placeId);
    if (found) return found;
  }
  return undefined;
}
