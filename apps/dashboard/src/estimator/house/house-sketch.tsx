import { Link } from '@tanstack/react-router';
import { type FindingRow, type Location, routes } from '@underlath/contract';
import { sized } from '@underlath/rules/places';
import { usePages, useRoute } from '../../shared/api/hooks.ts';
import { Elevation } from '../../shared/drawing/elevation.tsx';
import { SeverityMark } from '../../shared/ui/severity.tsx';
import { isClosed } from '../desk/words.ts';
import { useProjectId } from '../project/project-frame.tsx';
import './house.css';

const rank = { 'make-safe': 0, engineer: 1, repair: 2, record: 3 } as const;
const shown = 4;

/** The places that need someone, drawn: what is to do is seen where it is. */
export function HouseSketch() {
  const params = { projectId: useProjectId() };
  const places = useRoute(routes.listLocations, { params });
  const findings = usePages(routes.listFindings, { params, query: { limit: 200 } });
  const rows = findings.items.filter((row) => row.extent !== null && !isClosed(row.state));
  const drawn = (places.data?.items ?? [])
    .filter((place) => sized(place) !== null && rows.some((row) => row.locationId === place.id))
    .toSorted((a, b) => rank[a.worst ?? 'record'] - rank[b.worst ?? 'record'])
    .slice(0, shown);
  if (drawn.length === 0) return null;
  return (
    <aside className="house-sketch" aria-label="Places that need someone">
      {drawn.map((place) => (
        <SketchedPlace key={place.id} place={place} rows={rows.filter((row) => row.locationId === place.id)} />
      ))}
    </aside>
  );
}

function SketchedPlace({ place, rows }: { place: Location; rows: readonly FindingRow[] }) {
  const projectId = useProjectId();
  return (
    <section>
      <h2 className="sketch-head">
        <Link to="/projects/$projectId/house" params={{ projectId }} search={{ place: place.id }}>
          {place.name}
        </Link>
        {place.worst && <SeverityMark severity={place.worst} compact />}
      </h2>
      <Elevation
        place={place}
        labels="numbers"
        maxHeightPx={230}
        findings={rows.map(({ id, number, title, severity, extent }) => ({ id, number, title, severity, extent }))}
      />
    </section>
  );
}
