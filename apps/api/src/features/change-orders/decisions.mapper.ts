import type { Decision } from '@underlath/contract';
import { readEffect } from '../../shared/stored/stored-columns.ts';
import type { VersionRecord } from './change-orders.repository.ts';

type DecisionRow = NonNullable<VersionRecord['decision']>;

/** A decision on a part is an approval of its own kind. */
export const answerOf = ({ kind, findingIds }: DecisionRow) => (findingIds.length > 0 ? 'part-approved' : kind);

export function toDecision(row: DecisionRow): Decision {
  const { kind, findingIds, version, signerName, letterFor, reason, sha256, consentText, acknowledged } = row;
  return {
    ...{ kind, findingIds, version, signerName, letterFor, reason, sha256, consentText, acknowledged },
    locale: row.locale === 'es' ? 'es' : 'en',
    decidedAt: row.decidedAt.toISOString(),
    contract: readEffect(row.id, row.contract),
  };
}
