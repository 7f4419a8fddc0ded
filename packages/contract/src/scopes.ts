import { WORK_UNITS } from '@underlath/rules/pricing';
import * as z from 'zod';
import { existingWork, findingState, id, locale, severity, words } from './common.ts';
import { rectangle } from './locations.ts';
import { everyone, route } from './route.ts';

const sizeIn = z.number().positive().max(2400);
/** Rectangles of all findings together: what one place is worked out from. */
const MAX_EXTENTS = 60;
/** Pairs of rectangles of which each runs through the other: their union falls into as many pieces. */
const MAX_CROSSINGS = 200;
const amount = z.number().min(0).max(100_000);

/** Below 0, without size, or outside its place, a rectangle is refused with a pointer to the side that is wrong. */
const extent = z.strictObject({ xIn: z.number(), yIn: z.number(), widthIn: z.number(), heightIn: z.number() });
const hours = z.strictObject({ low: amount, likely: amount, high: amount });

type Extent = z.infer<typeof extent>;
const spans = (fromA: number, lengthA: number, fromB: number, lengthB: number): boolean =>
  lengthA > lengthB && fromA <= fromB && fromB + lengthB <= fromA + lengthA;
const runsThrough = (a: Extent, b: Extent): boolean =>
  spans(a.xIn, a.widthIn, b.xIn, b.widthIn) && spans(b.yIn, b.heightIn, a.yIn, a.heightIn);

function countCrossings(extents: readonly Extent[]): number {
  let count = 0;
  for (const [at, one] of extents.entries())
    for (const other of extents.slice(at + 1)) if (runsThrough(one, other) || runsThrough(other, one)) count += 1;
  return count;
}

export const scopeRequest = z.strictObject({
  location: z.strictObject({
    kind: z.enum(['wall', 'floor', 'roof']),
    widthIn: sizeIn,
    heightIn: sizeIn,
    framingSpacingIn: z.number().min(4).max(96).nullable().default(16),
    existing: z.array(existingWork).max(6).default([]),
  }),
  findings: z
    .array(
      z.strictObject({
        id: words(80),
        /** Id of a repair template, as a check names it under `repairs`. */
        repair: z.string().max(80),
        extents: z.array(extent).max(12).default([]),
        /** Amounts by operation id; also `edgeSpacingIn` and `fieldSpacingIn` of the approved nailing schedule. */
        quantities: z.record(z.string().max(80), z.number().max(100_000)).default({}),
        /** Findings whose own work comes before this one's. */
        after: z.array(z.string().max(80)).max(100).default([]),
      }),
    )
    .max(100)
    .refine((findings) => findings.reduce((sum, { extents }) => sum + extents.length, 0) <= MAX_EXTENTS, {
      error: `its findings have more than ${MAX_EXTENTS} extents together, the most that is taken`,
      abort: true,
    })
    .refine((findings) => countCrossings(findings.flatMap(({ extents }) => extents)) <= MAX_CROSSINGS, {
      error: `extents of its findings run through each other more than ${MAX_CROSSINGS} times, the most that is taken; draw what is one opening as one`,
    }),
  declined: z.array(z.string().max(80)).max(100).default([]),
  crewSize: z.int().min(1).max(100).default(2),
  hoursPerDay: z.number().min(1).max(24).default(8),
  /** Hours per unit by operation id, in place of the invented starter values. */
  hoursPerUnit: z.record(z.string().max(80), hours).default({}),
});

export const scopeOperation = z.object({
  id: z.string(),
  operation: z.string(),
  title: z.string(),
  quantity: z.object({ value: z.number(), unit: z.enum(WORK_UNITS) }),
  /** Where the amount comes from. */
  how: z.string(),
  /** True when no measurement gives the amount and the estimator should set it. */
  assumed: z.boolean(),
  area: z.array(z.object({ xIn: z.number(), yIn: z.number(), widthIn: z.number(), heightIn: z.number() })).optional(),
  members: z.array(z.string()).optional(),
  for: z.array(z.string()),
  after: z.array(z.string()),
  holdPoint: z.boolean(),
  hours: z.object({ low: z.number(), likely: z.number(), high: z.number() }),
});

/** One repair for an opened place. `naive` is what the findings would take one by one. */
export const scopeAnswer = z.object({
  operations: z.array(scopeOperation),
  unions: z.object({
    stripSf: z.number(),
    panelSf: z.number(),
    panelSheets: z.int(),
    panelNails: z.number(),
  }),
  naive: z.object({ stripSf: z.number(), panelSf: z.number() }),
  totalHours: z.object({ low: z.number(), likely: z.number(), high: z.number() }),
  /** The least it takes; waiting for inspectors, engineers and drying comes on top. */
  workingDays: z.int(),
  criticalPath: z.array(z.string()),
  shares: z.array(z.object({ finding: z.string(), aloneHours: z.number(), shareHours: z.number() })),
  conflicts: z.array(z.object({ finding: z.string(), why: z.string() })),
  credits: z.array(z.object({ operation: z.string(), title: z.string(), hours: z.number() })),
  /** Operations the cost book has no hours for; they count as none. */
  withoutHours: z.array(z.string()),
  cautions: z.array(z.string()),
});

/** A place's own scope, with who its findings are. */
export const placeScope = z.object({
  locationId: id,
  crewSize: z.int(),
  hoursPerDay: z.number(),
  /** True until the company replaces the invented starter cost book. */
  inventedHours: z.boolean(),
  findings: z.array(
    z.object({
      id,
      number: z.int(),
      title: z.string(),
      severity: severity.nullable(),
      state: findingState,
      extent: rectangle.nullable(),
      /** False for what was left out, in the request or by the client. */
      included: z.boolean(),
      /** The repairs are proposed by the check until somebody saves a price. */
      proposed: z.boolean(),
      repairs: z.array(z.string()),
    }),
  ),
  scope: scopeAnswer,
});

const idList = z
  .string()
  .max(4000)
  .transform((list) => list.split(',').filter(Boolean))
  .pipe(z.array(id).max(100));

export const scopeRoutes = {
  getPlaceScope: route({
    name: 'getPlaceScope',
    method: 'GET',
    path: '/locations/:locationId/scope',
    permission: everyone,
    summary: 'One repair scope for the open findings of a place: areas, order, hold points, days, shares; no prices',
    params: z.object({ locationId: id }),
    query: z.object({
      /** Findings to leave out, beside those the client declined. */
      declined: idList.optional(),
      /** Left out, the cost book says. */
      crewSize: z.coerce.number().int().min(1).max(100).optional(),
      hoursPerDay: z.coerce.number().min(1).max(24).optional(),
    }),
    answers: { 200: placeScope },
  }),
  evaluateScope: route({
    name: 'evaluateScope',
    method: 'POST',
    path: '/scopes/evaluate',
    permission: 'public',
    summary: 'One repair scope for the findings of a place: areas, order, hours, shares; stores nothing',
    query: z.object({ locale: locale.optional() }),
    body: scopeRequest,
    answers: { 200: scopeAnswer },
  }),
} as const;

export type ScopeRequestBody = z.output<typeof scopeRequest>;
export type ScopeAnswer = z.infer<typeof scopeAnswer>;
export type PlaceScope = z.infer<typeof placeScope>;
export type ScopeStep = z.infer<typeof scopeOperation>;
