import { useNavigate, useSearch } from '@tanstack/react-router';
import { type FindingRow, type Location, routes } from '@underlath/contract';
import { useRef, useState } from 'react';
import { usePages, useRoute } from '../../shared/api/hooks.ts';
import { flatten, placeTree } from '../../shared/places/place-tree.ts';
import { Button } from '../../shared/ui/button.tsx';
import { EmptyState } from '../../shared/ui/states.tsx';
import { WindowTitle } from '../desk/page.tsx';
import { Reading } from '../desk/reading.tsx';
import { FindingPanel } from '../finding/panel.tsx';
import { useOverview, useProjectId } from '../project/project-frame.tsx';
import { PlaceDialog } from './place-form.tsx';
import { PlaceTree } from './place-tree.tsx';
import { PlaceView } from './place-view.tsx';
import './house.css';

type Editing = { place: Location | null; parent: Location | null } | null;

/** The house: its places at the left, the chosen one drawn, the chosen finding beside it. */
export function HouseScreen() {
  const projectId = useProjectId();
  const overview = useOverview();
  const places = useRoute(routes.listLocations, { params: { projectId } });
  return (
    <main id="main" className="house">
      <WindowTitle title="House" of={overview.data?.project.name} />
      {places.data ? (
        <House places={places.data.items} />
      ) : (
        <div className="page">
          <h1 tabIndex={-1}>House</h1>
          <Reading query={places} doing="Reading the places" rows={8}>
            {() => null}
          </Reading>
        </div>
      )}
    </main>
  );
}

function House({ places }: { places: readonly Location[] }) {
  const projectId = useProjectId();
  const navigate = useNavigate();
  const search = useSearch({ from: '/in/desk/projects/$projectId/house' });
  const [editing, setEditing] = useState<Editing>(null);
  // A finding that came with the address leaves the focus on the page's heading.
  const opened = useRef(false);
  const selected = useSelectedPlace(places, search);
  const go = (next: { place?: string; finding?: string }) =>
    navigate({ to: '/projects/$projectId/house', params: { projectId }, search: next });
  return (
    <>
      <div className="house-places no-print">
        {places.length > 0 && <PlaceTree places={places} selectedId={selected?.id ?? null} />}
        <Button look="quiet" onClick={() => setEditing({ place: null, parent: null })}>
          Add a story or place
        </Button>
      </div>
      <div className="house-sheet">
        {selected ? (
          <PlaceSheet
            place={selected}
            places={places}
            findingId={search.finding ?? null}
            onFinding={(finding) => {
              opened.current = true;
              go({ place: selected.id, ...(finding ? { finding } : {}) });
            }}
            onEdit={setEditing}
          />
        ) : (
          <NoPlace onAdd={() => setEditing({ place: null, parent: null })} />
        )}
      </div>
      {search.finding && (
        <FindingPanel
          findingId={search.finding}
          takeFocus={opened.current}
          onClose={() => go(selected ? { place: selected.id } : {})}
        />
      )}
      {editing && (
        <PlaceDialog
          {...editing}
          projectId={projectId}
          places={places}
          onClose={() => setEditing(null)}
          onSaved={(saved) => {
            setEditing(null);
            go({ place: saved.id });
          }}
        />
      )}
    </>
  );
}

/** The place in the address; else where the finding in the address is; else the place with the worst open finding. */
function useSelectedPlace(places: readonly Location[], search: { place?: string; finding?: string }): Location | null {
  const byAddress = places.find((place) => place.id === search.place);
  const finding = useRoute(
    routes.getFinding,
    !byAddress && search.finding ? { params: { findingId: search.finding } } : null,
  );
  if (byAddress) return byAddress;
  if (search.finding) return places.find((place) => place.id === finding.data?.locationId) ?? null;
  const inOrder = flatten(placeTree(places)).map((node) => node.place);
  const withFindings = inOrder.filter((place) => place.openCount > 0 && place.widthIn !== null);
  const rank = { 'make-safe': 0, engineer: 1, repair: 2, record: 3 } as const;
  return (
    withFindings.toSorted((a, b) => rank[a.worst ?? 'record'] - rank[b.worst ?? 'record'])[0] ?? inOrder[0] ?? null
  );
}

type PlaceSheetProps = {
  place: Location;
  places: readonly Location[];
  findingId: string | null;
  onFinding: (findingId: string | null) => void;
  onEdit: (editing: Editing) => void;
};

function PlaceSheet({ place, places, findingId, onFinding, onEdit }: PlaceSheetProps) {
  const projectId = useProjectId();
  const findings = usePages(routes.listFindings, {
    params: { projectId },
    query: { locationId: place.id, limit: 200 },
  });
  return (
    <PlaceView
      place={place}
      places={places}
      findings={findings}
      rows={findings.items as FindingRow[]}
      findingId={findingId}
      onFinding={onFinding}
      onChange={() => onEdit({ place, parent: null })}
      onAddInside={() => onEdit({ place: null, parent: place })}
    />
  );
}

function NoPlace({ onAdd }: { onAdd: () => void }) {
  return (
    <>
      <h1 tabIndex={-1}>House</h1>
      <EmptyState
        title="The house has no places yet"
        action={
          <Button look="go" onClick={onAdd}>
            Add the first story
          </Button>
        }
      >
        <p>
          Begin with a story. Add its rooms, then the walls and floors with their length, height and stud or joist
          spacing: from these the drawing is made that every finding hangs on.
        </p>
      </EmptyState>
    </>
  );
}
