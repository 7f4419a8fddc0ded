import type { Alternate, PricedScope } from '@underlath/contract';
import { findRepair, type Text, text } from '@underlath/rules';
import type { NewestBook } from '../cost-books/cost-books.service.ts';
import { type Part, type PriceableFinding, savedOf, savedPart } from './finding-work.ts';
import { priceWork } from './scope-price.ts';
import { manualOf, unitedWork } from './united-work.ts';

/** Another way to do a finding's repair, as a letter tells it. */
export interface OtherWay {
  readonly kind: Alternate['kind'];
  readonly name: Text;
  /** What its repairs do, and the names of its own lines. */
  readonly what: readonly Text[];
  /** What it would change in the price of the whole group; null while either price lacks a rate. */
  readonly differenceCents: number | null;
}

/** An alternate stands in for all of the finding's own repairs, lines and overrides. */
export const partOf = (finding: PriceableFinding, content: Alternate): Part => ({ finding, content });

export const priceParts = (parts: readonly Part[], book: NewestBook): PricedScope =>
  priceWork(unitedWork(parts), manualOf(parts), book);

export const differenceCents = (own: PricedScope, other: PricedScope): number | null =>
  own.gaps.length + other.gaps.length > 0 ? null : other.totalCents - own.totalCents;

/** The alternates of each finding, each put in its place while the others of the group stay as they are. */
export function otherWays(
  findings: readonly PriceableFinding[],
  own: PricedScope,
  price: (parts: readonly Part[]) => PricedScope,
): Map<string, OtherWay[]> {
  const parts = findings.map(savedPart);
  return new Map(
    findings.map((finding, at) => {
      const ways = (savedOf(finding)?.alternates ?? []).map((alternate): OtherWay => {
        const other = price(parts.with(at, partOf(finding, alternate)));
        return { ...nameOf(alternate), differenceCents: differenceCents(own, other) };
      });
      return [finding.id, ways];
    }),
  );
}

const nameOf = ({ kind, name, choices, manualLines }: Alternate): Omit<OtherWay, 'differenceCents'> => ({
  kind,
  name,
  what: [
    ...choices.flatMap(({ repairId }) => findRepair(repairId)?.what ?? []),
    ...manualLines.map(({ title, titleEs }) => text(title, titleEs ?? '')),
  ],
});
