import type { FieldProblem } from '@underlath/contract';
import type { Tx } from '../../platform/database/database.ts';
import { ProblemError } from '../../platform/problem-error.ts';
import { toWord } from '../../shared/enum-words.ts';
import * as changeOrders from './change-orders.repository.ts';

/**
 * Findings of one change order: of this project, priced or declined before, each once, and in no other that is open or approved.
 * @throws ProblemError `invalid-input` that points at each finding that does not fit
 */
export async function checkMembers(
  tx: Tx,
  companyId: string,
  projectId: string,
  changeOrderId: string,
  findingIds: readonly string[],
): Promise<void> {
  const findings = new Map((await changeOrders.findFindings(tx, companyId, findingIds)).map((row) => [row.id, row]));
  const elsewhere = await changeOrders.findOpenMemberships(tx, companyId, findingIds, changeOrderId);
  const errors = findingIds.flatMap((id, at): FieldProblem[] => {
    const detail = faultOf(findings.get(id), elsewhere.find((one) => one.findingId === id)?.changeOrder.number);
    const repeated = findingIds.indexOf(id) < at ? 'is named twice' : undefined;
    return detail || repeated ? [{ pointer: `/findingIds/${at}`, detail: detail ?? repeated ?? '' }] : [];
  });
  if (errors.length === 0) return;
  const shown = errors.slice(0, 3).map(({ detail }) => detail);
  throw new ProblemError('invalid-input', `Some findings cannot be offered: ${shown.join('; ')}.`, { errors });

  function faultOf(
    finding: changeOrders.FindingRecord | undefined,
    otherNumber: number | undefined,
  ): string | undefined {
    if (!finding || finding.projectId !== projectId) return 'is no finding of this project';
    const name = `finding ${finding.number}`;
    if (otherNumber !== undefined) return `${name} is in change order ${otherNumber} already`;
    // What was declined keeps its price, and may be offered again with it.
    return finding.state === 'priced' || finding.state === 'declined'
      ? undefined
      : `${name} is ${toWord(finding.state)}, and only a priced finding can be offered`;
  }
}
