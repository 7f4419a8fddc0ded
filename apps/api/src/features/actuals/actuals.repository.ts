import type { Prisma } from '../../generated/prisma/client.ts';
import type { Tx } from '../../platform/database/database.ts';

export const findActual = (tx: Tx, companyId: string, id: string) =>
  tx.actual.findUnique({ where: { companyId_id: { companyId, id } } });
export type ActualRow = NonNullable<Awaited<ReturnType<typeof findActual>>>;

export const listActuals = (tx: Tx, companyId: string, findingId: string): Promise<ActualRow[]> =>
  tx.actual.findMany({ where: { companyId, findingId }, orderBy: [{ doneOn: 'asc' }, { enteredAt: 'asc' }] });

export const insertActual = (tx: Tx, data: Prisma.ActualUncheckedCreateInput): Promise<ActualRow> =>
  tx.actual.create({ data });

export const takeBack = (tx: Tx, companyId: string, id: string, takenBackAt: Date, takenBackWhy: string) =>
  tx.actual.update({ where: { companyId_id: { companyId, id } }, data: { takenBackAt, takenBackWhy } });

/** What each finding took for each kind of work, entries that were taken back left out. */
export async function sumByFinding(tx: Tx, companyId: string) {
  const sums = await tx.actual.groupBy({
    by: ['findingId', 'operation', 'unit'],
    where: { companyId, takenBackAt: null },
    _sum: { quantity: true, hours: true },
  });
  return sums.map(({ findingId, operation, unit, _sum }) => ({
    findingId,
    operation,
    unit,
    quantity: _sum.quantity ?? 0,
    hours: _sum.hours ?? 0,
  }));
}
