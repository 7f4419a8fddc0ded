import type { CountingTerms } from '@underlath/rules/offers';
import type { Prisma } from '../../generated/prisma/client.ts';
import type { Tx } from '../../platform/database/database.ts';
import { toJson } from '../../platform/database/json.ts';

export const withJudgment = {
  location: {
    select: {
      id: true,
      name: true,
      kind: true,
      widthIn: true,
      heightIn: true,
      framingSpacingIn: true,
      openings: true,
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

/** How the contract counts money and days; where nobody wrote its terms, nothing is given back and days are working days. */
export async function findCounting(tx: Tx, companyId: string, projectId: string | undefined): Promise<CountingTerms> {
  const terms =
    projectId === undefined
      ? null
      : await tx.contractTerms.findUnique({
          where: { companyId_projectId: { companyId, projectId } },
          select: { netDecreaseReturns: true, dayKind: true },
        });
  return {
    decreaseReturns: terms?.netDecreaseReturns ?? false,
    dayKind: terms?.dayKind === 'calendar' ? 'calendar' : 'working',
  };
}

export const saveEstimate = (tx: Tx, companyId: string, id: string, estimate: object): Promise<unknown> =>
  tx.finding.update({
    where: { companyId_id: { companyId, id } },
    data: { estimate: toJson(estimate), state: 'priced', version: { increment: 1 } },
    select: { id: true },
  });
