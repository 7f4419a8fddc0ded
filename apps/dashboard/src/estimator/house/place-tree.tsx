import { Link } from '@tanstack/react-router';
import type { Location } from '@underlath/contract';
import { type PlaceNode, placeTree } from '../../shared/places/place-tree.ts';
import { SeverityMark } from '../../shared/ui/severity.tsx';
import { useProjectId } from '../project/project-frame.tsx';

/** The house as a list of places, each with its worst open mark. */
export function PlaceTree({ places, selectedId }: { places: readonly Location[]; selectedId: string | null }) {
  return (
    <nav aria-label="Places" className="place-tree">
      <Branch nodes={placeTree(places)} selectedId={selectedId} />
    </nav>
  );
}

function Branch({ nodes, selectedId }: { nodes: readonly PlaceNode[]; selectedId: string | null }) {
  const projectId = useProjectId();
  return (
    <ul>
      {nodes.map(({ place, depth, inside }) => (
        <li key={place.id} className={depth === 0 ? 'place-top' : undefined}>
          <Link
            to="/projects/$projectId/house"
            params={{ projectId }}
            search={{ place: place.id }}
            className={place.id === selectedId ? 'place-link place-on' : 'place-link'}
            aria-current={place.id === selectedId ? 'true' : undefined}
          >
            <span>{place.name}</span>
            {place.worst && <SeverityMark severity={place.worst} compact />}
          </Link>
          {inside.length > 0 && <Branch nodes={inside} selectedId={selectedId} />}
        </li>
      ))}
    </ul>
  );
}
