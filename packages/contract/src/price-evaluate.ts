import * as z from 'zod';
import { day, givenDay, locale } from './common.ts';
import { route } from './route.ts';

const sum = z.int().min(-2_000_000_000).max(2_000_000_000);
const sumUp = z.int().min(0).max(2_000_000_000);
/** What is worked out for one request may be more than one entry may be. */
const cents = z.int();
const percentage = z.number().min(0).max(100);
const amount = z.number().min(0).max(1e9);
const percentPart = z.enum(['labor', 'material', 'subcontract', 'other']);

/** How hours lie between low and high. */
export const rangeShape = z.enum(['pert-beta', 'triangular']);

/** Field by field what the rules package takes (`estimateSchema`), which also sees what no single field shows. */
export const estimateRequest = z.strictObject({
  lines: z
    .array(
      z.strictObject({
        name: z.string().min(1).max(200),
        location: z.string().max(200).optional(),
        quantity: amount,
        unit: z.string().min(1).max(20),
        hoursPerUnit: z.strictObject({ low: amount, likely: amount, high: amount }),
        rateCents: sumUp,
        materialCentsPerUnit: sumUp,
        wastePct: percentage,
        wholeUnits: z.boolean().optional(),
        materialTaxPct: percentage,
        taxOn: z.enum(['purchase', 'sale']).optional(),
        equipmentCents: sumUp,
        subcontractCents: sumUp,
        otherCents: sum,
        minimumCents: sumUp.optional(),
        visit: z.string().max(200).optional(),
        credit: z.boolean().optional(),
      }),
    )
    .max(2000),
  overheadPct: percentage,
  profitPct: percentage,
  stacking: z.enum(['stacked', 'added']),
  percentOf: z.array(percentPart).min(1).max(4).optional(),
  range: z
    .strictObject({
      trials: z.int().min(10).max(100_000),
      seed: z.int(),
      correlation: z.number().min(0).max(1),
      /** Half of `correlation` when left out, and never more than it. */
      acrossPlaces: z.number().min(0).max(1).optional(),
      shape: rangeShape,
    })
    .optional(),
});

export const priceRange = z.object({
  meanCents: cents,
  sdCents: cents,
  p50Cents: cents,
  p80Cents: cents,
  p90Cents: cents,
  /** By formula, for the same definitions and without a draw; null where a minimum is open: none is closed then. */
  analyticMeanCents: cents.nullable(),
  analyticSdCents: cents.nullable(),
  /** Visits whose hours may or may not reach their minimum. */
  openMinimums: z.array(z.string()),
  drivers: z.array(z.object({ name: z.string(), location: z.string().optional(), share: z.number() })),
  /** Rank correlation of the hours of two lines of different places, as it was taken. */
  acrossPlaces: z.number(),
});

export const estimateAnswer = z.object({
  lines: z.array(
    z.object({
      name: z.string(),
      laborCents: cents,
      materialCents: cents,
      taxCents: cents,
      subcontractCents: cents,
      equipmentCents: cents,
      /** With what a minimum charge adds, so that the parts add up to the line. */
      otherCents: cents,
      /** What of `otherCents` a minimum charge adds. */
      minimumCents: cents,
      totalCents: cents,
      steps: z.array(z.string()),
    }),
  ),
  subtotalCents: cents,
  overheadCents: cents,
  profitCents: cents,
  totalCents: cents,
  range: priceRange
    .extend({
      /** What was taken for granted about how hours vary together. */
      notes: z.array(z.string()),
    })
    .optional(),
});

const days = z.int().min(-10_000).max(10_000);

/** Field by field what the rules package takes (`contractSchema`). */
export const contractRequest = z.strictObject({
  originalCents: sumUp,
  originalDays: z.int().min(0).max(10_000),
  start: givenDay.optional(),
  dayKind: z.enum(['calendar', 'working']).optional(),
  holidays: z.array(givenDay).max(1000).optional(),
  retainagePct: percentage,
  netDecreaseReturnsOverheadAndProfit: z.boolean(),
  events: z
    .array(
      z.discriminatedUnion('kind', [
        z.strictObject({
          kind: z.literal('change'),
          state: z.enum(['approved', 'pending', 'declined', 'replaced']),
          cents: sum,
          days,
          on: givenDay,
        }),
        z.strictObject({
          kind: z.literal('allowance'),
          allowedCents: sumUp,
          spentCents: sumUp,
          overheadProfitPct: percentage,
          on: givenDay,
        }),
        z.strictObject({ kind: z.literal('payment'), cents: sumUp, on: givenDay }),
        z.strictObject({ kind: z.literal('completed'), cents: sumUp, on: givenDay }),
      ]),
    )
    .max(5000),
  thisChange: z.strictObject({ cents: sum, days }).optional(),
});

export const contractAnswer = z.object({
  previousChangesCents: cents,
  beforeCents: cents,
  afterCents: cents,
  daysBefore: z.int(),
  daysAfter: z.int(),
  finish: day.optional(),
  pendingCents: cents,
  pendingDays: z.int(),
  completedCents: cents,
  retainageCents: cents,
  earnedLessRetainageCents: cents,
  paidCents: cents,
  dueCents: cents,
  balanceToFinishCents: cents,
});

export const priceEvaluateRoutes = {
  evaluateEstimate: route({
    name: 'evaluateEstimate',
    method: 'POST',
    path: '/estimates/evaluate',
    permission: 'public',
    summary: 'Price lines, and draw the range the total may lie in; stores nothing',
    query: z.object({ locale: locale.optional() }),
    body: estimateRequest,
    answers: { 200: estimateAnswer },
  }),
  evaluateContract: route({
    name: 'evaluateContract',
    method: 'POST',
    path: '/contracts/evaluate',
    permission: 'public',
    summary: 'Where a contract stands after its events; stores nothing',
    body: contractRequest,
    answers: { 200: contractAnswer },
  }),
} as const;

export type EstimateRequest = z.output<typeof estimateRequest>;
export type EstimateAnswer = z.infer<typeof estimateAnswer>;
export type ContractAnswer = z.infer<typeof contractAnswer>;
export type PriceRangeAnswer = z.infer<typeof priceRange>;
export type RangeShape = z.infer<typeof rangeShape>;
