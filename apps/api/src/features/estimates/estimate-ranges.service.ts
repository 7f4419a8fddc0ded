import type { Estimate, EstimateContent, EstimateRange, RangeShape } from '@underlath/contract';
import {
  type EstimateInput,
  estimateClassOf,
  evaluateEstimate,
  percentsOnChange,
  type SeenStage,
} from '@underlath/rules';
import { estimateOf, type FindingWork, type NumberedBook, offeredWork, suggestedWork } from '@underlath/rules/offers';
import type { Database } from '../../platform/database/database.ts';
import { notFound } from '../../platform/problem-error.ts';
import type { RangePool } from '../../platform/range-pool.ts';
import type { CostBooksService } from '../cost-books/cost-books.service.ts';
import { refuseAmounts } from './amounts.ts';
import { assertContent, toEstimate } from './estimate-view.ts';
import * as estimates from './estimates.repository.ts';
import { requireFinding } from './estimates.service.ts';
import { toPriceable } from './priceable.mapper.ts';

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
    const { finding, book } = await this.load(companyId, findingId);
    return this.draw([suggestedWork(finding)], book, how);
  }

  /** What an estimate that is being edited would come to, saving nothing. @throws ProblemError `not-found`, `invalid-input`, `busy` */
  async preview(
    companyId: string,
    findingId: string,
    content: EstimateContent,
    how: Drawn,
  ): Promise<{ estimate: Estimate; range: EstimateRange }> {
    assertContent(content);
    const { finding, version, book } = await this.load(companyId, findingId);
    const estimate = toEstimate(finding, version, content, book);
    return { estimate, range: await this.draw([{ finding, content }], book, how) };
  }

  /** A change order is marked up as its price is. @throws ProblemError `not-found`, `busy` */
  async ofChangeOrder(companyId: string, changeOrderId: string, how: Drawn): Promise<EstimateRange> {
    const { works, book, returns } = await this.database.inCompany(companyId, async (tx) => {
      const findings = await estimates.findingsOfOrder(tx, companyId, changeOrderId);
      const [first] = findings;
      if (!first) throw notFound('change order');
      const { decreaseReturns } = await estimates.findCounting(tx, companyId, first.projectId);
      const works = findings.map(toPriceable).map(suggestedWork);
      return { works, book: await this.books.current(tx, companyId), returns: decreaseReturns };
    });
    return this.draw(works, book, how, (input) => percentsOnChange(priceOf(input).subtotalCents, input, returns));
  }

  private load(companyId: string, findingId: string) {
    return this.database.inCompany(companyId, async (tx) => ({
      ...(await requireFinding(tx, companyId, findingId)),
      book: await this.books.current(tx, companyId),
    }));
  }

  private async draw(
    works: readonly FindingWork[],
    book: NumberedBook,
    { shape, gone }: Drawn,
    mark: (input: EstimateInput) => EstimateInput = (input) => input,
  ): Promise<EstimateRange> {
    const plain = estimateOf(offeredWork(works), book);
    const input = plain && mark(plain);
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
      seen: estimateClassOf(works.map(stageOf)).words,
    };
  }
}

/** @throws ProblemError `invalid-input` */
const priceOf = (input: EstimateInput) =>
  refuseAmounts(
    () => evaluateEstimate(input),
    () => '',
  );

/** A finding was opened when it was found; measured once its verdict could be told. */
const stageOf = ({ finding: { judged } }: FindingWork): SeenStage =>
  judged === null || judged.outcome.verdict === 'undetermined' ? 'opened' : 'measured';
