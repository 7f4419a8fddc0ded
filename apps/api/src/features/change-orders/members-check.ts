import type { FieldProblem } from '@underlath/contract';
import type { LetterFinding } from '@underlath/rules/offers';
import { ProblemError } from '../../platform/problem-error.ts';

/** A finding that stands in another change order, and the number of that one. */
export interface Elsewhere {
  readonly findingId: string;
  readonly changeOrder: { readonly number: number };
}

/**
 * Findings of one change order: of this project, priced or declined before, each once, and in no other that is open or approved.
 * @param known findings of this project, those asked for among them
 * @throws ProblemError `invalid-input` that points at each finding that does not fit
 */
export function assertMembers(
  findingIds: readonly string[],
  known: readonly LetterFinding[],
  elsewhere: readonly Elsewhere[],
): void {
  const findings = new Map(known.map((finding) => [finding.id, finding]));
  const errors = findingIds.flatMap((id, at): FieldProblem[] => {
    const detail = faultOf(findings.get(id), elsewhere.find((one) => one.findingId === id)?.changeOrder.number);
    const repeated = findingIds.indexOf(id) < at ? 'is named twice' : undefined;
    return detail || repeated ? [{ pointer: `/findingIds/${at}`, detail: detail ?? repeated ?? '' }] : [];
  });
  if (errors.length === 0) return;
  const shown = errors.slice(0, 3).map(({ detail }) => detail);
  throw new ProblemError('invalid-input', `Some findings cannot be offered: ${shown.join('; ')}.`, { errors });
}

function faultOf(finding: LetterFinding | undefined, otherNumber: number | undefined): string | undefined {
  if (!finding) return 'is no finding of this project';
  const name = `finding ${finding.number}`;
  if (otherNumber !== undefined) return `${name} is in change order ${otherNumber} already`;
  // What was declined keeps its price, and may be offered again with it.
  return finding.state === 'priced' || finding.state === 'declined'
    ? undefined
    : `${name} is ${finding.state}, and only a priced finding can be offered`;
}
