import { Link, useNavigate } from '@tanstack/react-router';
import { type FindingRow, type Location, routes } from '@underlath/contract';
import { formatLength } from '@underlath/rules/kernel';
import { sized } from '@underlath/rules/places';
import { problemOf } from '../../shared/api/errors.ts';
import { useChange } from '../../shared/api/hooks.ts';
import { type DrawnFinding, Elevation } from '../../shared/drawing/elevation.tsx';
import { placesAround } from '../../shared/places/place-tree.ts';
import { Button, buttonClass } from '../../shared/ui/button.tsx';
import { SeverityMark } from '../../shared/ui/severity.tsx';
import { FailState } from '../../shared/ui/states.tsx';
import { useAnnounce } from '../../shared/ui/status.tsx';
import { Reading } from '../desk/reading.tsx';
import { findingStateWord, isClosed, kindWords, plural } from '../desk/words.ts';
import { useProjectId } from '../project/project-frame.tsx';

type PlaceViewProps = {
  place: Location;
  places: readonly Location[];
  findings: Parameters<typeof Reading>[0]['query'];
  rows: readonly FindingRow[];
  findingId: string | null;
  onFinding: (findingId: string | null) => void;
  onChange: () => void;
  onAddInside: () => void;
};

/** One place: drawn to scale with its findings on it, and the same findings in words below. */
export function PlaceView(props: PlaceViewProps) {
  const { place, places, findings, rows, findingId, onFinding, onChange, onAddInside } = props;
  const projectId = useProjectId();
  const drawable = sized(place) !== null;
  return (
    <>
      <div className="place-head">
        <div>
          <h1 tabIndex={-1}>{place.name}</h1>
          <p className="soft">{whereWords(place, places)}</p>
        </div>
        <div className="row">
          <Link
            to="/projects/$projectId/findings/new"
            params={{ projectId }}
            search={{ place: place.id }}
            className={buttonClass('plain')}
          >
            New finding here
          </Link>
          <Button look="quiet" onClick={onChange}>
            Change the place
          </Button>
          <Button look="quiet" onClick={onAddInside}>
            Add inside it
          </Button>
        </div>
      </div>
      <PlaceLead place={place} />
      {place.kind !== 'story' && place.kind !== 'room' && (
        <nav className="row" aria-label={`More of ${place.name}`}>
          <Link to="/projects/$projectId/places/$locationId/load-paths" params={{ projectId, locationId: place.id }}>
            Load path: what it is still worth
          </Link>
          {place.openCount > 0 && (
            <Link to="/projects/$projectId/places/$locationId/scope" params={{ projectId, locationId: place.id }}>
              Repair scope: steps, hold points, days
            </Link>
          )}
        </nav>
      )}
      {drawable && (
        <Elevation
          place={place}
          findings={rows.filter((row) => row.state !== 'withdrawn').map(drawn)}
          selectedId={findingId}
          onSelect={onFinding}
          maxHeightPx={560}
        />
      )}
      {!drawable && place.kind !== 'story' && place.kind !== 'room' && (
        <p className="no-drawing soft">
          Not drawn yet: its size is not known. “Change the place” takes the length and the height.
        </p>
      )}
      <Reading query={findings} doing={`Reading the findings of ${place.name}`} rows={3}>
        {() => <FindingLines rows={rows} findingId={findingId} onFinding={onFinding} place={place} />}
      </Reading>
      <Inside place={place} places={places} empty={rows.length === 0} />
    </>
  );
}

function drawn(row: FindingRow): DrawnFinding {
  return {
    id: row.id,
    number: row.number,
    title: row.title,
    severity: row.severity,
    extent: row.extent,
    closed: isClosed(row.state),
  };
}

