import type { Prisma } from '../../generated/prisma/client.ts';
import type { Tx } from '../../platform/database/database.ts';

/** Found by the hash of the token alone; row-level security shows no other link (see `Fence.tokenHash`). */
export const findLink = (tx: Tx, tokenHash: string) => tx.clientLink.findUnique({ where: { tokenHash } });

const withAnswer = {
  sent: { select: { decision: { select: { id: true } }, changeOrder: { select: { sentVersion: true } } } },
} satisfies Prisma.ClientLinkInclude;

/** A link, whether its version was answered, and which version stands now. */
export const findLinkById = (tx: Tx, companyId: string, id: string) =>
  tx.clientLink.findUnique({ where: { companyId_id: { companyId, id } }, include: withAnswer });
export type LinkRow = NonNullable<Awaited<ReturnType<typeof findLinkById>>>;

/** Found by the hash of its token alone, like a link. */
export const findSession = (tx: Tx, tokenHash: string) => tx.clientSession.findUnique({ where: { tokenHash } });

export const insertSession = (tx: Tx, data: Prisma.ClientSessionUncheckedCreateInput) =>
  tx.clientSession.create({ data });

/** Clears away sessions that ran out before a day. */
export const sweepSessions = (tx: Tx, companyId: string, before: Date): Promise<unknown> =>
  tx.clientSession.deleteMany({ where: { companyId, expiresAt: { lt: before } } });

export const endSession = (tx: Tx, companyId: string, id: string, endedAt: Date): Promise<unknown> =>
  tx.clientSession.updateMany({ where: { companyId, id, endedAt: null }, data: { endedAt } });

const withLetter = {
  project: true,
  findings: { select: { findingId: true } },
  questions: { orderBy: { askedAt: 'asc' } },
} satisfies Prisma.ChangeOrderInclude;

/** The change order behind a link, with its project, findings and questions. */
export const findOrder = (tx: Tx, companyId: string, id: string) =>
  tx.changeOrder.findUnique({ where: { companyId_id: { companyId, id } }, include: withLetter });
export type OrderRow = NonNullable<Awaited<ReturnType<typeof findOrder>>>;

/** Holds the change order until the transaction ends; the office's edits wait on the same row. */
export async function lockOrder(tx: Tx, companyId: string, id: string): Promise<OrderRow | null> {
  await tx.$queryRaw`select 1 from change_order where company_id = ${companyId}::uuid and id = ${id}::uuid for update`;
  return findOrder(tx, companyId, id);
}

export const findSent = (tx: Tx, companyId: string, changeOrderId: string, version: number) =>
  tx.changeOrderVersion.findUnique({
    where: { companyId_changeOrderId_version: { companyId, changeOrderId, version } },
    include: { decision: true },
  });
export type SentRow = NonNullable<Awaited<ReturnType<typeof findSent>>>;

export const insertDecision = (tx: Tx, data: Prisma.DecisionUncheckedCreateInput): Promise<unknown> =>
  tx.decision.create({ data });

interface Settled {
  state: 'approved' | 'partApproved' | 'declined';
  decidedAt: Date;
  /** Of the part that was approved. */
  totalCents?: number;
  days?: number;
}

export const settleOrder = (tx: Tx, companyId: string, id: string, settled: Settled): Promise<unknown> =>
  tx.changeOrder.update({
    where: { companyId_id: { companyId, id } },
    data: { ...settled, version: { increment: 1 } },
  });

export const settleFindings = (
  tx: Tx,
  companyId: string,
  ids: string[],
  state: 'approved' | 'declined',
): Promise<unknown> =>
  tx.finding.updateMany({
    where: { companyId, id: { in: ids }, state: 'offered' },
    data: { state, version: { increment: 1 } },
  });

export const insertQuestion = (tx: Tx, data: Prisma.QuestionUncheckedCreateInput) => tx.question.create({ data });

/** A question is news for the office: an ETag seen before it is stale. */
export const touchOrder = (tx: Tx, companyId: string, id: string): Promise<unknown> =>
  tx.changeOrder.update({ where: { companyId_id: { companyId, id } }, data: { version: { increment: 1 } } });

export const findCompany = (tx: Tx, companyId: string) => tx.company.findUnique({ where: { id: companyId } });
