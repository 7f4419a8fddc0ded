import type { EstimateAnswer, EstimateRequest } from '@underlath/contract';
import { estimateSchema, evaluateEstimate, type Locale, type PricedLine, rangeNotes, say } from '@underlath/rules';
import type { RangePool } from '../../platform/range-pool.ts';
import { readByRules } from '../../shared/read-by-rules.ts';
import { refuseAmounts } from './amounts.ts';

/** Prices lines for anyone who asks. It keeps nothing. */
export class EstimateEvaluationService {
  constructor(private readonly ranges: RangePool) {}

  /**
   * @param gone aborts when nobody waits for the answer any more
   * @throws ProblemError `invalid-input` with a pointer for everything that does not fit; `busy`
   */
  async evaluate(body: EstimateRequest, locale: Locale, gone: AbortSignal): Promise<EstimateAnswer> {
    const input = readByRules(estimateSchema, body);
    const { lines, ...sums } = refuseAmounts(
      () => evaluateEstimate(input),
      (line) => `/lines/${line}`,
      locale,
    );
    const range = input.range && (await this.ranges.draw(input, input.range, gone));
    return {
      lines: lines.map((line) => toLine(line, locale)),
      ...sums,
      ...(range && {
        range: {
          ...range,
          openMinimums: [...range.openMinimums],
          drivers: [...range.drivers],
          notes: rangeNotes(input.lines, range).map((note) => say(note, locale)),
        },
      }),
    };
  }
}

const toLine = (line: PricedLine, locale: Locale): EstimateAnswer['lines'][number] => ({
  ...line,
  // What a minimum charge adds belongs to no other part; with it the parts add up to the line.
  otherCents: line.otherCents + line.minimumCents,
  steps: line.steps.map((step) => say(step, locale)),
});