function whereWords(place: Location, places: readonly Location[]): string {
  const parts = [kindWords[place.kind], ...placesAround(place, places).map((parent) => parent.name)];
  const size = [place.widthIn, place.heightIn]
    .filter((inches) => inches !== null)
    .map((inches) => formatLength(inches));
  if (size.length > 0) parts.push(size.join(' × '));
  if (place.framingSpacingIn !== null) parts.push(`${formatLength(place.framingSpacingIn)} on center`);
  if (place.storiesAbove > 0) parts.push(`${plural(place.storiesAbove, 'story', 'stories')} above`);
  return parts.join(' · ');
}

function PlaceLead({ place }: { place: Location }) {
  if (!place.worst) return <p className="place-lead">Nothing open here.</p>;
  return (
    <p className="place-lead">
      <SeverityMark severity={place.worst} />
      <span>
        {place.openCount === 1 ? 'is the one open finding.' : `is the worst of ${place.openCount} open findings.`}
      </span>
    </p>
  );
}

type FindingLinesProps = Pick<PlaceViewProps, 'rows' | 'findingId' | 'onFinding' | 'place'>;

/** Every finding of the place in words, also those without an area on the drawing. */
function FindingLines({ rows, findingId, onFinding, place }: FindingLinesProps) {
  if (rows.length === 0) return null;
  const inOrder = rows.toSorted((a, b) => Number(isClosed(a.state)) - Number(isClosed(b.state)) || a.number - b.number);
  return (
    <section className="finding-lines" aria-label={`Findings of ${place.name}`}>
      <ol>
        {inOrder.map((row) => (
          <li key={row.id} className={isClosed(row.state) ? 'finding-closed' : undefined}>
            <button
              type="button"
              className="finding-line"
              aria-current={row.id === findingId || undefined}
              onClick={() => onFinding(row.id)}
            >
              <span className="finding-number">{row.number}</span>
              <span>
                {row.severity ? <SeverityMark severity={row.severity} /> : <span className="soft">Not measured</span>}
              </span>
              <span className="finding-title">{row.title}</span>
              <span className="soft">{findingStateWord(row.state)}</span>
              <span className="soft finding-extent">{row.extent ? '' : 'no area marked'}</span>
            </button>
          </li>
        ))}
      </ol>
    </section>
  );
}

/** What stands in a story or room; the way to take an empty place away. */
function Inside({ place, places, empty }: { place: Location; places: readonly Location[]; empty: boolean }) {
  const projectId = useProjectId();
  const inside = places.filter((each) => each.parentId === place.id).toSorted((a, b) => a.position - b.position);
  if (inside.length > 0) {
    return (
      <section className="part">
        <h2>In it</h2>
        <ul className="inside">
          {inside.map((each) => (
            <li key={each.id}>
              <Link
                to="/projects/$projectId/house"
                params={{ projectId }}
                search={{ place: each.id }}
                className="inside-link"
              >
                <b>{each.name}</b>
                <span className="soft">{kindWords[each.kind]}</span>
                {each.worst && <SeverityMark severity={each.worst} compact />}
                {sized(each) && <Elevation place={each} labels="none" maxHeightPx={150} />}
              </Link>
            </li>
          ))}
        </ul>
      </section>
    );
  }
  return empty ? <RemovePlace place={place} /> : null;
}

function RemovePlace({ place }: { place: Location }) {
  const projectId = useProjectId();
  const navigate = useNavigate();
  const announce = useAnnounce();
  const remove = useChange(routes.removeLocation, {
    invalidates: [routes.listLocations],
    onDone: () => {
      announce(`Removed: ${place.name}`);
      navigate({ to: '/projects/$projectId/house', params: { projectId }, search: {} });
    },
  });
  return (
    <div className="stack">
      <p className="soft">
        Nothing was found here and nothing stands in it.{' '}
        <Button
          look="quiet"
          busy={remove.isPending}
          onClick={() => remove.mutate({ params: { locationId: place.id }, ifMatch: place.version })}
        >
          Remove this place
        </Button>
      </p>
      {remove.error && <FailState problem={problemOf(remove.error)} doing={`Removing ${place.name}`} />}
    </div>
  );
}
