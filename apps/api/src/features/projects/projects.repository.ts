import type { Prisma } from '../../generated/prisma/client.ts';
import type { Tx } from '../../platform/database/database.ts';
import type { NewestFirst } from '../../shared/paging.ts';

export type ProjectRecord = Prisma.ProjectGetPayload<object>;
export type NewProject = Omit<ProjectRecord, 'version' | 'createdAt' | 'updatedAt'>;

export const insertProject = (tx: Tx, data: NewProject): Promise<ProjectRecord> => tx.project.create({ data });

export const findProject = (tx: Tx, companyId: string, id: string): Promise<ProjectRecord | null> =>
  tx.project.findUnique({ where: { companyId_id: { companyId, id } } });

export function listProjects(
  tx: Tx,
  companyId: string,
  filter: { q: string | undefined; after: NewestFirst | undefined; take: number },
): Promise<ProjectRecord[]> {
  const { q, after, take } = filter;
  const contains = q ? { contains: escapeLike(q), mode: 'insensitive' as const } : undefined;
  return tx.project.findMany({
    where: {
      companyId,
      AND: [
        contains ? { OR: [{ name: contains }, { siteAddress: contains }, { clientName: contains }] } : {},
        after ? { OR: [{ createdAt: { lt: after.at } }, { createdAt: after.at, id: { gt: after.id } }] } : {},
      ],
    },
    orderBy: [{ createdAt: 'desc' }, { id: 'asc' }],
    take,
  });
}

/** The caller holds the project's turn, so the version seen is still the one that is there. */
export const updateProject = (
  tx: Tx,
  companyId: string,
  id: string,
  data: Prisma.ProjectUncheckedUpdateInput,
): Promise<ProjectRecord> =>
  tx.project.update({ where: { companyId_id: { companyId, id } }, data: { ...data, version: { increment: 1 } } });

export const countSentOrders = (tx: Tx, companyId: string, projectId: string) =>
  tx.changeOrder.count({ where: { companyId, projectId, sentVersion: { not: null } } });

/** Open findings (neither proven nor withdrawn) by project and severity. */
export async function countOpen(tx: Tx, companyId: string, projectIds: string[]) {
  return tx.finding.groupBy({
    by: ['projectId', 'severity'],
    where: {
      companyId,
      projectId: { in: projectIds },
      state: { notIn: ['proven', 'withdrawn'] },
      severity: { not: null },
    },
    _count: true,
  });
}

export async function countContents(
  tx: Tx,
  companyId: string,
  projectId: string,
): Promise<{ photoCount: number; findingCount: number }> {
  const [counts = { photoCount: 0, findingCount: 0 }] = await tx.$queryRaw<
    { photoCount: number; findingCount: number }[]
  >`
    select
      (select count(*)::int from photo where company_id = ${companyId}::uuid and project_id = ${projectId}::uuid)
        as "photoCount",
      (select count(*)::int from finding where company_id = ${companyId}::uuid and project_id = ${projectId}::uuid)
        as "findingCount"`;
  return counts;
}

/** Findings that still need somebody, most severe first. */
export const listUnsettled = (tx: Tx, companyId: string, projectId: string, take: number) =>
  tx.finding.findMany({
    where: { companyId, projectId, state: { notIn: ['proven', 'withdrawn'] } },
    select: {
      id: true,
      title: true,
      state: true,
      verdict: true,
      severity: true,
      seenAt: true,
      location: { select: { name: true } },
    },
    orderBy: [{ severity: { sort: 'asc', nulls: 'last' } }, { createdAt: 'asc' }],
    take,
  });

/** Change orders that wait for the client, with the questions nobody answered yet. */
export const listAwaited = (tx: Tx, companyId: string, projectId: string) =>
  tx.changeOrder.findMany({
    where: { companyId, projectId, OR: [{ state: 'sent' }, { questions: { some: { answeredAt: null } } }] },
    select: {
      id: true,
      number: true,
      state: true,
      wording: true,
      createdAt: true,
      versions: { select: { sentAt: true }, orderBy: { version: 'desc' }, take: 1 },
      questions: { where: { answeredAt: null }, orderBy: { askedAt: 'asc' }, select: { text: true, askedAt: true } },
    },
    orderBy: { number: 'asc' },
  });

export const listFailedPhotos = (tx: Tx, companyId: string, projectId: string, take: number) =>
  tx.photo.findMany({
    where: { companyId, projectId, derivativeState: 'failed' },
    select: {
      id: true,
      caption: true,
      derivativeReason: true,
      receivedAt: true,
      findings: { select: { findingId: true }, take: 1 },
    },
    orderBy: { receivedAt: 'asc' },
    take,
  });

const escapeLike = (text: string): string => text.replace(/[\\%_]/g, '\\$&');
