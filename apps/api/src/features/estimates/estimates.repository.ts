import type { Prisma } from '../../generated/prisma/client.ts';
import type { Tx } from '../../platform/database/database.ts';

export const withJudgment = {
  location: {
    select: {
      id: true,
      name: true,
      kind: true,
      widthIn: true,
      heightIn: true,
      framingSpacingIn: true,
      existing: true,
      edgeNailSpacingIn: true,
      fieldNailSpacingIn: true,
    },
  },
  judgments: { orderBy: { seq: 'desc' }, take: 1 },
} satisfies Prisma.FindingInclude;

/** A finding with its place and newest judgment. */
export type EstimateFinding = Prisma.FindingGetPayload<{ include: typeof withJudgment }>;

export const findFinding = (tx: Tx, companyId: string, id: string): Promise<EstimateFinding | null> =>
  tx.finding.findUnique({ where: { companyId_id: { companyId, id } }, include: withJudgment });

/** The findings of a change order, in the order they were recorded. */
export const findingsOfOrder = (tx: Tx, companyId: string, changeOrderId: string): Promise<EstimateFinding[]> =>
  tx.finding.findMany({
    where: { companyId, changeOrders: { some: { changeOrderId } } },
    include: withJudgment,
    orderBy: { number: 'asc' },
  });

/** Whether the contract gives back overhead and profit on a net decrease; it does not where nobody wrote its terms. */
export async function decreaseReturns(tx: Tx, companyId: string, projectId: string): Promise<boolean> {
  const terms = await tx.contractTerms.findUnique({
    where: { companyId_projectId: { companyId, projectId } },
    select: { netDecreaseReturns: true },
  });
  return terms?.netDecreaseReturns ?? false;
}

export const saveEstimate = (tx: Tx, companyId: string, id: string, estimate: object): Promise<EstimateFinding> =>
  tx.finding.update({
    where: { companyId_id: { companyId, id } },
    data: { estimate: estimate as Prisma.InputJsonObject, state: 'priced', version: { increment: 1 } },
    include: withJudgment,
  });
