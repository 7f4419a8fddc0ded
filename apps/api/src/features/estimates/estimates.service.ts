import type { Estimate, EstimateContent, PricedScope, RepairChoice } from '@underlath/contract';
import {
  type Crew,
  coveredOver,
  crewOf,
  findRepair,
  pluralForm,
  type Text,
  text,
  type WorkLine,
} from '@underlath/rules';
import type { Database, Tx } from '../../platform/database/database.ts';
import { notFound, ProblemError } from '../../platform/problem-error.ts';
import type { Caller } from '../../shared/caller.ts';
import { assertVersion } from '../../shared/versions.ts';
import type { CostBooksService } from '../cost-books/cost-books.service.ts';
import type { RecordsService } from '../records/records.service.ts';
import { differenceCents, type OtherWay, otherWays, partOf, priceParts } from './alternates.ts';
import { assertContent } from './content-check.ts';
import { drawnTakeOff } from './drawn-work.ts';
import type { EstimateFinding } from './estimates.repository.ts';
import * as estimates from './estimates.repository.ts';
import {
  contentOf,
  offeredRepairs,
  type Part,
  type PriceableFinding,
  type SavedEstimate,
  savedOf,
  savedPart,
} from './finding-work.ts';
import { spanOf } from './place-plan.ts';
import { linesCents, priceChange, priceWork } from './scope-price.ts';
import { manualOf, unitedWork } from './united-work.ts';

/** What the days of a group are worked out from. */
export interface WorkTime {
  /** Hours from the first step to the last, place after place. */
  readonly spanHours: number;
  readonly crew: Crew;
  /** How the contract counts days. */
  readonly dayKind: 'working' | 'calendar';
}

/** The price of a group and what each finding has to do with it, by finding id. */
export interface TogetherPrice {
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

/** Which repair answers a finding, and what it costs with today's book. */
export class EstimatesService {
  constructor(
    private readonly database: Database,
    private readonly records: RecordsService,
    private readonly books: CostBooksService,
  ) {}

  /** @throws ProblemError `not-found` */
  async get(companyId: string, findingId: string): Promise<Estimate> {
    return this.database.inCompany(companyId, (tx) => this.find(tx, companyId, findingId));
  }

  /** The same in the caller's transaction. @throws ProblemError `not-found` */
  async find(tx: Tx, companyId: string, findingId: string): Promise<Estimate> {
    const finding = await requireFinding(tx, companyId, findingId);
    return this.view(tx, companyId, finding, contentOf(finding));
  }

  /** What it would come to with this content, saving nothing. @throws ProblemError `not-found`, `invalid-input` */
  async preview(companyId: string, findingId: string, content: EstimateContent): Promise<Estimate> {
    assertContent(content);
    return this.database.inCompany(companyId, async (tx) =>
      this.view(tx, companyId, await requireFinding(tx, companyId, findingId), content),
    );
  }

  /** Takes the project's turn, then reads the finding. @throws ProblemError `not-found` */
  async lockFinding(tx: Tx, companyId: string, findingId: string): Promise<EstimateFinding> {
    const { projectId } = await requireFinding(tx, companyId, findingId);
    await this.records.lock(tx, companyId, projectId);
    return requireFinding(tx, companyId, findingId);
  }

  /** @throws ProblemError `not-found`, `stale-version`, `wrong-state`, `invalid-input` */
  async save({ companyId, actor }: Caller, findingId: string, seen: number, body: EstimateContent): Promise<Estimate> {
    assertContent(body);
    return this.database.inCompany(companyId, async (tx) => {
      const finding = await this.lockFinding(tx, companyId, findingId);
      const { projectId } = finding;
      assertVersion(seen, finding.version);
      assertOpen(finding);
      const scope = priceParts([{ finding, content: body }], await this.books.current(tx, companyId));
      const saved: SavedEstimate = { ...body, costBookVersion: scope.costBookVersion, linesCents: linesCents(scope) };
      const changed = await estimates.saveEstimate(tx, companyId, findingId, saved);
      const data = { ...saved, totalCents: scope.totalCents };
      await this.records.append(tx, {
        companyId,
        projectId,
        actor,
        type: 'finding.priced',
        subjectId: findingId,
        data,
      });
      return this.view(tx, companyId, changed, body);
    });
  }

