import type { Prisma } from '../../generated/prisma/client.ts';
import type { Tx } from '../../platform/database/database.ts';

const place = {
  id: true,
  projectId: true,
  name: true,
  widthIn: true,
  heightIn: true,
  storiesAbove: true,
} satisfies Prisma.LocationSelect;

export const findPlace = (tx: Tx, companyId: string, id: string) =>
  tx.location.findUnique({ where: { companyId_id: { companyId, id } }, select: place });
export type PlaceRow = NonNullable<Awaited<ReturnType<typeof findPlace>>>;

export const findLoadPath = (tx: Tx, companyId: string, id: string) =>
  tx.loadPath.findUnique({ where: { companyId_id: { companyId, id } } });
export type LoadPathRow = NonNullable<Awaited<ReturnType<typeof findLoadPath>>>;

export const listLoadPaths = (tx: Tx, companyId: string, locationId: string): Promise<LoadPathRow[]> =>
  tx.loadPath.findMany({ where: { companyId, locationId }, orderBy: [{ createdAt: 'asc' }, { id: 'asc' }] });

/** The wall lines of a project with the walls they belong to. */
export const listWallLines = (tx: Tx, companyId: string, projectId: string) =>
  tx.loadPath.findMany({
    where: { companyId, projectId, kind: 'wallLine' },
    include: { location: { select: place } },
    orderBy: [{ name: 'asc' }, { id: 'asc' }],
  });

/** The lines that the one with this id is said to stand on. */
export const listCarriers = (tx: Tx, companyId: string, id: string) =>
  tx.loadPath.findMany({ where: { companyId, lineAboveId: id }, select: { id: true, name: true } });

export const insertLoadPath = (tx: Tx, data: Prisma.LoadPathUncheckedCreateInput): Promise<LoadPathRow> =>
  tx.loadPath.create({ data });

export const updateLoadPath = (
  tx: Tx,
  companyId: string,
  id: string,
  data: Prisma.LoadPathUncheckedUpdateInput,
): Promise<LoadPathRow> =>
  tx.loadPath.update({
    where: { companyId_id: { companyId, id } },
    data: { ...data, version: { increment: 1 } },
  });

export const deleteLoadPath = (tx: Tx, companyId: string, id: string) =>
  tx.loadPath.delete({ where: { companyId_id: { companyId, id } } });

const withNewest = { judgments: { orderBy: { seq: 'desc' }, take: 1 } } satisfies Prisma.FindingInclude;

/** Findings of a project with their newest judgment, those of one place or those named. */
export const listFindings = (
  tx: Tx,
  companyId: string,
  projectId: string,
  which: { locationId: string } | { id: { in: string[] } },
) =>
  tx.finding.findMany({ where: { companyId, projectId, ...which }, include: withNewest, orderBy: { number: 'asc' } });
export type HangingFinding = Awaited<ReturnType<typeof listFindings>>[number];

/** Those of the ids that are photos of the project. */
export async function knownPhotos(tx: Tx, companyId: string, projectId: string, ids: string[]): Promise<Set<string>> {
  const rows = await tx.photo.findMany({ where: { companyId, projectId, id: { in: ids } }, select: { id: true } });
  return new Set(rows.map(({ id }) => id));
}
