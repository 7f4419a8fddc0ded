import { type CostBook, type Existing, type Hours, planScope, type Scope } from '@underlath/rules';
import { drawnTakeOff, groundOf } from './drawn-work.ts';
import { type PriceableFinding, savedOf, suggestChoices } from './finding-work.ts';

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
