import type { Prisma } from '../../generated/prisma/client.ts';
import type { Tx } from '../../platform/database/database.ts';

export type LocationRow = Prisma.LocationGetPayload<object>;

export const insertLocation = (tx: Tx, data: Prisma.LocationUncheckedCreateInput): Promise<LocationRow> =>
  tx.location.create({ data });

export const findLocation = (tx: Tx, companyId: string, id: string): Promise<LocationRow | null> =>
  tx.location.findUnique({ where: { companyId_id: { companyId, id } } });

export const listLocations = (tx: Tx, companyId: string, projectId: string): Promise<LocationRow[]> =>
  tx.location.findMany({
    where: { companyId, projectId },
    orderBy: [{ position: 'asc' }, { name: 'asc' }, { id: 'asc' }],
  });

/** The caller holds the project's turn, so the version seen is still the one that is there. */
export const updateLocation = (
  tx: Tx,
  companyId: string,
  id: string,
  data: Prisma.LocationUncheckedUpdateInput,
): Promise<LocationRow> =>
  tx.location.update({ where: { companyId_id: { companyId, id } }, data: { ...data, version: { increment: 1 } } });

export const deleteLocation = (tx: Tx, companyId: string, id: string) =>
  tx.location.delete({ where: { companyId_id: { companyId, id } } });

/** What stands in a place: places below it, findings and photos. */
export async function countContents(tx: Tx, companyId: string, id: string) {
  const [places, findings, photos, loadPaths] = [
    await tx.location.count({ where: { companyId, parentId: id } }),
    await tx.finding.count({ where: { companyId, locationId: id } }),
    await tx.photo.count({ where: { companyId, locationId: id } }),
    await tx.loadPath.count({ where: { companyId, locationId: id } }),
  ];
  return { places, findings, photos, loadPaths };
}

/** Open findings (neither proven nor withdrawn) by place and severity. */
export const countOpen = (tx: Tx, companyId: string, projectId: string) =>
  tx.finding.groupBy({
    by: ['locationId', 'severity'],
    where: { companyId, projectId, state: { notIn: ['proven', 'withdrawn'] } },
    _count: true,
  });