  /**
   * Findings of one change order: what is drawn at a place is opened once as its exact union, and work shared by place or
   * visit counts once. Findings without a saved estimate bring nothing. Says which of the declined ones would be closed in.
   */
  async priceTogether(
    tx: Tx,
    companyId: string,
    findings: readonly PriceableFinding[],
    declined: readonly PriceableFinding[] = [],
    placesEs: PlacesEs = {},
  ): Promise<TogetherPrice> {
    const book = await this.books.current(tx, companyId);
    const parts = findings.map(savedPart);
    const work = unitedWork(parts);
    const [first] = findings;
    const { decreaseReturns, dayKind } = await estimates.findCounting(tx, companyId, first?.projectId);
    const scope = priceChange(decreaseReturns, book, (newest) =>
      priceWork(withPlaceNames(work, findings, placesEs), manualOf(parts), newest),
    );
    const priceOthers = (others: readonly Part[]) =>
      priceChange(decreaseReturns, book, (newest) => priceParts(others, newest));
    const byFinding = <T>(read: (finding: PriceableFinding) => T) =>
      new Map(findings.map((finding) => [finding.id, read(finding)]));
    const closed = coveredOver(work, declined.map(savedPart).map(drawnTakeOff));
    return {
      scope,
      repairs: byFinding((finding) => whatIsDone(savedOf(finding)?.choices ?? [])),
      alone: byFinding((finding) => priceParts([savedPart(finding)], book)),
      covered: closed.map(({ finding }) => finding),
      time: { spanHours: spanOf(findings, book.book), crew: crewOf(book.book), dayKind },
      alternates: otherWays(findings, scope, priceOthers),
      exclusions: byFinding((finding) => savedOf(finding)?.exclusions ?? []),
    };
  }

  private async view(tx: Tx, companyId: string, finding: EstimateFinding, content: EstimateContent): Promise<Estimate> {
    const { choices, manualLines, overrides, exclusions, alternates } = content;
    const book = await this.books.current(tx, companyId);
    const scope = priceParts([{ finding, content }], book);
    const others = alternates.map((alternate) => priceParts([partOf(finding, alternate)], book));
    const fromCheck = offeredRepairs(finding);
    const chosen = choices.map(({ repairId }) => repairId);
    return {
      findingId: finding.id,
      findingVersion: finding.version,
      saved: savedOf(finding) !== null,
      options: [...new Set([...fromCheck, ...chosen])].map((repairId) => ({
        repairId,
        title: findRepair(repairId)?.title ?? text(repairId, repairId),
        chosen: chosen.includes(repairId),
        fromCheck: fromCheck.includes(repairId),
      })),
      choices,
      manualLines,
      overrides,
      exclusions,
      alternates,
      scope,
      alternatePrices: others.map((other) => ({ scope: other, differenceCents: differenceCents(scope, other) })),
    };
  }
}

async function requireFinding(tx: Tx, companyId: string, id: string): Promise<EstimateFinding> {
  const finding = await estimates.findFinding(tx, companyId, id);
  if (!finding) throw notFound('finding');
  return finding;
}

const open: readonly EstimateFinding['state'][] = ['noted', 'judged', 'priced', 'declined'];

/** What a client has before them, or has approved, is priced by what was sent. */
function assertOpen({ number, state }: EstimateFinding): void {
  if (open.includes(state)) return;
  const how =
    state === 'offered' ? 'Edit its change order first, then it is priced again.' : 'Its price stays as it is.';
  throw new ProblemError('wrong-state', `Finding ${number} is ${state}. ${how}`);
}

const whatIsDone = (choices: readonly RepairChoice[]): Text[] =>
  choices.flatMap(({ repairId }) => findRepair(repairId)?.what ?? []);

/** Spanish names of places, by location id. */
type PlacesEs = Readonly<Record<string, string>>;

/** With work in several places, each line says where; without a Spanish name the place is told by its findings. */
function withPlaceNames(
  work: readonly WorkLine[],
  findings: readonly PriceableFinding[],
  placesEs: PlacesEs,
): WorkLine[] {
  if (new Set(findings.map(({ locationId }) => locationId)).size < 2) return [...work];
  return work.map((line) => {
    const there = findings.filter(({ locationId }) => locationId === line.place);
    const [first] = there;
    if (!first) return line;
    const finding = pluralForm('es', there.length) === 'one' ? 'hallazgo' : 'hallazgos';
    const byNumber = `${finding} ${there.map(({ number }) => number).join(', ')}`;
    const { en, es } = line.title;
    return {
      ...line,
      title: text(`${en} (${first.location.name})`, `${es} (${placesEs[first.locationId] ?? byNumber})`),
    };
  });
}
