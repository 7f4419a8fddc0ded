import type { Tx } from '../../platform/database/database.ts';

export const findProject = (tx: Tx, companyId: string, id: string) =>
  tx.project.findUnique({
    where: { companyId_id: { companyId, id } },
    select: { originalSumCents: true, originalDays: true, startOn: true, contingencyCents: true },
  });
export type ContractProject = NonNullable<Awaited<ReturnType<typeof findProject>>>;

/** Change orders that were ever with the client, in the order they were answered; those waiting last. */
export const listOrders = (tx: Tx, companyId: string, projectId: string) =>
  tx.changeOrder.findMany({
    where: { companyId, projectId, state: { in: ['sent', 'approved', 'declined'] } },
    select: {
      id: true,
      number: true,
      state: true,
      wording: true,
      totalCents: true,
      days: true,
      decidedAt: true,
      createdAt: true,
    },
    orderBy: [{ decidedAt: { sort: 'asc', nulls: 'last' } }, { number: 'asc' }],
  });
export type OrderRow = Awaited<ReturnType<typeof listOrders>>[number];
