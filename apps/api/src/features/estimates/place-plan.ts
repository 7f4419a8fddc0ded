import {
  type CostBook,
  type Crew,
  crewOf,
  type Existing,
  type Hours,
  mergeRates,
  planScope,
  type Scope,
  withTypedRates,
} from '@underlath/rules';
import { drawnTakeOff, groundOf } from './drawn-work.ts';
import { contentOf, type PriceableFinding, suggestedPart } from './finding-work.ts';

/** Hours a unit by operation, as a cost book knows them or the estimator of a finding typed them over it. */
export function hoursIn(book: CostBook, findings: readonly PriceableFinding[]) {
  const overrides = findings.flatMap((finding) => contentOf(finding).overrides);
  return (operation: string): Hours | undefined => {
    const item = book.items.find((one) => one.operation === operation);
    const typed = mergeRates(overrides.filter((override) => override.operation === operation));
    return item ? (withTypedRates(item, typed).hoursPerUnit ?? undefined) : undefined;
  };
}

/** One repair scope for findings of one place, those `declined` left out. Undefined without a finding. */
export function planPlace(
  findings: readonly PriceableFinding[],
  book: CostBook,
  crew: Crew,
  declined: readonly string[] = [],
): Scope | undefined {
  const [first] = findings;
  if (!first) return undefined;
  return planScope({
    ground: groundOf(first),
    existing: first.location.existing as Existing[],
    takeOffs: findings.map((finding) => drawnTakeOff(suggestedPart(finding))),
    order: [],
    declined,
    ...crew,
    hoursOf: hoursIn(book, findings),
  });
}

/** Hours that the crew of the book takes for these findings, one place after the other. */
export function spanOf(findings: readonly PriceableFinding[], book: CostBook): number {
  const places = [...new Set(findings.map(({ locationId }) => locationId))];
  return places.reduce((sum, place) => {
    const here = findings.filter(({ locationId }) => locationId === place);
    return sum + (planPlace(here, book, crewOf(book))?.spanHours ?? 0);
  }, 0);
}
