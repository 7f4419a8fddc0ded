import type { BodyOut, Estimate, FieldProblem, PricedScope, priceRoutes, RepairChoice } from '@underlath/contract';
import {
  coveredOver,
  type FindingTakeOff,
  findRepair,
  type ScopeLine,
  splitExisting,
  type Text,
  text,
  uniteTakeOffs,
  type WorkLine,
} from '@underlath/rules';
import type { Database, Tx } from '../../platform/database/database.ts';
import { notFound, ProblemError } from '../../platform/problem-error.ts';
import { assertVersion } from '../../plugins/etag.ts';
import type { Caller } from '../caller.ts';
import type { CostBooksService } from '../cost-books/cost-books.service.ts';
import type { RecordsService } from '../records/records.service.ts';
import { drawnTakeOff, existingOf, groundsOf } from './drawn-work.ts';
import type { EstimateFinding } from './estimates.repository.ts';
import * as estimates from './estimates.repository.ts';
import { offeredRepairs, type PriceableFinding, type SavedEstimate, savedOf, suggestChoices } from './finding-work.ts';
import { spanOf } from './place-plan.ts';
import { linesCents, priceWork } from './scope-price.ts';

type Save = BodyOut<typeof priceRoutes.saveEstimate>;

/** The price of a group and what each finding has to do with it, by finding id. */
export interface TogetherPrice {
  readonly scope: PricedScope;
  /** What the chosen repairs do. */
  readonly repairs: ReadonlyMap<string, readonly Text[]>;
  /** What each would cost if it were the only one. */
  readonly alone: ReadonlyMap<string, PricedScope>;
  /** Hours from the first step to the last, place after place. */
  readonly spanHours: number;
  /** Declined findings that this work would close in. */
  readonly covered: readonly string[];
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
    return this.view(tx, companyId, await requireFinding(tx, companyId, findingId));
  }

  /** Takes the project's turn, then reads the finding. @throws ProblemError `not-found` */
  async lockFinding(tx: Tx, companyId: string, findingId: string): Promise<EstimateFinding> {
    const { projectId } = await requireFinding(tx, companyId, findingId);
    await this.records.lock(tx, companyId, projectId);
    return requireFinding(tx, companyId, findingId);
  }

  /** @throws ProblemError `not-found`, `stale-version`, `wrong-state`, `invalid-input` */
  async save({ companyId, actor }: Caller, findingId: string, seen: number, body: Save): Promise<Estimate> {
    assertChoices(body.choices);
    return this.database.inCompany(companyId, async (tx) => {
      const finding = await this.lockFinding(tx, companyId, findingId);
      const { projectId } = finding;
      assertVersion(seen, finding.version);
      assertOpen(finding);
      const scope = await this.priceAlone(tx, companyId, finding, body);
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
      return this.view(tx, companyId, changed);
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
  ): Promise<TogetherPrice> {
    const book = await this.books.current(tx, companyId);
    const work = workOf(findings.map(savedTakeOff), findings);
    const scope = priceWork(withPlaceNames(work, findings), manualOf(findings), book);
    const alone = findings.map((finding) => {
      const own = workOf([savedTakeOff(finding)], [finding]);
      return [finding.id, priceWork(own, manualOf([finding]), book)] as const;
    });
    const repairs = findings.map(({ id, estimate }) => [id, whatIsDone(savedOf({ estimate })?.choices ?? [])] as const);
    const covered = coveredOver(work, declined.map(savedTakeOff)).map(({ finding }) => finding);
    const spanHours = spanOf(findings, book.book);
    return { scope, repairs: new Map(repairs), alone: new Map(alone), covered, spanHours };
  }

  private async priceAlone(tx: Tx, companyId: string, finding: EstimateFinding, { choices, manualLines }: Save) {
    const work = workOf([drawnTakeOff(finding, choices)], [finding]);
    const manual = manualLines.map((line) => ({ findingId: finding.id, line }));
    return priceWork(work, manual, await this.books.current(tx, companyId));
  }

  private async view(tx: Tx, companyId: string, finding: EstimateFinding): Promise<Estimate> {
    const saved = savedOf(finding);
    const choices = saved?.choices ?? suggestChoices(finding);
    const manualLines = saved?.manualLines ?? [];
    const fromCheck = offeredRepairs(finding);
    const chosen = choices.map(({ repairId }) => repairId);
    return {
      findingId: finding.id,
      findingVersion: finding.version,
      saved: saved !== null,
      options: [...new Set([...fromCheck, ...chosen])].map((repairId) => ({
        repairId,
        title: findRepair(repairId)?.title ?? text(repairId, repairId),
        chosen: chosen.includes(repairId),
        fromCheck: fromCheck.includes(repairId),
      })),
      choices,
      manualLines,
      scope: await this.priceAlone(tx, companyId, finding, { choices, manualLines }),
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

/** @throws ProblemError `invalid-input` for a repair that is unknown or named twice, or an amount of work it does not have */
function assertChoices(choices: readonly RepairChoice[]): void {
  const errors = choices.flatMap(({ repairId, quantities }, at): FieldProblem[] => {
    const repair = findRepair(repairId);
    const pointer = `/choices/${at}`;
    if (!repair) return [{ pointer: `${pointer}/repairId`, detail: `there is no repair "${repairId}"` }];
    if (choices.findIndex((choice) => choice.repairId === repairId) < at) {
      return [{ pointer: `${pointer}/repairId`, detail: `"${repairId}" is chosen twice` }];
    }
    const operations = repair.steps.map(({ operation }) => operation);
    return Object.keys(quantities)
      .filter((operation) => !operations.includes(operation))
      .map((operation) => ({
        pointer: `${pointer}/quantities/${operation}`,
        detail: `"${repairId}" has no work called "${operation}"; it has ${operations.join(', ')}`,
      }));
  });
  if (errors.length > 0)
    throw new ProblemError('invalid-input', errors.map(({ detail }) => detail).join('; '), { errors });
}

/** What is to be paid for: the base contract's own work is left out. */
const workOf = (takeOffs: readonly FindingTakeOff[], findings: readonly PriceableFinding[]): ScopeLine[] =>
  splitExisting(uniteTakeOffs(takeOffs, groundsOf(findings)), existingOf(findings)).lines;

const savedTakeOff = (finding: PriceableFinding) => drawnTakeOff(finding, savedOf(finding)?.choices ?? []);

const manualOf = (findings: readonly PriceableFinding[]) =>
  findings.flatMap((finding) => (savedOf(finding)?.manualLines ?? []).map((line) => ({ findingId: finding.id, line })));

const whatIsDone = (choices: readonly RepairChoice[]): Text[] =>
  choices.flatMap(({ repairId }) => findRepair(repairId)?.what ?? []);

/** With work in several places, each line says where. */
function withPlaceNames(work: readonly WorkLine[], findings: readonly PriceableFinding[]): WorkLine[] {
  const names = new Map(findings.map(({ locationId, location }) => [locationId, location.name]));
  if (names.size < 2) return [...work];
  return work.map((line) => {
    const name = line.place === undefined ? undefined : names.get(line.place);
    return name ? { ...line, title: text(`${line.title.en} (${name})`, `${line.title.es} (${name})`) } : line;
  });
}
