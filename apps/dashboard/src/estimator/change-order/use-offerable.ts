import { type FindingRow, routes } from '@underlath/contract';
import { usePages, useRoute } from '../../shared/api/hooks.ts';

const mostRows = 200;

/** Findings with a price that stand in no open change order, declined ones too; and those of `own`. */
export function useOfferable(projectId: string, own: readonly string[] = []) {
  const params = { projectId };
  const findings = usePages(routes.listFindings, { params, query: { limit: mostRows } });
  const orders = useRoute(routes.listChangeOrders, { params });
  const open = new Set(
    orders.data?.items.filter(({ state }) => state === 'draft' || state === 'sent').map(({ id }) => id),
  );
  const isFree = ({ state, changeOrderId }: FindingRow) =>
    (state === 'priced' || state === 'declined') && !open.has(changeOrderId ?? '');
  const rows = (findings.items as FindingRow[]).filter((row) => own.includes(row.id) || isFree(row));
  return { findings, rows };
}
