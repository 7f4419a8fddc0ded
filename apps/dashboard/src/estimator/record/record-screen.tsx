import { type RecordEvent, routes } from '@underlath/contract';
import { usePages, useRoute } from '../../shared/api/hooks.ts';
import { Stamp } from '../../shared/ui/stamp.tsx';
import { EmptyState } from '../../shared/ui/states.tsx';
import { MoreRows } from '../desk/more-rows.tsx';
import { Page } from '../desk/page.tsx';
import { Reading } from '../desk/reading.tsx';
import { useOverview, useProjectId } from '../project/project-frame.tsx';
import { EventWords } from './event-words.tsx';
import { RecordCheckForm } from './record-check.tsx';
import './record.css';

/** Everything that happened in the project, in order, none of it editable. */
export function RecordScreen() {
  const projectId = useProjectId();
  const overview = useOverview();
  const record = usePages(routes.listRecord, { params: { projectId }, query: { limit: 100 } });
  return (
    <Page
      title="Record"
      of={overview.data?.project.name}
      lead="Each entry carries the hash of the one before it, so one that is changed, removed or moved shows. An end that was cut off shows only to someone who knows a later entry."
    >
      <RecordCheckForm projectId={projectId} />
      <Reading query={record} doing="Reading the record" rows={8}>
        {() => <Events events={record.items as RecordEvent[]} />}
      </Reading>
      <MoreRows pages={record} what="entries" />
    </Page>
  );
}

function Events({ events }: { events: readonly RecordEvent[] }) {
  const subjects = useSubjects();
  if (events.length === 0) {
    return (
      <EmptyState title="Nothing is recorded yet">
        <p>Findings, photos, prices, what was sent and what was decided appear here as they happen.</p>
      </EmptyState>
    );
  }
  return (
    <ol className="events">
      {events.map((event) => (
        <li key={event.seq}>
          <span className="event-seq number">{event.seq}</span>
          <span className="event-at soft">
            <Stamp at={event.at} look="day-time" />
          </span>
          <details>
            <summary>
              <EventWords event={event} subject={subjects.get(event.subjectId)} />
            </summary>
            <pre className="event-data">{JSON.stringify(event.data, null, 2)}</pre>
            <p className="soft small">
              {event.type}, subject {event.subjectId}
              <br />
              hash <span className="hash">{event.hash}</span>
              <br />
              before <span className="hash">{event.prevHash}</span>
            </p>
          </details>
        </li>
      ))}
    </ol>
  );
}

/** What an entry is about, by id: the record itself keeps only ids for what has a name elsewhere. */
function useSubjects(): Map<string, string> {
  const params = { projectId: useProjectId() };
  const findings = usePages(routes.listFindings, { params, query: { limit: 200 } });
  const orders = useRoute(routes.listChangeOrders, { params });
  return new Map([
    ...findings.items.map((row) => [row.id, `no. ${row.number} “${row.title}”`] as const),
    ...(orders.data?.items ?? []).map((row) => [row.id, `no. ${row.number}`] as const),
  ]);
}
