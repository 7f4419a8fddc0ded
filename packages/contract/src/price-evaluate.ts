import { contractSchema, estimateSchema, RANGE_SHAPES, type RangeShape } from '@underlath/rules/pricing';
import * as z from 'zod';
import { day, locale } from './common.ts';
import { route } from './route.ts';

/** What is worked out for one request may be more than one entry may be. */
const cents = z.int();

/** How hours lie between low and high. */
export const rangeShape = z.enum(RANGE_SHAPES);

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
    body: estimateSchema,
    answers: { 200: estimateAnswer },
  }),
  evaluateContract: route({
    name: 'evaluateContract',
    method: 'POST',
    path: '/contracts/evaluate',
    permission: 'public',
    summary: 'Where a contract stands after its events; stores nothing',
    body: contractSchema,
    answers: { 200: contractAnswer },
  }),
} as const;

export type EstimateAnswer = z.infer<typeof estimateAnswer>;
export type ContractAnswer = z.infer<typeof contractAnswer>;
export type PriceRangeAnswer = z.infer<typeof priceRange>;
export type { RangeShape };
