import { useParams } from '@tanstack/react-router';
import { type FindingRow, type Location, routes, type StoredLoadPath } from '@underlath/contract';
import { useState } from 'react';
import { problemOf } from '../../shared/api/errors.ts';
import { useChange, usePages, useRoute } from '../../shared/api/hooks.ts';
import { Button } from '../../shared/ui/button.tsx';
import { Checkbox } from '../../shared/ui/choice.tsx';
import { WasIs } from '../../shared/ui/money.tsx';
import { EmptyState, FailState } from '../../shared/ui/states.tsx';
import { useAnnounce } from '../../shared/ui/status.tsx';
import { Reading } from '../desk/reading.tsx';
import { isClosed } from '../desk/words.ts';
import { PlacePage } from '../house/place-page.tsx';
import { useProjectId } from '../project/project-frame.tsx';
import { LoadPathForm } from './form.tsx';
import { kindOfLine, LoadPathView } from './view.tsx';

type Kind = StoredLoadPath['kind'];
type Editing = { path: StoredLoadPath | null; kind: Kind } | null;

const kinds = Object.keys(kindOfLine) as Kind[];

/** The lines of a place as chains: what each is worth, what governs, what to open next, what a repair would change. */
export function LoadPathsScreen() {
  const { locationId } = useParams({ from: '/in/desk/projects/$projectId/places/$locationId/load-paths' });
  return (
    <PlacePage title="Load path" locationId={locationId}>
      {(place) => <PathsOf place={place} />}
    </PlacePage>
  );
}

function PathsOf({ place }: { place: Location }) {
  const projectId = useProjectId();
  const [editing, setEditing] = useState<Editing>(null);
  const paths = useRoute(routes.listLoadPaths, { params: { locationId: place.id } });
  const findings = usePages(routes.listFindings, {
    params: { projectId },
    query: { locationId: place.id, limit: 200 },
  });
  const rows = findings.items as FindingRow[];
  if (editing) return <LoadPathForm {...editing} place={place} findings={rows} onClose={() => setEditing(null)} />;
  const start = kinds.map((kind) => (
    <Button key={kind} onClick={() => setEditing({ path: null, kind })}>
      Describe a {kindOfLine[kind].toLowerCase()}
    </Button>
  ));
  return (
    <Reading query={paths} doing={`Reading the load paths of ${place.name}`} rows={8}>
      {({ items }) =>
        items.length === 0 ? (
          <EmptyState title="No load path yet" action={start}>
            <p>
              A wall is a chain: plate, panels, posts, hold-downs, bolts, footing. Describe the links once; each counts
              as unknown until somebody has seen it. A floor or a beam is a line of its own.
            </p>
          </EmptyState>
        ) : (
          <>
            {items.map((path) => (
              <OnePath
                key={path.id}
                path={path}
                place={place}
                findings={rows}
                onEdit={() => setEditing({ path, kind: path.kind })}
              />
            ))}
            <div className="row no-print">{start}</div>
          </>
        )
      }
    </Reading>
  );
}

type OnePathProps = { path: StoredLoadPath; place: Location; findings: readonly FindingRow[]; onEdit: () => void };

function OnePath({ path, place, findings, onEdit }: OnePathProps) {
  const [repaired, setRepaired] = useState<readonly string[]>([]);
  const whatIf = useRoute(
    routes.getLoadPath,
    repaired.length > 0 ? { params: { loadPathId: path.id }, query: { repaired: repaired.join(',') } } : null,
  );
  const shown = repaired.length > 0 && whatIf.data ? whatIf.data : path;
  return (
    <article className="load-path">
      <div className="part-head">
        <h2>
          {path.name} <span className="soft">{kindOfLine[path.kind].toLowerCase()}</span>
        </h2>
        <div className="row no-print">
          <Button onClick={onEdit}>Change the links</Button>
          <RemovePath path={path} />
        </div>
      </div>
      {path.capacitiesFrom && <p className="soft">Loads and strengths from: {path.capacitiesFrom}.</p>}
      <WhatIf path={path} shown={shown} findings={findings} repaired={repaired} onChange={setRepaired} />
      {whatIf.error && (
        <FailState
          problem={problemOf(whatIf.error)}
          doing="Working out what a repair would change"
          onRetry={() => whatIf.refetch()}
          retrying={whatIf.isFetching}
        />
      )}
      <LoadPathView path={shown} place={place} findings={findings} />
    </article>
  );
}

const shareWords = (share: number | null): string => (share === null ? 'not known' : `${Math.round(share * 100)}%`);

type WhatIfProps = {
  path: StoredLoadPath;
  shown: StoredLoadPath;
  findings: readonly FindingRow[];
  repaired: readonly string[];
  onChange: (repaired: readonly string[]) => void;
};

/** Takes findings as repaired and shows the line as it would be; nothing is kept of it. */
function WhatIf({ path, shown, findings, repaired, onChange }: WhatIfProps) {
  const ids = new Set(path.segments.flatMap(({ links }) => links.flatMap(({ findingIds }) => findingIds)));
  const open = findings.filter(({ id, state }) => ids.has(id) && !isClosed(state));
  if (open.length === 0) return null;
  return (
    <details className="what-if no-print" open={repaired.length > 0 || undefined}>
      <summary>What if some of it is repaired?</summary>
      {open.map(({ id, number, title }) => (
        <Checkbox
          key={id}
          label={`If “${number}. ${title}” is repaired and proven`}
          checked={repaired.includes(id)}
          onChange={(on) => onChange(on ? [...repaired, id] : repaired.filter((one) => one !== id))}
        />
      ))}
      <p role="status">
        {repaired.length > 0 && shown.repaired.length === repaired.length && (
          <>
            <b>What if, not what is.</b> Share left{' '}
            <WasIs was={shareWords(path.answer.remaining)} is={shareWords(shown.answer.remaining)} />
            {!shown.answer.known && ', at most: some of it is not seen yet.'}
          </>
        )}
      </p>
    </details>
  );
}

function RemovePath({ path }: { path: StoredLoadPath }) {
  const announce = useAnnounce();
  const [asking, setAsking] = useState(false);
  const remove = useChange(routes.removeLoadPath, {
    invalidates: [routes.listLoadPaths],
    onDone: () => announce(`Removed: ${path.name}. Its findings stay.`),
  });
  if (!asking)
    return (
      <Button look="quiet" onClick={() => setAsking(true)}>
        Remove
      </Button>
    );
  return (
    <>
      <Button
        busy={remove.isPending}
        onClick={() => remove.mutate({ params: { loadPathId: path.id }, ifMatch: path.version })}
      >
        Remove it, the findings stay
      </Button>
      <Button look="quiet" onClick={() => setAsking(false)}>
        Keep it
      </Button>
      {remove.error && <FailState problem={problemOf(remove.error)} doing={`Removing ${path.name}`} />}
    </>
  );
}
