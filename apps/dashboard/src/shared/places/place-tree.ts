import type { Location } from '@underlath/contract';

export type PlaceNode = { place: Location; depth: number; inside: PlaceNode[] };

const inOrder = (a: Location, b: Location) =>
  a.position - b.position || a.name.localeCompare(b.name, 'en', { numeric: true });

/** The places as a tree. One whose parent is not among them stands at the top, so that nothing is hidden. */
export function placeTree(places: readonly Location[]): PlaceNode[] {
  const known = new Set(places.map((place) => place.id));
  const grow = (parentId: string | null, depth: number): PlaceNode[] =>
    places
      .filter((place) => (place.parentId && known.has(place.parentId) ? place.parentId : null) === parentId)
      .toSorted(inOrder)
      .map((place) => ({ place, depth, inside: grow(place.id, depth + 1) }));
  return grow(null, 0);
}

/** The tree, top to bottom as it is read. */
export const flatten = (nodes: readonly PlaceNode[]): PlaceNode[] =>
  nodes.flatMap((node) => [node, ...flatten(node.inside)]);

/** The places around a place, outermost first. */
export function placesAround(place: Location, places: readonly Location[]): Location[] {
  const path: Location[] = [];
  let parent = places.find((candidate) => candidate.id === place.parentId);
  while (parent && parent !== place && !path.includes(parent)) {
    path.unshift(parent);
    const next: string | null = parent.parentId;
    parent = places.find((candidate) => candidate.id === next);
  }
  return path;
}

/** A place with every place around it, the outermost first: "First story, Kitchen, East wall". */
export function placePath(places: readonly Location[], placeId: string | null): Location[] {
  const place = places.find((candidate) => candidate.id === placeId);
  return place ? [...placesAround(place, places), place] : [];
}

/** The node of one place, wherever it stands. */
export const findNode = (nodes: readonly PlaceNode[], placeId: string): PlaceNode | undefined =>
  flatten(nodes).find(({ place }) => place.id === placeId);

/** A place and everything in it. */
export function within(placeId: string, places: readonly Location[]): Set<string> {
  const found = new Set([placeId]);
  for (const node of flatten(placeTree(places))) {
    if (node.place.parentId && found.has(node.place.parentId)) found.add(node.place.id);
  }
  return found;
}

/** Places for a select, each under the places it stands in. */
export function placeOptions(places: readonly Location[], except: ReadonlySet<string> = new Set()) {
  return flatten(placeTree(places))
    .filter(({ place }) => !except.has(place.id))
    .map(({ place, depth }) => ({ value: place.id, label: `${'\u2003'.repeat(depth)}${place.name}` }));
}
