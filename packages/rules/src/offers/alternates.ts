import { type Text, text } from '../kernel/index.ts';
import { findRepair } from '../repairs/take-off.ts';
import type { Alternate } from './document/estimate-content.ts';
import type { PricedScope } from './document/priced-scope.ts';
import { type FindingWork, type PriceableFinding, savedWork } from './finding.ts';

/** Another way to do a finding's repair, as a letter tells it. */
export interface OtherWay {
  readonly kind: Alternate['kind'];
  readonly name: Text;
  /** What its repairs do, and the names of its own lines. */
  readonly what: readonly Text[];
  /** What it would change in the price of the whole group, cents; null while either price lacks a rate. */
  readonly differenceCents: number | null;
}

export const differenceCents = (own: PricedScope, other: PricedScope): number | null =>
  own.gaps.length + other.gaps.length > 0 ? null : other.totalCents - own.totalCents;

/** The alternates of each finding, each put in its place while the others of the group stay as they are. */
export function otherWays(
  findings: readonly PriceableFinding[],
  own: PricedScope,
  price: (works: readonly FindingWork[]) => PricedScope,
): Map<string, OtherWay[]> {
  const works = findings.map(savedWork);
  return new Map(
    findings.map((finding, at) => {
      const ways = (finding.saved?.alternates ?? []).map((alternate): OtherWay => {
        // It stands in for all of the finding's own repairs, lines and overrides.
        const other = price(works.with(at, { finding, content: alternate }));
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
