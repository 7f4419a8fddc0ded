import type { DraftField, Wording } from '@underlath/contract';
import type { KeptDraft } from '@underlath/rules/offers';
import type { FindingState, Prisma } from '../../generated/prisma/client.ts';
import type { Tx } from '../../platform/database/database.ts';

const withEverything = {
  project: { select: { id: true, clientLocale: true, timeZone: true } },
  findings: { select: { findingId: true }, orderBy: { position: 'asc' } },
  versions: { include: { links: { orderBy: { createdAt: 'asc' } }, decision: true }, orderBy: { version: 'desc' } },
  questions: { orderBy: { askedAt: 'asc' } },
} satisfies Prisma.ChangeOrderInclude;

/** A change order with its findings' ids, sent versions (newest first), links, decisions and questions. */
export type ChangeOrderRecord = Prisma.ChangeOrderGetPayload<{ include: typeof withEverything }>;
export type VersionRecord = ChangeOrderRecord['versions'][number];
export type QuestionRow = ChangeOrderRecord['questions'][number];

const withEvidence = {
  location: true,
  photos: { include: { photo: true }, orderBy: [{ addedAt: 'asc' }, { photoId: 'asc' }] },
  judgments: { orderBy: { seq: 'desc' }, take: 1 },
} satisfies Prisma.FindingInclude;

/** A finding with its place, photos and newest judgment. */
export type FindingRecord = Prisma.FindingGetPayload<{ include: typeof withEvidence }>;

export const findChangeOrder = (tx: Tx, companyId: string, id: string): Promise<ChangeOrderRecord | null> =>
  tx.changeOrder.findUnique({ where: { companyId_id: { companyId, id } }, include: withEverything });

export const listChangeOrders = (tx: Tx, companyId: string, projectId: string): Promise<ChangeOrderRecord[]> =>
  tx.changeOrder.findMany({ where: { companyId, projectId }, include: withEverything, orderBy: { number: 'desc' } });

/** These findings of a project, and the declined ones of their places, by number. */
export const findFindings = (
  tx: Tx,
  companyId: string,
  projectId: string,
  ids: readonly string[],
): Promise<FindingRecord[]> =>
  tx.finding.findMany({
    where: {
      companyId,
      projectId,
      OR: [{ id: { in: [...ids] } }, { state: 'declined', location: { findings: { some: { id: { in: [...ids] } } } } }],
    },
    include: withEvidence,
    orderBy: { number: 'asc' },
  });

/** Those of these findings that stand in a draft or an offer waiting for its answer, with its number. */
export const findOpenMemberships = (tx: Tx, companyId: string, findingIds: readonly string[], except: string) =>
  tx.changeOrderFinding.findMany({
    where: {
      companyId,
      findingId: { in: [...findingIds] },
      changeOrderId: { not: except },
      changeOrder: { state: { in: ['draft', 'sent', 'approved'] } },
    },
    select: { findingId: true, changeOrder: { select: { number: true } } },
  });

export async function nextNumber(tx: Tx, companyId: string, projectId: string): Promise<number> {
  const { _max } = await tx.changeOrder.aggregate({ where: { companyId, projectId }, _max: { number: true } });
  return (_max.number ?? 0) + 1;
}

interface NewChangeOrder {
  companyId: string;
  id: string;
  projectId: string;
  number: number;
  wording: Wording;
  days: number;
  typed: DraftField[];
  createdById: string;
  createdAt: Date;
}

export async function insertChangeOrder(tx: Tx, row: NewChangeOrder, findingIds: readonly string[]): Promise<void> {
  await tx.changeOrder.create({ data: row });
  await insertMemberships(tx, row.companyId, row.id, findingIds);
}

export async function replaceMemberships(tx: Tx, companyId: string, id: string, findingIds: readonly string[]) {
  await tx.changeOrderFinding.deleteMany({ where: { companyId, changeOrderId: id } });
  await insertMemberships(tx, companyId, id, findingIds);
}

const insertMemberships = (tx: Tx, companyId: string, changeOrderId: string, findingIds: readonly string[]) =>
  tx.changeOrderFinding.createMany({
    data: findingIds.map((findingId, position) => ({ companyId, changeOrderId, findingId, position })),
  });

/** Every change counts the version up, so that an ETag seen before it is stale. */
export const updateChangeOrder = (
  tx: Tx,
  companyId: string,
  id: string,
  data: Prisma.ChangeOrderUncheckedUpdateInput,
): Promise<unknown> =>
  tx.changeOrder.update({ where: { companyId_id: { companyId, id } }, data: { ...data, version: { increment: 1 } } });

/** What is kept of a draft; what was sent is one again. */
export const updateDraft = (tx: Tx, companyId: string, id: string, kept: KeptDraft): Promise<unknown> =>
  updateChangeOrder(tx, companyId, id, {
    wording: kept.wording,
    days: kept.days,
    typed: [...kept.typed],
    spanish: kept.spanish,
    marks: kept.marks.map((mark) => ({ ...mark })),
    state: 'draft',
    sentVersion: null,
  });

/** Moves findings that are in one of the states `from`; others stay as they are. */
export const moveFindings = (
  tx: Tx,
  companyId: string,
  ids: readonly string[],
  from: readonly FindingState[],
  to: FindingState,
): Promise<unknown> =>
  tx.finding.updateMany({
    where: { companyId, id: { in: [...ids] }, state: { in: [...from] } },
    data: { state: to, version: { increment: 1 } },
  });

export const insertVersion = (tx: Tx, data: Prisma.ChangeOrderVersionUncheckedCreateInput): Promise<unknown> =>
  tx.changeOrderVersion.create({ data });

export const insertLink = (tx: Tx, data: Prisma.ClientLinkUncheckedCreateInput): Promise<unknown> =>
  tx.clientLink.create({ data });

/** Every link of every version that still works stops at once. */
export const revokeLinks = (tx: Tx, companyId: string, changeOrderId: string, at: Date) =>
  tx.clientLink.updateMany({ where: { companyId, changeOrderId, revokedAt: null }, data: { revokedAt: at } });

export const findQuestion = (tx: Tx, companyId: string, changeOrderId: string, id: string) =>
  tx.question.findFirst({ where: { companyId, changeOrderId, id } });

export const answerQuestion = (
  tx: Tx,
  companyId: string,
  id: string,
  data: { answer: string; answeredAt: Date; answeredById: string },
): Promise<QuestionRow> => tx.question.update({ where: { companyId_id: { companyId, id } }, data });

export const findCompany = (tx: Tx, companyId: string) => tx.company.findUniqueOrThrow({ where: { id: companyId } });
