import { Link, Outlet, useMatchRoute, useParams } from '@tanstack/react-router';
import { type ContractSums, type ProjectOverview, routes } from '@underlath/contract';
import { isProblem } from '../../shared/api/errors.ts';
import { useRoute } from '../../shared/api/hooks.ts';
import { SiteZone } from '../../shared/i18n/site-zone.tsx';
import { buttonClass } from '../../shared/ui/button.tsx';
import { Money } from '../../shared/ui/money.tsx';
import { SeverityShape } from '../../shared/ui/severity.tsx';
import { Page } from '../desk/page.tsx';

export function useProjectId(): string {
  return useParams({ from: '/in/desk/projects/$projectId' }).projectId;
}

/** The project as its header shows it; every screen of a project reads the same answer. */
export function useOverview() {
  return useRoute(routes.projectOverview, { params: { projectId: useProjectId() } });
}

/** Site, ways through the house, and the contract's money, always in sight. */
export function ProjectFrame() {
  const overview = useOverview();
  if (!overview.data && isProblem(overview.error, 'not-found')) return <NoProject />;
  return (
    <SiteZone zone={overview.data?.project.timeZone ?? undefined}>
      <header className="project-line no-print">
        <SiteName name={overview.data?.project.name} />
        <ProjectNav />
        {overview.data?.contract && <ContractMoney sums={overview.data.contract} />}
      </header>
      {overview.data && <MakeSafeStrip open={overview.data.open} />}
      <Outlet />
    </SiteZone>
  );
}

function NoProject() {
  return (
    <Page title="There is no such project here">
      <p className="lead">The link may be old, or it belongs to another company.</p>
      <p>
        <Link to="/projects" className={buttonClass('go')}>
          Go to the projects
        </Link>
      </p>
    </Page>
  );
}

function SiteName({ name }: { name: string | undefined }) {
  const projectId = useProjectId();
  return (
    <Link
      to="/projects/$projectId/details"
      params={{ projectId }}
      className="site-name"
      title="Details of this project"
    >
      {name ?? 'Project'}
    </Link>
  );
}

function ProjectNav() {
  const params = { projectId: useProjectId() };
  return (
    <nav aria-label="Project" className="project-nav">
      <Link to="/projects/$projectId" params={params} activeOptions={{ exact: true }}>
        To do
      </Link>
      <Link to="/projects/$projectId/house" params={params} activeOptions={{ includeSearch: false }}>
        House
      </Link>
      <Link to="/projects/$projectId/findings" params={params} activeOptions={{ includeSearch: false }}>
        Findings
      </Link>
      <Link to="/projects/$projectId/photos" params={params} activeOptions={{ includeSearch: false }}>
        Photos
      </Link>
      <Link to="/projects/$projectId/change-orders" params={params}>
        Change orders
      </Link>
      <Link to="/projects/$projectId/contract" params={params}>
        Contract
      </Link>
      <Link to="/projects/$projectId/record" params={params}>
        Record
      </Link>
    </nav>
  );
}

function ContractMoney({ sums }: { sums: ContractSums }) {
  return (
    <dl className="contract-money">
      <div>
        <dt>Contract now</dt>
        <dd>
          <Money cents={sums.currentSumCents} trim />
        </dd>
      </div>
      <div>
        <dt>Approved</dt>
        <dd>
          <Money cents={sums.approvedChangesCents} trim sign />
        </dd>
      </div>
      {sums.allowancesCents !== 0 && (
        <div>
          <dt>Allowances</dt>
          <dd>
            <Money cents={sums.allowancesCents} trim sign />
          </dd>
        </div>
      )}
      <div className="soft">
        <dt>With client</dt>
        <dd>
          <Money cents={sums.pendingCents} trim />
        </dd>
      </div>
    </dl>
  );
}

/** On every screen of the project while anything open must be made safe. */
function MakeSafeStrip({ open }: { open: ProjectOverview['open'] }) {
  const params = { projectId: useProjectId() };
  const count = open['make-safe'];
  // The to-do list opens with the same, in full.
  const onToDo = useMatchRoute()({ to: '/projects/$projectId', params });
  if (count === 0 || onToDo) return null;
  return (
    <aside className="make-safe-strip keeps-colour" aria-label="Make safe now">
      <SeverityShape severity="make-safe" size={22} />
      <p>
        <b>Make safe now: {count === 1 ? 'one finding' : `${count} findings`}.</b> People out from under it, stop work
        there, shore under the direction of a qualified person.{' '}
        <Link to="/projects/$projectId/findings" params={params} search={{ severity: 'make-safe' }}>
          Show {count === 1 ? 'it' : 'them'}
        </Link>
      </p>
    </aside>
  );
}
