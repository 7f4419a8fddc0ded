import { Link } from '@tanstack/react-router';
import { type ChangeOrderRow, routes } from '@underlath/contract';
import { useRoute } from '../../shared/api/hooks.ts';
import { buttonClass } from '../../shared/ui/button.tsx';
import { DataTable, type TableColumn } from '../../shared/ui/data-table.tsx';
import { Money } from '../../shared/ui/money.tsx';
import { Stamp } from '../../shared/ui/stamp.tsx';
import { EmptyState } from '../../shared/ui/states.tsx';
import { Page } from '../desk/page.tsx';
import { Reading } from '../desk/reading.tsx';
import { changeOrderWord, plural } from '../desk/words.ts';
import { useOverview, useProjectId } from '../project/project-frame.tsx';

const columns: TableColumn<ChangeOrderRow>[] = [
  { key: 'number', head: 'No.', sortBy: (row) => row.number, cell: (row) => row.number },
  {
    key: 'headline',
    head: 'Change order',
    sortBy: (row) => row.headline,
    cell: (row) => (
      <>
        <Link
          to="/projects/$projectId/change-orders/$changeOrderId"
          params={{ projectId: row.projectId, changeOrderId: row.id }}
          className="row-link"
        >
          {row.headline || `Change order ${row.number}`}
        </Link>
        {row.openQuestions > 0 && (
          <div>
            <b>{plural(row.openQuestions, 'question')} to answer</b>
          </div>
        )}
      </>
    ),
  },
  { key: 'state', head: 'State', sortBy: (row) => row.state, cell: (row) => changeOrderWord(row.state) },
  {
    key: 'findings',
    head: 'Findings',
    number: true,
    wideOnly: true,
    sortBy: (row) => row.findingCount,
    cell: (row) => row.findingCount,
  },
  { key: 'days', head: 'Days', number: true, wideOnly: true, sortBy: (row) => row.days, cell: (row) => row.days },
  {
    key: 'decided',
    head: 'Decided',
    wideOnly: true,
    sortBy: (row) => row.decidedAt ?? '',
    cell: (row) => row.decidedAt && <Stamp at={row.decidedAt} />,
  },
  {
    key: 'total',
    head: 'Total',
    number: true,
    sortBy: (row) => row.totalCents,
    cell: (row) => <Money cents={row.totalCents} />,
  },
];

export function ChangeOrdersScreen() {
  const projectId = useProjectId();
  const overview = useOverview();
  const orders = useRoute(routes.listChangeOrders, { params: { projectId } });
  const make = (
    <Link to="/projects/$projectId/change-orders/new" params={{ projectId }} className={buttonClass('go')}>
      New change order
    </Link>
  );
  return (
    <Page title="Change orders" of={overview.data?.project.name} actions={orders.data?.items.length ? make : undefined}>
      <Reading query={orders} doing="Reading the change orders">
        {({ items }) => (
          <DataTable
            caption="Change orders of this project"
            columns={columns}
            rows={items}
            rowKey={(row) => row.id}
            initialSort={{ key: 'number', down: true }}
            empty={
              <EmptyState title="No change order yet" action={make}>
                <p>
                  Price findings first; then group them into a change order, which the client reads and decides on as
                  one letter.
                </p>
              </EmptyState>
            }
          />
        )}
      </Reading>
    </Page>
  );
}
