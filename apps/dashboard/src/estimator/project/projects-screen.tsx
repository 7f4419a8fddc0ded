import { Link, useNavigate, useSearch } from '@tanstack/react-router';
import { type ProjectRow, routes, type SeverityCounts } from '@underlath/contract';
import { SEVERITIES } from '@underlath/rules/kernel';
import { usePages } from '../../shared/api/hooks.ts';
import { buttonClass } from '../../shared/ui/button.tsx';
import { DataTable, type TableColumn } from '../../shared/ui/data-table.tsx';
import { TextInput } from '../../shared/ui/field.tsx';
import { Money } from '../../shared/ui/money.tsx';
import { SeverityMark } from '../../shared/ui/severity.tsx';
import { Stamp } from '../../shared/ui/stamp.tsx';
import { EmptyState } from '../../shared/ui/states.tsx';
import { MoreRows } from '../desk/more-rows.tsx';
import { Page } from '../desk/page.tsx';
import { Reading } from '../desk/reading.tsx';
import { useTypedSearch } from '../desk/use-typed-search.ts';

const columns: TableColumn<ProjectRow>[] = [
  {
    key: 'name',
    head: 'Site',
    sortBy: (row) => row.name,
    cell: (row) => (
      <>
        <Link to="/projects/$projectId" params={{ projectId: row.id }} className="row-link">
          {row.name}
        </Link>
        <div className="soft small">{row.siteAddress}</div>
      </>
    ),
  },
  { key: 'client', head: 'Client', wideOnly: true, sortBy: (row) => row.clientName, cell: (row) => row.clientName },
  { key: 'open', head: 'Open findings', cell: (row) => <OpenCounts counts={row.open} /> },
  {
    key: 'start',
    head: 'Start',
    wideOnly: true,
    sortBy: (row) => row.startOn ?? '',
    cell: (row) => (row.startOn ? <Stamp at={row.startOn} /> : <span className="soft">not set</span>),
  },
  {
    key: 'sum',
    head: 'Original sum',
    number: true,
    sortBy: (row) => row.originalSumCents ?? -1,
    cell: (row) =>
      row.originalSumCents === null ? <span className="soft">not shown</span> : <Money cents={row.originalSumCents} />,
  },
];

/** The company's projects. */
export function ProjectsScreen() {
  const { q } = useSearch({ from: '/in/desk/projects' });
  const navigate = useNavigate();
  const [typed, setTyped] = useTypedSearch(q ?? '', (next) =>
    navigate({ to: '/projects', search: next ? { q: next } : {}, replace: true }),
  );
  const projects = usePages(routes.listProjects, { query: q ? { q } : {} });
  const newProject = (
    <Link to="/new-project" className={buttonClass('go')}>
      New project
    </Link>
  );
  const nothingAtAll = projects.items.length === 0 && !q;
  return (
    <Page title="Projects" actions={nothingAtAll ? undefined : newProject}>
      {!(nothingAtAll && projects.data) && (
        <search className="filters">
          <TextInput label="Search by site, address or client" type="search" value={typed} onChange={setTyped} />
        </search>
      )}
      <Reading query={projects} doing="Reading the projects">
        {() => (
          <>
            <DataTable
              caption="Projects"
              columns={columns}
              rows={projects.items}
              rowKey={(row) => row.id}
              empty={q ? <NoMatch q={q} /> : <NoProject action={newProject} />}
            />
            <MoreRows pages={projects} what="projects" />
          </>
        )}
      </Reading>
    </Page>
  );
}

function NoProject({ action }: { action: React.ReactNode }) {
  return (
    <EmptyState title="No project yet" action={action}>
      <p>
        Start with the house: its address, its owner, the year it was built and the contract sum. Then add its stories,
        rooms and walls, and the crew can record what they uncover.
      </p>
    </EmptyState>
  );
}

function NoMatch({ q }: { q: string }) {
  return (
    <EmptyState title={`No project matches “${q}”`}>
      <p>The search looks at the site’s name, its address and the client’s name.</p>
    </EmptyState>
  );
}

/** Counts of what is open, worst first; nothing open is said in words. */
export function OpenCounts({ counts }: { counts: SeverityCounts }) {
  const some = SEVERITIES.filter((severity) => counts[severity] > 0);
  if (some.length === 0) return <span className="soft">none</span>;
  return (
    <ul className="open-counts">
      {some.map((severity) => (
        <li key={severity}>
          <SeverityMark severity={severity} compact />
          {counts[severity]}
        </li>
      ))}
    </ul>
  );
}
