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

const withOrder = {
  decision: true,
  changeOrder: { include: withLetter },
} satisfies Prisma.ChangeOrderVersionInclude;

/** The letter behind a link: the version that was sent, its answer, and the change order with its project, findings and questions. */
export const findLetter = (tx: Tx, companyId: string, linkId: string) =>
  tx.clientLink.findUnique({
    where: { companyId_id: { companyId, id: linkId } },
    include: { sent: { include: withOrder } },
  });
export type LetterRow = NonNullable<Awaited<ReturnType<typeof findLetter>>>;
export type SentRow = LetterRow['sent'];
export type OrderRow = SentRow['changeOrder'];

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

/** Those that are still offered; the rest stay as they are. */
export async function settleFindings(
  tx: Tx,
  companyId: string,
  ids: readonly string[],
  state: 'approved' | 'declined',
): Promise<void> {
  if (ids.length === 0) return;
  await tx.finding.updateMany({
    where: { companyId, id: { in: [...ids] }, state: 'offered' },
    data: { state, version: { increment: 1 } },
  });
}

export const insertQuestion = (tx: Tx, data: Prisma.QuestionUncheckedCreateInput) => tx.question.create({ data });

/** A question is news for the office: an ETag seen before it is stale. */
export const touchOrder = (tx: Tx, companyId: string, id: string): Promise<unknown> =>
  tx.changeOrder.update({ where: { companyId_id: { companyId, id } }, data: { version: { increment: 1 } } });

export const findCompany = (tx: Tx, companyId: string) => tx.company.findUnique({ where: { id: companyId } });
