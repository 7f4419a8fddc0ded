import type { Tx } from '../../platform/database/database.ts';
import { type EstimateFinding, withJudgment } from '../estimates/estimates.repository.ts';

export type OpenFinding = EstimateFinding;

export async function hasPlace(tx: Tx, companyId: string, id: string): Promise<boolean> {
  return (await tx.location.count({ where: { companyId, id } })) > 0;
}

/** Judged and not yet repaired, in the order they were recorded. */
export const openFindings = (tx: Tx, companyId: string, locationId: string): Promise<OpenFinding[]> =>
  tx.finding.findMany({
    where: {
      companyId,
      locationId,
      judgments: { some: {} },
      state: { in: ['noted', 'judged', 'priced', 'offered', 'approved', 'declined'] },
    },
    include: withJudgment,
    orderBy: { number: 'asc' },
  });
