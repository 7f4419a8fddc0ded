import type { Estimate, EstimateContent } from '@underlath/contract';
import { findRepair, text } from '@underlath/rules';
import {
  contentFaults,
  differenceCents,
  type FindingWork,
  type NumberedBook,
  offeredRepairs,
  offeredWork,
  type PriceableFinding,
  priceWork,
} from '@underlath/rules/offers';
import { ProblemError } from '../../platform/problem-error.ts';
import { refuseWork } from '../../shared/refused-work.ts';

/** @throws ProblemError `invalid-input` for a repair that is unknown or named twice, or work that no chosen repair has */
export function assertContent(content: EstimateContent): void {
  const errors = contentFaults(content);
  if (errors.length > 0)
    throw new ProblemError('invalid-input', errors.map(({ detail }) => detail).join('; '), { errors });
}

/** @throws ProblemError `invalid-input` */
export const priceContent = (work: FindingWork, book: NumberedBook) =>
  refuseWork(() => priceWork(offeredWork([work]), book));

/** An estimate as the office sees it. @throws ProblemError `invalid-input` */
export function toEstimate(
  finding: PriceableFinding,
  findingVersion: number,
  content: EstimateContent,
  book: NumberedBook,
): Estimate {
  const { choices, alternates } = content;
  const scope = priceContent({ finding, content }, book);
  const others = alternates.map((alternate) => priceContent({ finding, content: alternate }, book));
  const fromCheck = offeredRepairs(finding);
  const chosen = choices.map(({ repairId }) => repairId);
  return {
    findingId: finding.id,
    findingVersion,
    saved: finding.saved !== null,
    options: [...new Set([...fromCheck, ...chosen])].map((repairId) => ({
      repairId,
      title: findRepair(repairId)?.title ?? text(repairId, repairId),
      chosen: chosen.includes(repairId),
      fromCheck: fromCheck.includes(repairId),
    })),
    choices,
    manualLines: content.manualLines,
    overrides: content.overrides,
    exclusions: content.exclusions,
    alternates,
    scope,
    alternatePrices: others.map((other) => ({ scope: other, differenceCents: differenceCents(scope, other) })),
  };
}
