import * as z from 'zod';

/** The most a line or a total may come to either way, cents: what is kept takes no more. */
export const MAX_CENTS = 2_000_000_000;

const cents = z.int().min(-MAX_CENTS).max(MAX_CENTS);
const notNegative = z.int().min(0).max(MAX_CENTS);
const percentage = z.number().min(0).max(100);
const amount = z.number().min(0).max(1e9);

/**
 * What one range may take, counted in draws of about 25 ns: 10,000 trials of 100 lines fit. A line costs a draw for every
 * trial, and its curve, which is measured in draws too, on a server that has not warmed up yet.
 */
export const MAX_RANGE_WORK = 2_000_000;
const CURVE_DRAWS = 10_000;

/** Hours one unit takes, low up to likely up to high. */
export const hoursSchema = z
  .strictObject({ low: amount, likely: amount, high: amount })
  .refine(({ low, likely, high }) => low <= likely && likely <= high, {
    error: ({ input }) => {
      const { low, likely, high } = input as { low: number; likely: number; high: number };
      return `hours came as ${low}, ${likely}, ${high}; allowed is low up to likely up to high`;
    },
  });

/** One line to price. Rates are integer cents; equipment, subcontract and other are sums for the whole line. */
export const estimateLineSchema = z
  .strictObject({
    name: z.string().min(1).max(200),
    /** Lines of one location vary together in the range; those without one count as one place. */
    location: z.string().max(200).optional(),
    quantity: amount,
    unit: z.string().min(1).max(20),
    hoursPerUnit: hoursSchema,
    /** Burdened, per hour. */
    rateCents: notNegative,
    materialCentsPerUnit: notNegative,
    wastePct: percentage,
    /** Waste is added before rounding up to whole pieces, once. */
    wholeUnits: z.boolean().optional(),
    materialTaxPct: percentage,
    /** `purchase` (also when left out) is a cost; `sale` is taken on the selling price of the material and carries no overhead or profit. */
    taxOn: z.enum(['purchase', 'sale']).optional(),
    equipmentCents: notNegative,
    subcontractCents: notNegative,
    /** May be negative: a sum given back. */
    otherCents: cents,
    minimumCents: notNegative.optional(),
    /** Lines of one visit share one minimum. */
    visit: z.string().max(200).optional(),
    /** Work left out: the same line with every part given back. */
    credit: z.boolean().optional(),
  })
  .refine(({ credit, minimumCents }) => !credit || !minimumCents, {
    path: ['minimumCents'],
    error: 'a credit has no minimum charge; allowed is 0 or nothing',
  });
export type EstimateLine = z.infer<typeof estimateLineSchema>;

export const PERCENT_PARTS = ['labor', 'material', 'subcontract', 'other'] as const;
export type PercentPart = (typeof PERCENT_PARTS)[number];

export const RANGE_SHAPES = ['pert-beta', 'triangular'] as const;
export type RangeShape = (typeof RANGE_SHAPES)[number];

/** How the hours of the lines may turn out. */
export const rangeSchema = z
  .strictObject({
    trials: z.int().min(10).max(100_000),
    /** The same seed gives the same answer. */
    seed: z.int(),
    /** Rank correlation of the hours of any two lines of one location. */
    correlation: z.number().min(0).max(1),
    /** The same of two lines of different locations, since one crew has one pace; half of `correlation` when left out. */
    acrossPlaces: z.number().min(0).max(1).optional(),
    shape: z.enum(RANGE_SHAPES),
  })
  .refine(({ correlation, acrossPlaces = 0 }) => acrossPlaces <= correlation, {
    path: ['acrossPlaces'],
    error: ({ input }) => {
      const { correlation, acrossPlaces } = input as { correlation: number; acrossPlaces: number };
      return `acrossPlaces came as ${acrossPlaces}; allowed is up to the correlation within one place, ${correlation}`;
    },
  });
export type RangeInput = z.infer<typeof rangeSchema>;

/** How much work the range of so many lines is, in draws. */
const rangeWork = (lines: number, trials: number): number => lines * (trials + CURVE_DRAWS);

export const estimateSchema = z
  .strictObject({
    lines: z.array(estimateLineSchema).max(2000),
    overheadPct: percentage,
    profitPct: percentage,
    /** `stacked` takes profit on cost plus overhead, `added` on cost alone. */
    stacking: z.enum(['stacked', 'added']),
    /** What overhead and profit are taken on; everything when left out. Material carries its tax, other carries equipment and minimums. */
    percentOf: z.array(z.enum(PERCENT_PARTS)).min(1).max(4).optional(),
    range: rangeSchema.optional(),
  })
  .refine(({ lines, range }) => !range || rangeWork(lines.length, range.trials) <= MAX_RANGE_WORK, {
    path: ['range', 'trials'],
    error: ({ input }) => {
      const { lines, range } = input as { lines: EstimateLine[]; range: { trials: number } };
      return `${range.trials} trials of ${lines.length} lines are more than one range takes; take fewer of either`;
    },
  });
export type EstimateInput = z.infer<typeof estimateSchema>;
