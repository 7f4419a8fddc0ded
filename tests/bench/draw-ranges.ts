import { type EstimateInput, evaluateEstimate, evaluateRange, type RangeInput } from '@underlath/rules/pricing';
import { CELLS, spreadOf } from '../../packages/rules/src/pricing/range/spread.ts';

const trials = 10_000;
const lineCount = 100;
const places = 8;
const range: RangeInput = { trials, seed: 1, correlation: 0.3, shape: 'pert-beta' };

export const drawCount = trials * lineCount;

/** A hundred lines on eight walls, their likely hours at many places between low and high. */
const input: EstimateInput = {
  lines: Array.from({ length: lineCount }, (_, at) => ({
    name: `line ${at}`,
    location: `wall ${at % places}`,
    quantity: 1 + (at % 7),
    unit: 'each',
    hoursPerUnit: { low: 1, likely: 1 + (at % 50) / 25, high: 3.5 },
    rateCents: 6000,
    materialCentsPerUnit: 900,
    wastePct: 5,
    materialTaxPct: 8.25,
    equipmentCents: 0,
    subcontractCents: 0,
    otherCents: 0,
  })),
  overheadPct: 18,
  profitPct: 10,
  stacking: 'stacked',
};
const estimate = evaluateEstimate(input);

/** A whole range: curves, draws, moments by formula, percentiles, drivers. A seed of its own each time, as nothing is kept. */
export const drawRange = (seed: number): number => evaluateRange(input, { ...range, seed }, estimate).p80Cents;

const curves = input.lines.map(({ hoursPerUnit: { low, likely, high } }) =>
  spreadOf('pert-beta', (likely - low) / (high - low)),
);
const widths = input.lines.map(
  ({ quantity, rateCents, hoursPerUnit: { low, high } }) => quantity * rateCents * (high - low),
);
const totals = new Float64Array(trials);
const shared = new Float64Array(trials);

/** The same draws in plain loops, with curves made beforehand and nothing else: no streams of their own, no order, no answer but a sum. */
export function drawPlainly(seed: number): number {
  const cells = CELLS;
  const follow = Math.sqrt(range.correlation);
  const scale = cells / (1 - follow);
  let [a, b, c, d] = [seed, 0x9e3779b9 | 0, 0x7f4a7c15, 1];
  totals.fill(0);
  for (let place = 0; place < places; place++) {
    for (let trial = 0; trial < trials; trial++) {
      const drawn = (((a + b) | 0) + d) | 0;
      d = (d + 1) | 0;
      a = b ^ (b >>> 9);
      b = (c + (c << 3)) | 0;
      c = (((c << 21) | (c >>> 11)) + drawn) | 0;
      shared[trial] = ((drawn >>> 0) + 0.5) * 2 ** -32;
    }
    for (let line = place; line < lineCount; line += places) {
      const curve = curves[line]?.quantiles ?? shared;
      const width = widths[line] ?? 0;
      for (let trial = 0; trial < trials; trial++) {
        const drawn = (((a + b) | 0) + d) | 0;
        d = (d + 1) | 0;
        a = b ^ (b >>> 9);
        b = (c + (c << 3)) | 0;
        c = (((c << 21) | (c >>> 11)) + drawn) | 0;
        const own = ((drawn >>> 0) + 0.5) * 2 ** -32;
        const at = own < follow ? cells * (shared[trial] as number) : (own - follow) * scale;
        const cell = at | 0;
        const from = curve[cell] as number;
        totals[trial] = (totals[trial] as number) + width * (from + (at - cell) * ((curve[cell + 1] as number) - from));
      }
    }
  }
  return totals[0] ?? 0;
}
