import { Link, useNavigate, useSearch } from '@tanstack/react-router';
import { type FindingRow, type FindingState, routes, type Severity } from '@underlath/contract';
import { useState } from 'react';
import { usePages, useRoute } from '../../shared/api/hooks.ts';
import { placeOptions } from '../../shared/places/place-tree.ts';
import { buttonClass } from '../../shared/ui/button.tsx';
import { DataTable, type TableColumn } from '../../shared/ui/data-table.tsx';
import { Select, TextInput } from '../../shared/ui/field.tsx';
import { Money } from '../../shared/ui/money.tsx';
import { SeverityMark, VerdictWord } from '../../shared/ui/severity.tsx';
import { Stamp } from '../../shared/ui/stamp.tsx';
import { EmptyState } from '../../shared/ui/states.tsx';
import { MoreRows } from '../desk/more-rows.tsx';
import { Page } from '../desk/page.tsx';
import { Reading } from '../desk/reading.tsx';
import { useTypedSearch } from '../desk/use-typed-search.ts';
import { findingStateOptions, findingStateWord, severityOptions } from '../desk/words.ts';
import { useOverview, useProjectId } from '../project/project-frame.tsx';
import { FindingPanel } from './panel.tsx';

const rank: Record<Severity, number> = { 'make-safe': 0, engineer: 1, repair: 2, record: 3 };

const columns: TableColumn<FindingRow>[] = [
  {
    key: 'title',
    head: 'Finding',
    sortBy: (row) => row.title,
    cell: (row) => (
      <>
        <span className="soft finding-no">{row.number}</span> {row.title}
        <span className="soft small narrow-only">{row.locationName}</span>
      </>
    ),
  },
  {
    key: 'severity',
    head: 'Severity',
    sortBy: (row) => (row.severity ? rank[row.severity] : 4),
    cell: (row) =>
      row.severity ? <SeverityMark severity={row.severity} /> : <span className="soft">not measured</span>,
  },
  { key: 'place', head: 'Place', wideOnly: true, sortBy: (row) => row.locationName, cell: (row) => row.locationName },
  { key: 'state', head: 'State', sortBy: (row) => row.state, cell: (row) => findingStateWord(row.state) },
  {
    key: 'verdict',
    head: 'Verdict',
    wideOnly: true,
    sortBy: (row) => row.verdict ?? '',
    cell: (row) => row.verdict && <VerdictWord verdict={row.verdict} />,
  },
  {
    key: 'photos',
    head: 'Photos',
    number: true,
    wideOnly: true,
    sortBy: (row) => row.photos.length,
    cell: (row) => (
      <>
        {row.photos.length}
        {row.photos.some((photo) => photo.derivative === 'failed') && <b title="A picture could not be made"> !</b>}
      </>
    ),
  },
  { key: 'seen', head: 'Found', wideOnly: true, sortBy: (row) => row.seenAt, cell: (row) => <Stamp at={row.seenAt} /> },
  {
    key: 'price',
    head: 'Lines, alone',
    number: true,
    wideOnly: true,
    sortBy: (row) => row.linesCents ?? -1,
    cell: (row) =>
      row.linesCents === null ? <span className="soft">not priced</span> : <Money cents={row.linesCents} />,
  },
];

type Filters = { severity?: string; state?: string; place?: string; q?: string };

export function FindingsScreen() {
  const projectId = useProjectId();
  const overview = useOverview();
  const filters = useSearch({ from: '/in/desk/projects/$projectId/findings' });
  const [openId, setOpenId] = useState<string | null>(null);
  const findings = usePages(routes.listFindings, { params: { projectId }, query: queryOf(filters) });
  const filtered = Object.keys(filters).length > 0;
  return (
    <div className={openId ? 'beside' : undefined}>
      <Page
        title="Findings"
        of={overview.data?.project.name}
        wide
        actions={
          <Link to="/projects/$projectId/findings/new" params={{ projectId }} search={{}} className={buttonClass('go')}>
            New finding
          </Link>
        }
      >
        <FilterLine filters={filters} />
        <Reading query={findings} doing="Reading the findings" rows={8}>
          {() => (
            <>
              <DataTable
                caption="Findings of this project"
                columns={columns}
                rows={findings.items as FindingRow[]}
                rowKey={(row) => row.id}
                onOpen={(row) => setOpenId(row.id)}
                openKey={openId}
                empty={<NoFindings filtered={filtered} />}
              />
              <MoreRows pages={findings} what="findings" />
            </>
          )}
        </Reading>
      </Page>
      {openId && <FindingPanel findingId={openId} takeFocus onClose={() => setOpenId(null)} />}
    </div>
  );
}

function queryOf({ severity, state, place, q }: Filters) {
  return {
    ...(severity ? { severity: severity as Severity } : {}),
    ...(state ? { state: state as FindingState } : {}),
    ...(place ? { locationId: place } : {}),
    ...(q ? { q } : {}),
  };
}

function FilterLine({ filters }: { filters: Filters }) {
  const projectId = useProjectId();
  const navigate = useNavigate();
  const places = useRoute(routes.listLocations, { params: { projectId } });
  const apply = (part: Filters) => {
    const next = Object.entries({ ...filters, ...part }).filter(([, value]) => value);
    navigate({
      to: '/projects/$projectId/findings',
      params: { projectId },
      search: Object.fromEntries(next),
      replace: true,
    });
  };
  const [typed, setTyped] = useTypedSearch(filters.q ?? '', (q) => apply({ q }));
  return (
    <search className="filters">
      <TextInput label="Words" type="search" value={typed} onChange={setTyped} />
      <Select
        label="Severity"
        emptyLabel="any"
        options={severityOptions}
        value={filters.severity ?? ''}
        onChange={(severity) => apply({ severity })}
      />
      <Select
        label="State"
        emptyLabel="any"
        options={findingStateOptions}
        value={filters.state ?? ''}
        onChange={(state) => apply({ state })}
      />
      <Select
        label="Place"
        emptyLabel="the whole house"
        options={placeOptions(places.data?.items ?? [])}
        value={filters.place ?? ''}
        onChange={(place) => apply({ place })}
      />
    </search>
  );
}

function NoFindings({ filtered }: { filtered: boolean }) {
  if (filtered) {
    return (
      <EmptyState title="No finding fits these filters">
        <p>Take one of the filters away to see more.</p>
      </EmptyState>
    );
  }
  return (
    <EmptyState title="No finding yet">
      <p>
        The crew records them on the phone, where the wall is open. One that was told by telephone or read from a report
        can be entered here.
      </p>
    </EmptyState>
  );
}
