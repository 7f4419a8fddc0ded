// Runs in worker threads, started by range-pool.ts.
import {
  type EstimateInput,
  evaluateEstimate,
  evaluateRange,
  type PriceRange,
  type RangeInput,
} from '@underlath/rules/pricing';

/** Prices the lines again, which takes nothing beside the draws, and draws the range around that total. */
export default ({ input, range }: { input: EstimateInput; range: RangeInput }): PriceRange =>
  evaluateRange(input, range, evaluateEstimate(input));
