import type { Tx } from '../../platform/database/database.ts';

export const findSent = (tx: Tx, companyId: string, changeOrderId: string, version: number) =>
  tx.changeOrderVersion.findUnique({
    where: { companyId_changeOrderId_version: { companyId, changeOrderId, version } },
    include: {
      decision: true,
      links: { orderBy: [{ createdAt: 'desc' }, { id: 'desc' }], take: 1, select: { expiresAt: true } },
      changeOrder: {
        select: {
          project: { select: { clientLocale: true, timeZone: true } },
          questions: { orderBy: { askedAt: 'asc' } },
        },
      },
    },
  });
