import { pluralForm, type Text, text } from '../kernel/index.ts';
import { crewOf } from '../pricing/book/cost-book.ts';
import type { WorkLine } from '../repairs/drawn.ts';
import { coveredOver } from '../repairs/scope.ts';
import { findRepair } from '../repairs/take-off.ts';
import { type OtherWay, otherWays } from './alternates.ts';
import type { WorkTime } from './days.ts';
import type { RepairChoice } from './document/estimate-content.ts';
import type { PricedScope } from './document/priced-scope.ts';
import { type PriceableFinding, savedWork } from './finding.ts';
import { spanOf } from './place-plan.ts';
import { type NumberedBook, offeredWork, priceChange, priceWork } from './price-work.ts';
import { drawnTakeOff } from './work.ts';

/** How a contract counts money and days. */
export interface CountingTerms {
  /** Whether it gives back overhead and profit on a net decrease. */
  readonly decreaseReturns: boolean;
  readonly dayKind: 'working' | 'calendar';
}

/** Findings of one change order, and all that their price hangs on. Findings without a saved estimate bring nothing. */
export interface Group<F extends PriceableFinding = PriceableFinding> {
  readonly findings: readonly F[];
  /** Declined ones of the same places. */
  readonly declined: readonly F[];
  readonly book: NumberedBook;
  readonly terms: CountingTerms;
  /** Spanish names of places, by id; the rest are told by their findings. */
  readonly placesEs?: Readonly<Record<string, string>>;
}

/** The price of a group and what each finding has to do with it, by finding id. */
export interface GroupPrice {
  readonly scope: PricedScope;
  /** What the chosen repairs do. */
  readonly repairs: ReadonlyMap<string, readonly Text[]>;
  /** What each would cost if it were the only one. */
  readonly alone: ReadonlyMap<string, PricedScope>;
  readonly time: WorkTime;
  /** Declined findings that this work would close in. */
  readonly covered: readonly string[];
  /** Other ways to do each, and what they would change in this price; in no sum. */
  readonly alternates: ReadonlyMap<string, readonly OtherWay[]>;
  /** What the price does not cover. */
  readonly exclusions: ReadonlyMap<string, readonly Text[]>;
}

/**
 * What is drawn at a place is opened once as its exact union, and work shared by place or visit counts once. Throws
 * WorkAmountError for a line or a total that comes to more than can be kept.
 */
export function priceGroup({ findings, declined, book, terms, placesEs = {} }: Group): GroupPrice {
  const { decreaseReturns, dayKind } = terms;
  const offered = offeredWork(findings.map(savedWork));
  const scope = priceChange(
    { ...offered, work: withPlaceNames(offered.work, findings, placesEs) },
    book,
    decreaseReturns,
  );
  const byFinding = <T>(read: (finding: PriceableFinding) => T) =>
    new Map(findings.map((finding) => [finding.id, read(finding)]));
  const closed = coveredOver(
    offered.work,
    declined.map((finding) => drawnTakeOff(savedWork(finding))),
  );
  return {
    scope,
    repairs: byFinding(({ saved }) => whatIsDone(saved?.choices ?? [])),
    alone: byFinding((finding) => priceWork(offeredWork([savedWork(finding)]), book)),
    covered: closed.map(({ finding }) => finding),
    time: { spanHours: spanOf(findings, book.book), crew: crewOf(book.book), dayKind },
    alternates: otherWays(findings, scope, (works) => priceChange(offeredWork(works), book, decreaseReturns)),
    exclusions: byFinding(({ saved }) => saved?.exclusions ?? []),
  };
}

const whatIsDone = (choices: readonly RepairChoice[]): Text[] =>
  choices.flatMap(({ repairId }) => findRepair(repairId)?.what ?? []);

/** With work in several places, each line says where; without a Spanish name the place is told by its findings. */
function withPlaceNames(
  work: readonly WorkLine[],
  findings: readonly PriceableFinding[],
  placesEs: NonNullable<Group['placesEs']>,
): WorkLine[] {
  if (new Set(findings.map(({ place }) => place.id)).size < 2) return [...work];
  return work.map((line) => {
    const there = findings.filter(({ place }) => place.id === line.place);
    const [first] = there;
    if (!first) return line;
    const finding = pluralForm('es', there.length) === 'one' ? 'hallazgo' : 'hallazgos';
    const byNumber = `${finding} ${there.map(({ number }) => number).join(', ')}`;
    const { en, es } = line.title;
    return {
      ...line,
      title: text(`${en} (${first.place.name})`, `${es} (${placesEs[first.place.id] ?? byNumber})`),
    };
  });
}
