import { useMutation } from '@tanstack/react-query';
import { type RecordCheck, type RecordEvent, routes } from '@underlath/contract';
import { call } from '../../shared/api/call.ts';
import { problemOf } from '../../shared/api/errors.ts';
import { usePages, useRoute } from '../../shared/api/hooks.ts';
import { Button } from '../../shared/ui/button.tsx';
import { Stamp } from '../../shared/ui/stamp.tsx';
import { EmptyState, FailState } from '../../shared/ui/states.tsx';
import { EventWords } from '../parts/event-words.tsx';
import { MoreRows } from '../parts/more-rows.tsx';
import { Page } from '../parts/page.tsx';
import { useOverview, useProjectId } from '../parts/project-frame.tsx';
import { Reading } from '../parts/reading.tsx';
import { plural } from '../parts/words.ts';
import '../order.css';

/** Everything that happened in the project, in order, none of it editable. */
export function RecordScreen() {
  const projectId = useProjectId();
  const overview = useOverview();
  const record = usePages(routes.listRecord, { params: { projectId }, query: { limit: 100 } });
  const verify = useMutation({
    mutationFn: () => call(routes.verifyRecord, { params: { projectId } }),
    networkMode: 'always',
  });
  return (
    <Page
      title="Record"
      of={overview.data?.project.name}
      lead="Each entry carries the hash of the one before it. Changing, removing or reordering any of them shows."
      actions={
        <Button look="go" busy={verify.isPending} busyLabel="Verifying…" onClick={() => verify.mutate()}>
          Verify the record
        </Button>
      }
    >
      <div aria-live="polite">
        {verify.error && (
          <FailState problem={problemOf(verify.error)} doing="Verifying" onRetry={() => verify.mutate()} />
        )}
        {verify.data && <VerifyResult result={verify.data} />}
      </div>
      <Reading query={record} doing="Reading the record" rows={8}>
        {() => <Events events={record.items as RecordEvent[]} />}
      </Reading>
      <MoreRows pages={record} what="entries" />
    </Page>
  );
}

function VerifyResult({ result }: { result: RecordCheck }) {
  return (
    <div className="notice">
      <p>
        <b>
          {result.ok
            ? `Nothing was changed: ${plural(result.events, 'entry', 'entries')}, the sent documents and the decisions all fit.`
            : `${plural(result.faults.length, 'fault')} found in ${plural(result.events, 'entry', 'entries')}.`}
        </b>
      </p>
      {result.faults.length > 0 && (
        <ul className="bulleted">
          {result.faults.map((fault) => (
            <li key={`${fault.seq}${fault.what}`}>
              {fault.seq !== null && <b>Entry {fault.seq}: </b>}
              {fault.what}
            </li>
          ))}
        </ul>
      )}
      <p className="soft small">
        Newest entry {result.head.seq}, hash <span className="hash">{result.head.hash}</span>. Compare it with the one
        printed on the change orders that both sides hold.
      </p>
    </div>
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
