import {
  type CostBook,
  type EstimateInput,
  type Existing,
  type Hours,
  planScope,
  type Scope,
  splitExisting,
  uniteTakeOffs,
} from '@underlath/rules';
import type { NewestBook } from '../cost-books/cost-books.service.ts';
import { drawnTakeOff, existingOf, groundOf, groundsOf } from './drawn-work.ts';
import { type PriceableFinding, savedOf, suggestChoices } from './finding-work.ts';
import { estimateOf } from './scope-price.ts';

export interface PlaceCrew {
  readonly crewSize: number;
  readonly hoursPerDay: number;
}

/** Assumed until somebody says otherwise: two people, eight hours a day (common practice, no source). */
export const USUAL_CREW: PlaceCrew = { crewSize: 2, hoursPerDay: 8 };

/** Hours a unit by operation, as a cost book knows them. */
export const hoursIn =
  (book: CostBook) =>
  (operation: string): Hours | undefined =>
    book.items.find((item) => item.operation === operation)?.hoursPerUnit ?? undefined;

/** The repairs that were saved, or those the check proposes. */
export const choicesOf = (finding: PriceableFinding) => savedOf(finding)?.choices ?? suggestChoices(finding);

/** One repair scope for findings of one place, those `declined` left out. Undefined without a finding. */
export function planPlace(
  findings: readonly PriceableFinding[],
  book: CostBook,
  crew: PlaceCrew,
  declined: readonly string[] = [],
): Scope | undefined {
  const [first] = findings;
  if (!first) return undefined;
  return planScope({
    ground: groundOf(first),
    existing: first.location.existing as Existing[],
    takeOffs: findings.map((finding) => drawnTakeOff(finding, choicesOf(finding))),
    order: [],
    declined,
    ...crew,
    hoursOf: hoursIn(book),
  });
}

/** Hours that the usual crew takes for these findings, one place after the other. */
export function spanOf(findings: readonly PriceableFinding[], book: CostBook): number {
  const places = [...new Set(findings.map(({ locationId }) => locationId))];
  return places.reduce((sum, place) => {
    const here = findings.filter(({ locationId }) => locationId === place);
    return sum + (planPlace(here, book, USUAL_CREW)?.spanHours ?? 0);
  }, 0);
}

/** The work of these findings as one estimate, suggested repairs standing in where none was saved. Null where the book lacks a rate. */
export function suggestedInput(findings: readonly PriceableFinding[], book: NewestBook): EstimateInput | null {
  const takeOffs = findings.map((finding) => drawnTakeOff(finding, choicesOf(finding)));
  const { lines } = splitExisting(uniteTakeOffs(takeOffs, groundsOf(findings)), existingOf(findings));
  const manual = findings.flatMap((finding) =>
    (savedOf(finding)?.manualLines ?? []).map((line) => ({ findingId: finding.id, line })),
  );
  return estimateOf(lines, manual, book);
}
