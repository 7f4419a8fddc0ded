import type { Location } from '@underlath/contract';

export type PlaceNode = { place: Location; depth: number; children: PlaceNode[] };

const inOrder = (a: Location, b: Location) =>
  a.position - b.position || a.name.localeCompare(b.name, 'en', { numeric: true });

/** The places as a tree. One whose parent is not among them stands at the top, so that nothing is hidden. */
export function placeTree(places: readonly Location[]): PlaceNode[] {
  const known = new Set(places.map((place) => place.id));
  const grow = (parentId: string | null, depth: number): PlaceNode[] =>
    places
      .filter((place) => (place.parentId && known.has(place.parentId) ? place.parentId : null) === parentId)
      .toSorted(inOrder)
      .map((place) => ({ place, depth, children: grow(place.id, depth + 1) }));
  return grow(null, 0);
}

/** The tree, top to bottom as it is read. */
export const flatten = (nodes: readonly PlaceNode[]): PlaceNode[] =>
  nodes.flatMap((node) => [node, ...flatten(node.children)]);

/** The places a place stands in, outermost first. */
export function pathOf(place: Location, places: readonly Location[]): Location[] {
  const path: Location[] = [];
  let parent = places.find((candidate) => candidate.id === place.parentId);
  while (parent && !path.includes(parent)) {
    path.unshift(parent);
    const next: string | null = parent.parentId;
    parent = places.find((candidate) => candidate.id === next);
  }
  return path;
}

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
