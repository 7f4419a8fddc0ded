import { type CostBook, type Crew, crewOf } from '../pricing/book/cost-book.ts';
import { withTypedRates } from '../pricing/estimate/line-override.ts';
import { groupBy } from '../repairs/drawn.ts';
import { mergeRates } from '../repairs/overrides.ts';
import { type Hours, planScope, type Scope } from '../repairs/scope.ts';
import { contentOf, type PriceableFinding, suggestedWork } from './finding.ts';
import { drawnTakeOff } from './work.ts';

/** Hours a unit by operation, as a cost book knows them or the estimator of a finding typed them over it. */
function hoursIn(book: CostBook, findings: readonly PriceableFinding[]) {
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
    ground: first.place.ground,
    existing: first.place.existing,
    takeOffs: findings.map((finding) => drawnTakeOff(suggestedWork(finding))),
    order: [],
    declined,
    ...crew,
    hoursOf: hoursIn(book, findings),
  });
}

/** Hours that the crew of the book takes for these findings, one place after the other. */
export function spanOf(findings: readonly PriceableFinding[], book: CostBook): number {
  const places = groupBy(findings, ({ place }) => place.id);
  return [...places.values()].reduce((sum, here) => sum + (planPlace(here, book, crewOf(book))?.spanHours ?? 0), 0);
}
