import type { Estimate, EstimateContent } from '@underlath/contract';
import { contentOf, linesCents, type PriceableFinding } from '@underlath/rules/offers';
import type { Database, Tx } from '../../platform/database/database.ts';
import { notFound, ProblemError } from '../../platform/problem-error.ts';
import type { Caller } from '../../shared/caller.ts';
import type { SavedEstimate } from '../../shared/stored/stored-columns.ts';
import { assertVersion } from '../../shared/versions.ts';
import type { CostBooksService } from '../cost-books/cost-books.service.ts';
import type { RecordsService } from '../records/records.service.ts';
import { assertContent, priceContent, toEstimate } from './estimate-view.ts';
import type { EstimateFinding } from './estimates.repository.ts';
import * as estimates from './estimates.repository.ts';
import { toPriceable } from './priceable.ts';

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
    const { version, finding } = await requireFinding(tx, companyId, findingId);
    return toEstimate(finding, version, contentOf(finding), await this.books.current(tx, companyId));
  }

  /** Takes the project's turn, then reads the finding. @throws ProblemError `not-found` */
  async lockFinding(tx: Tx, companyId: string, findingId: string): Promise<Found> {
    await this.records.lockOf(tx, companyId, 'finding', findingId);
    return requireFinding(tx, companyId, findingId);
  }

  /** @throws ProblemError `not-found`, `stale-version`, `wrong-state`, `invalid-input` */
  async save({ companyId, actor }: Caller, findingId: string, seen: number, body: EstimateContent): Promise<Estimate> {
    assertContent(body);
    return this.database.inCompany(companyId, async (tx) => {
      const { projectId, version, state, finding } = await this.lockFinding(tx, companyId, findingId);
      assertVersion(seen, version);
      assertOpen(finding.number, state);
      const book = await this.books.current(tx, companyId);
      const scope = priceContent({ finding, content: body }, book);
      const saved: SavedEstimate = { ...body, costBookVersion: scope.costBookVersion, linesCents: linesCents(scope) };
      await estimates.saveEstimate(tx, companyId, findingId, saved);
      const data = { ...saved, totalCents: scope.totalCents };
      await this.records.append(tx, {
        companyId,
        projectId,
        actor,
        type: 'finding.priced',
        subjectId: findingId,
        data,
      });
      return toEstimate({ ...finding, saved }, version + 1, body, book);
    });
  }
}

export interface Found extends Pick<EstimateFinding, 'projectId' | 'version' | 'state'> {
  readonly finding: PriceableFinding;
}

/** @throws ProblemError `not-found` */
export async function requireFinding(tx: Tx, companyId: string, id: string): Promise<Found> {
  const row = await estimates.findFinding(tx, companyId, id);
  if (!row) throw notFound('finding');
  const { projectId, version, state } = row;
  return { projectId, version, state, finding: toPriceable(row) };
}

const open: readonly EstimateFinding['state'][] = ['noted', 'judged', 'priced', 'declined'];

/** What a client has before them, or has approved, is priced by what was sent. */
function assertOpen(number: number, state: EstimateFinding['state']): void {
  if (open.includes(state)) return;
  const how =
    state === 'offered' ? 'Edit its change order first, then it is priced again.' : 'Its price stays as it is.';
  throw new ProblemError('wrong-state', `Finding ${number} is ${state}. ${how}`);
}
