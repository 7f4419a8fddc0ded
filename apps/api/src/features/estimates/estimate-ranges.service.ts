import type { EstimateContent, EstimateRange, RangeShape } from '@underlath/contract';
import {
  type EstimateInput,
  estimateClassOf,
  evaluateEstimate,
  percentsOnChange,
  type SeenStage,
} from '@underlath/rules';
import type { Database, Tx } from '../../platform/database/database.ts';
import { notFound } from '../../platform/problem-error.ts';
import type { RangePool } from '../../platform/range-pool.ts';
import type { CostBooksService } from '../cost-books/cost-books.service.ts';
import { refuseAmounts } from './amounts.ts';
import type { EstimateFinding } from './estimates.repository.ts';
import * as estimates from './estimates.repository.ts';
import { outcomeOf, type Part, suggestedPart } from './finding-work.ts';
import { estimateOf } from './scope-price.ts';
import { manualOf, unitedWork } from './united-work.ts';

/** One wall, one crew, one age: hours in one place go wrong together. The published example takes 0.3 too. */
const CORRELATION = 0.3;
const TRIALS = 10_000;
/** Always the same draws, so that the same estimate shows the same range. */
const SEED = 1;

/** Which shape hours take, and when the caller hung up. */
interface Drawn {
  readonly shape: RangeShape;
  readonly gone: AbortSignal;
}

/** What prices may come to. The draws run in threads of their own, after the transaction that read the work. */
export class EstimateRangesService {
  constructor(
    private readonly database: Database,
    private readonly books: CostBooksService,
    private readonly ranges: RangePool,
  ) {}

  /** @throws ProblemError `not-found`, `busy` */
  async ofFinding(companyId: string, findingId: string, how: Drawn): Promise<EstimateRange> {
    return this.draw(companyId, how, async (tx) => [suggestedPart(await requireFinding(tx, companyId, findingId))]);
  }

  /** Of an estimate that is being edited and not saved. @throws ProblemError `not-found`, `busy` */
  async ofContent(companyId: string, findingId: string, content: EstimateContent, how: Drawn): Promise<EstimateRange> {
    return this.draw(companyId, how, async (tx) => [
      { finding: await requireFinding(tx, companyId, findingId), content },
    ]);
  }

  /** @throws ProblemError `not-found`, `busy` */
  async ofChangeOrder(companyId: string, changeOrderId: string, how: Drawn): Promise<EstimateRange> {
    return this.draw(
      companyId,
      how,
      async (tx) => {
        const findings = await estimates.findingsOfOrder(tx, companyId, changeOrderId);
        if (findings.length === 0) throw notFound('change order');
        return findings.map(suggestedPart);
      },
      asContractSays,
    );
  }

  private async draw(
    companyId: string,
    { shape, gone }: Drawn,
    read: (tx: Tx) => Promise<Part[]>,
    mark: (
      tx: Tx,
      companyId: string,
      parts: readonly Part[],
      input: EstimateInput,
    ) => Promise<EstimateInput> = asBookSays,
  ): Promise<EstimateRange> {
    const { input, seen } = await this.database.inCompany(companyId, async (tx) => {
      const parts = await read(tx);
      const book = await this.books.current(tx, companyId);
      const input = estimateOf(unitedWork(parts), manualOf(parts), book);
      return {
        input: input && (await mark(tx, companyId, parts, input)),
        seen: estimateClassOf(parts.map(stageOf)).words,
      };
    });
    // Before any draw, which runs in another thread: a sum that cannot be kept is refused here.
    const totalCents = input ? priceOf(input).totalCents : 0;
    const drawn = { trials: TRIALS, seed: SEED, correlation: CORRELATION, shape };
    const range = input && (await this.ranges.draw(input, drawn, gone));
    return {
      currency: 'USD',
      totalCents,
      range: range && { ...range, openMinimums: [...range.openMinimums], drivers: [...range.drivers] },
      correlation: CORRELATION,
      shape,
      trials: TRIALS,
      seen,
    };
  }
}

/** @throws ProblemError `invalid-input` */
const priceOf = (input: EstimateInput) =>
  refuseAmounts(
    () => evaluateEstimate(input),
    () => '',
  );

const asBookSays = async (_tx: Tx, _companyId: string, _parts: readonly Part[], input: EstimateInput) => input;

/** A change order is marked up as its price is. */
async function asContractSays(tx: Tx, companyId: string, [first]: readonly Part[], input: EstimateInput) {
  const { decreaseReturns } = await estimates.findCounting(tx, companyId, first?.finding.projectId);
  return percentsOnChange(priceOf(input).subtotalCents, input, decreaseReturns);
}

async function requireFinding(tx: Tx, companyId: string, findingId: string): Promise<EstimateFinding> {
  const finding = await estimates.findFinding(tx, companyId, findingId);
  if (!finding) throw notFound('finding');
  return finding;
}

/** A finding was opened when it was found; measured once its verdict could be told. */
const stageOf = ({ finding }: Part): SeenStage => {
  const verdict = outcomeOf(finding)?.verdict;
  return verdict === undefined || verdict === 'undetermined' ? 'opened' : 'measured';
};
