import { source } from '@underlath/rules/schemas';
import * as z from 'zod';
import {
  basis,
  cents,
  findingState,
  givenInstant,
  id,
  instant,
  lines,
  page,
  pageQuery,
  severity,
  text,
  verdict,
  words,
} from './common.ts';
import { rectangle } from './locations.ts';
import { photo, photoThumb } from './photos.ts';
import { everyone, route } from './route.ts';

/** What the severity table needs beyond the measurements. Absent means not known. */
export const findingContext = z.strictObject({
  role: z.enum(['gravity', 'lateral', 'envelope', 'finish', 'hazard']).optional(),
  memberKind: z.enum(['joist', 'beam', 'post', 'seat', 'hanger', 'plate', 'stud', 'engineered']).optional(),
  storiesAbove: z.int().min(0).max(4).optional(),
  carriesStoryOrRoof: z.boolean().optional(),
  occupiedBelow: z.boolean().optional(),
  shored: z.boolean().optional(),
  positiveConnection: z.boolean().optional(),
  storyShare: z.number().min(0).max(1).optional(),
  disturbed: z.boolean().optional(),
});

export { source };

/** The answer of a check, in one language; the shape everyone relies on. */
export const checkAnswer = z.object({
  checkId: z.string(),
  rulesVersion: z.string(),
  edition: z.string(),
  verdict,
  ratio: z.number().nullable(),
  remaining: z.number().min(0).max(1).nullable(),
  values: z.record(z.string(), z.object({ value: z.union([z.number(), z.string(), z.boolean()]), unit: z.string() })),
  severity,
  reasons: z.array(z.string()),
  missing: z.array(z.string()),
  /** What was taken for inputs left out; `source` is the id of one of `sources`. */
  assumed: z.array(z.object({ input: z.string(), text: z.string(), source: z.string() })),
  sources: z.array(source),
  cautions: z.array(z.string()),
  referrals: z.array(z.enum(['engineer', 'official', 'specialist'])),
  repairs: z.array(z.string()),
});

export const inputs = z.record(z.string(), z.unknown());

export const judgment = z.object({
  id,
  seq: z.int(),
  checkId: z.string(),
  rulesVersion: z.string(),
  edition: z.string(),
  inputs,
  context: findingContext,
  /** In the language asked for with Accept-Language (en or es). */
  /** The answer of the check and how the rules that decided are known, where their documents were not read. */
  answer: checkAnswer.extend({ restsOn: z.array(basis.exclude(['published'])) }),
  judgedAt: instant,
  judgedBy: z.object({ id, name: z.string() }),
});

export const findingRow = z.object({
  id,
  version: z.int(),
  projectId: id,
  locationId: id,
  locationName: z.string(),
  number: z.int(),
  checkId: z.string(),
  title: z.string(),
  note: z.string(),
  state: findingState,
  stateReason: z.string().nullable(),
  extent: rectangle.nullable(),
  verdict: verdict.nullable(),
  severity: severity.nullable(),
  /** Printed price of its own lines, before overhead and profit; null when not priced, or for whom the company shows no money to. */
  linesCents: cents.nullable(),
  changeOrderId: id.nullable(),
  seenAt: instant,
  createdAt: instant,
  createdBy: z.object({ id, name: z.string() }),
  photos: z.array(photoThumb),
});

export const finding = findingRow.extend({
  context: findingContext,
  photos: z.array(photo),
  judgments: z.array(judgment),
  /** Plain words for the client, from the check. */
  client: z.object({ found: text, why: text, ifNot: text }).nullable(),
});

const byProject = z.object({ projectId: id });
const byId = z.object({ findingId: id });
const measured = { inputs, edition: z.string().max(60).optional(), context: findingContext.default({}) };

export const findingRoutes = {
  listFindings: route({
    name: 'listFindings',
    method: 'GET',
    path: '/projects/:projectId/findings',
    permission: everyone,
    summary: 'Findings of a project with their photos, newest first',
    params: byProject,
    query: pageQuery.extend({
      severity: severity.optional(),
      state: findingState.optional(),
      locationId: id.optional(),
      q: z.string().max(120).optional(),
    }),
    answers: { 200: page(findingRow) },
  }),
  createFinding: route({
    name: 'createFinding',
    method: 'POST',
    path: '/projects/:projectId/findings',
    permission: everyone,
    summary: 'Record a finding and judge it; measurements may be missing, then it cannot tell yet',
    idempotent: true,
    params: byProject,
    body: z.strictObject({
      id: id.optional(),
      locationId: id,
      checkId: z.string().max(80),
      title: words(120).optional(),
      note: lines(4000).default(''),
      extent: rectangle.nullable().default(null),
      seenAt: givenInstant,
      photoIds: z.array(id).max(60).default([]),
      ...measured,
    }),
    answers: { 201: finding },
  }),
  getFinding: route({
    name: 'getFinding',
    method: 'GET',
    path: '/findings/:findingId',
    permission: everyone,
    summary: 'A finding with every judgment it ever had',
    params: byId,
    answers: { 200: finding },
  }),
  changeFinding: route({
    name: 'changeFinding',
    method: 'PATCH',
    path: '/findings/:findingId',
    permission: everyone,
    summary: 'Change title, note, place or extent',
    versioned: true,
    params: byId,
    body: z.strictObject({
      title: words(120).optional(),
      note: lines(4000).optional(),
      locationId: id.optional(),
      extent: rectangle.nullable().optional(),
    }),
    answers: { 200: finding },
  }),
  judgeFinding: route({
    name: 'judgeFinding',
    method: 'POST',
    path: '/findings/:findingId/judgments',
    permission: everyone,
    summary: 'Measure again: adds a judgment, the earlier ones stay',
    idempotent: true,
    params: byId,
    body: z.strictObject(measured),
    answers: { 201: finding },
  }),
  attachPhotos: route({
    name: 'attachPhotos',
    method: 'POST',
    path: '/findings/:findingId/photos',
    permission: everyone,
    summary: 'Add photos of the same project to a finding',
    params: byId,
    body: z.strictObject({ photoIds: z.array(id).min(1).max(60) }),
    answers: { 200: finding },
  }),
  moveFinding: route({
    name: 'moveFinding',
    method: 'POST',
    path: '/findings/:findingId/state',
    permission: everyone,
    summary:
      'Withdraw (with a reason), mark repaired, or mark proven (a later measurement meets and a photo before cover is there)',
    versioned: true,
    params: byId,
    body: z.strictObject({
      state: z.enum(['withdrawn', 'repaired', 'proven']),
      reason: lines(1000).default(''),
    }),
    answers: { 200: finding },
  }),
} as const;

export type CheckAnswer = z.infer<typeof checkAnswer>;
export type Judgment = z.infer<typeof judgment>;
export type FindingRow = z.infer<typeof findingRow>;
export type Finding = z.infer<typeof finding>;
export type FindingContext = z.infer<typeof findingContext>;
