import {
  alternate,
  estimateContent,
  exclusion,
  lineOverride,
  manualLine,
  pricedScope,
  repairChoice,
} from '@underlath/rules/documents';
import * as z from 'zod';
import { cents, currency, id, instant, text } from './common.ts';
import { priceRange, rangeShape } from './price-evaluate.ts';
import { costBookEditors, office, route } from './route.ts';

/** The company's cost book, one version. The book's own shape is `costBookSchema` of the rules package; a wrong one is refused row by row. */
export const costBook = z.object({
  version: z.int(),
  /** True while the invented starter values have not been replaced. */
  placeholder: z.boolean(),
  book: z.record(z.string(), z.unknown()),
  createdAt: instant,
  createdBy: z.object({ id, name: z.string() }).nullable(),
});

/** A row of a cost book that differs, its cells as they stand in the CSV. */
export const costBookChange = z.object({
  kind: z.enum(['added', 'changed', 'removed']),
  row: z.enum(['settings', 'trade', 'burden', 'item', 'fee']),
  id: z.string(),
  name: z.string(),
  cells: z.array(z.object({ column: z.string(), was: z.string(), is: z.string() })),
});

/** What a file would make of the cost book. Nothing is saved: save `book` with `version` in `If-Match`. */
export const costBookPreview = z.object({
  /** The version it was compared with. */
  version: z.int(),
  book: z.record(z.string(), z.unknown()),
  changes: z.array(costBookChange),
});

export const repairOption = z.object({
  repairId: z.string(),
  title: text,
  chosen: z.boolean(),
  fromCheck: z.boolean(),
});

/** What an alternate comes to alone, and how far that is from the finding's own price; null while either lacks a rate. */
export const alternatePrice = z.object({ scope: pricedScope, differenceCents: z.int().nullable() });

/** A finding's price alone. In a change order, shared work is counted once. */
export const estimate = z.object({
  findingId: id,
  findingVersion: z.int(),
  saved: z.boolean(),
  options: z.array(repairOption),
  choices: z.array(repairChoice),
  manualLines: z.array(manualLine),
  overrides: z.array(lineOverride),
  exclusions: z.array(exclusion),
  alternates: z.array(alternate),
  scope: pricedScope,
  /** In the order of the alternates; in no sum. */
  alternatePrices: z.array(alternatePrice),
});

/** How much a price may come to, drawn from the hours low, likely and high of the cost book. */
export const estimateRange = z.object({
  currency,
  /** The sum of the printed lines, overhead and profit included, at likely hours. */
  totalCents: cents,
  /** Null where the cost book lacks a rate. */
  range: priceRange.nullable(),
  correlation: z.number(),
  shape: rangeShape,
  trials: z.int(),
  /** How well the place was seen when it was priced. */
  seen: text,
});

const byFinding = z.object({ findingId: id });
const byShape = z.object({ shape: rangeShape.default('pert-beta') });

export const priceRoutes = {
  getCostBook: route({
    name: 'getCostBook',
    method: 'GET',
    path: '/cost-book',
    permission: office,
    summary: "The company's newest cost book",
    answers: { 200: costBook },
  }),
  saveCostBook: route({
    name: 'saveCostBook',
    method: 'PUT',
    path: '/cost-book',
    permission: costBookEditors,
    summary: 'Save a new version of the cost book; what was sent keeps the version it named',
    versioned: true,
    body: z.strictObject({ book: z.record(z.string(), z.unknown()) }),
    answers: { 200: costBook },
  }),
  listCostBooks: route({
    name: 'listCostBooks',
    method: 'GET',
    path: '/cost-book/versions',
    permission: office,
    summary: 'Versions of the cost book, newest first',
    answers: { 200: z.object({ items: z.array(costBook.omit({ book: true })) }) },
  }),
  getCostBookVersion: route({
    name: 'getCostBookVersion',
    method: 'GET',
    path: '/cost-book/versions/:bookVersion',
    permission: office,
    summary: 'One version of the cost book, as an estimate or a sent document names it',
    params: z.object({ bookVersion: z.coerce.number().int().min(0).max(1_000_000) }),
    answers: { 200: costBook },
  }),
  exportCostBook: route({
    name: 'exportCostBook',
    method: 'GET',
    path: '/cost-book/csv',
    permission: office,
    summary: 'The newest cost book as CSV (RFC 4180, UTF-8), one set of columns with their units in the header',
    answers: { 200: 'text/csv' },
  }),
  previewCostBookCsv: route({
    name: 'previewCostBookCsv',
    method: 'POST',
    path: '/cost-book/csv/preview',
    permission: costBookEditors,
    summary:
      'Read a CSV as a cost book and say what it would change; saves nothing, and a wrong cell is named by row and column',
    body: z.strictObject({ csv: z.string().min(1).max(1_000_000) }),
    answers: { 200: costBookPreview },
  }),
  getEstimate: route({
    name: 'getEstimate',
    method: 'GET',
    path: '/findings/:findingId/estimate',
    permission: office,
    summary: "A finding's repair and price with today's cost book; suggested when none was saved",
    params: byFinding,
    answers: { 200: estimate },
  }),
  getEstimateRange: route({
    name: 'getEstimateRange',
    method: 'GET',
    path: '/findings/:findingId/estimate/range',
    permission: office,
    summary: "What a finding's repair may come to: P50, P80, P90 and what drives the spread",
    params: byFinding,
    query: byShape,
    answers: { 200: estimateRange },
  }),
  getChangeOrderRange: route({
    name: 'getChangeOrderRange',
    method: 'GET',
    path: '/change-orders/:changeOrderId/range',
    permission: office,
    summary: 'What the findings of a change order may come to together, with the cost book of today',
    params: z.object({ changeOrderId: id }),
    query: byShape,
    answers: { 200: estimateRange },
  }),
  saveEstimate: route({
    name: 'saveEstimate',
    method: 'PUT',
    path: '/findings/:findingId/estimate',
    permission: office,
    summary:
      'Choose repairs, set lines by hand with a reason, add lines, exclusions and alternates; the finding becomes priced',
    versioned: true,
    params: byFinding,
    body: estimateContent,
    answers: { 200: estimate },
  }),
  previewEstimate: route({
    name: 'previewEstimate',
    method: 'POST',
    path: '/findings/:findingId/estimate/preview',
    permission: office,
    summary: 'What an estimate would come to, and its range, while it is being edited; saves nothing',
    params: byFinding,
    query: byShape,
    body: estimateContent,
    answers: { 200: z.object({ estimate, range: estimateRange }) },
  }),
} as const;

export type EstimateRange = z.infer<typeof estimateRange>;
export type CostBook = z.infer<typeof costBook>;
export type CostBookChange = z.infer<typeof costBookChange>;
export type CostBookPreview = z.infer<typeof costBookPreview>;
export type Estimate = z.infer<typeof estimate>;
