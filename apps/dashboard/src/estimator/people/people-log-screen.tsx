import { useNavigate, useSearch } from '@tanstack/react-router';
import { type PeopleEvent, type PeopleEventType, routes } from '@underlath/contract';
import { addressOf } from '../../shared/api/call.ts';
import { usePages, useRoute } from '../../shared/api/hooks.ts';
import { useMe } from '../../shared/api/me.ts';
import { buttonClass } from '../../shared/ui/button.tsx';
import { DataTable, type TableColumn } from '../../shared/ui/data-table.tsx';
import { Select } from '../../shared/ui/field.tsx';
import { Stamp } from '../../shared/ui/stamp.tsx';
import { EmptyState } from '../../shared/ui/states.tsx';
import { MoreRows } from '../desk/more-rows.tsx';
import { Page } from '../desk/page.tsx';
import { Reading } from '../desk/reading.tsx';
import { actorWords, factWords, peopleEventWords } from './event-words.ts';

const kinds = (Object.entries(peopleEventWords) as [PeopleEventType, string][]).map(([value, label]) => ({
  value,
  label,
}));

/** What happened to people, keys and rights, for the owner. */
export function PeopleLogScreen() {
  const me = useMe();
  const isOwner = me.data?.member.role === 'owner';
  return (
    <Page
      title="Log of people"
      lead="Who signed in, who may do what, and who changed that. Lines are only added; nobody can change or remove one."
    >
      {me.data && (isOwner ? <Log /> : <p>The owner of the company reads this log.</p>)}
    </Page>
  );
}

function Log() {
  const { what } = useSearch({ from: '/in/desk/people-log' });
  const navigate = useNavigate();
  // A word in the address that is no kind of event is no filter.
  const type = kinds.find(({ value }) => value === what)?.value;
  const log = usePages(routes.listPeopleLog, { query: { limit: 50, ...(type && { type }) } });
  const events = log.items as PeopleEvent[];
  const choose = (value: string) =>
    navigate({ to: '/people-log', search: value ? { what: value } : {}, replace: true });
  return (
    <>
      <div className="row">
        <Select label="Show" emptyLabel="Everything" options={kinds} value={type ?? ''} onChange={choose} />
        <a
          className={buttonClass('plain')}
          href={addressOf(routes.exportPeopleLog, { query: type ? { type } : {} })}
          download
        >
          Save as CSV
        </a>
      </div>
      <Reading query={log} doing="Reading the log" rows={8}>
        {() => (events.length === 0 ? <Nothing isFiltered={type !== undefined} /> : <Lines events={events} />)}
      </Reading>
      <MoreRows pages={log} what="lines" />
    </>
  );
}

function Nothing({ isFiltered }: { isFiltered: boolean }) {
  return (
    <EmptyState title={isFiltered ? 'Nothing of this kind happened' : 'Nothing is written down yet'}>
      <p>Sign-ins, invitations, roles, API keys and the company’s details appear here as they change.</p>
    </EmptyState>
  );
}

function Lines({ events }: { events: readonly PeopleEvent[] }) {
  const members = useRoute(routes.listMembers, {});
  const names = new Map((members.data?.items ?? []).map(({ id, name }) => [id, name]));
  const columns: TableColumn<PeopleEvent>[] = [
    {
      key: 'what',
      head: 'What',
      cell: (event) => {
        // Whoever did it to themselves is named once.
        const whom = event.subjectId && event.subjectId !== event.actor.id && names.get(event.subjectId);
        return (
          <>
            <b>{peopleEventWords[event.type]}</b>
            {whom && `: ${whom}`}
            <div className="soft small">{factWords(event)}</div>
            <div className="narrow-only small">
              {actorWords(event.actor)}, <Stamp at={event.at} look="day-time" />
            </div>
          </>
        );
      },
    },
    { key: 'by', head: 'By', wideOnly: true, cell: (event) => actorWords(event.actor) },
    { key: 'at', head: 'When', wideOnly: true, cell: (event) => <Stamp at={event.at} look="day-time" /> },
  ];
  return <DataTable caption="Log of people" columns={columns} rows={events} rowKey={({ id }) => id} />;
}
