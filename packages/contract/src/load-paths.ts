import * as z from 'zod';
import { locale, severity, verdict, words } from './common.ts';
import { source } from './findings.ts';
import { route } from './route.ts';

const share = z.number().min(0).max(1);
const loadLb = z.number().min(0).max(1_000_000);
const lengthFt = z.number().positive().max(200);
const momentFtLb = z.number().min(0).max(100_000_000);

export const linkRole = z.enum([
  'top-plate',
  'panels',
  'posts',
  'hold-down',
  'sill-bolts',
  'footing',
  'member',
  'hanger',
  'seat',
  'beam',
  'post',
]);
export const linkState = z.enum(['unseen', 'sound', 'findings']);

/** One part the load passes through. Absent means not known. */
export const loadPathLink = z.strictObject({
  name: words(60),
  role: linkRole,
  state: linkState,
  /** Share left, one for each finding; the smallest counts. */
  remaining: z.array(share).max(60).optional(),
  /** Load it was meant to carry, in the path's own load. */
  intendedLb: loadLb.optional(),
  /** Hold-downs: the wall's load is tensionLb x leverFt / heightFt, with the moments below where they are told. */
  tensionLb: loadLb.optional(),
  leverFt: lengthFt.optional(),
  /** Moment of the stories above about the foot of the segment. */
  momentAboveFtLb: momentFtLb.optional(),
  /** Moment of the dead load that keeps the end down, already reduced by its factor. */
  resistingFtLb: momentFtLb.optional(),
});

/** Links in series. */
export const loadPathSegment = z.strictObject({
  name: words(60),
  lengthFt: lengthFt.optional(),
  heightFt: lengthFt.optional(),
  links: z.array(loadPathLink).min(1).max(60),
});

/** Segments side by side. */
export const loadPath = z.strictObject({
  kind: z.enum(['wall-line', 'gravity-line', 'floor-line']),
  storiesAbove: z.int().min(0).max(4).optional(),
  /** Share of the story's resistance this line was meant to give. */
  storyShare: share.optional(),
  shored: z.boolean().optional(),
  demandLb: loadLb.optional(),
  segments: z.array(loadPathSegment).min(1).max(60),
});

const linkWorth = z.object({
  name: z.string(),
  role: linkRole,
  state: linkState,
  remaining: share.nullable(),
  intendedLb: z.number().nullable(),
  atMostLb: z.number().nullable(),
});

const segmentWorth = z.object({
  name: z.string(),
  intendedLb: z.number().nullable(),
  atMostLb: z.number().nullable(),
  remaining: share.nullable(),
  governing: z.string().nullable(),
  unseen: z.array(z.string()),
  /** Seen, with findings that give no share left. */
  unmeasured: z.array(z.string()),
  links: z.array(linkWorth),
});

/** What a load path is worth, in one language. While `known` is false every figure is "at most". */
export const loadPathAnswer = z.object({
  rulesVersion: z.string(),
  segments: z.array(segmentWorth),
  intendedLb: z.number().nullable(),
  atMostLb: z.number().nullable(),
  remaining: share.nullable(),
  known: z.boolean(),
  verdict,
  ratio: z.number().nullable(),
  governing: z.array(z.string()),
  openNext: z.array(
    z.object({
      segment: z.string(),
      link: z.string(),
      couldLowerToLb: z.number().nullable(),
      couldLowerToShare: share.nullable(),
      why: z.string(),
    }),
  ),
  /** Roles that occur more than once: how many there are, were measured, and lost strength. */
  likeParts: z.array(z.object({ role: linkRole, total: z.int(), seen: z.int(), bad: z.int() })),
  severity,
  reasons: z.array(z.string()),
  sources: z.array(source),
  cautions: z.array(z.string()),
  referrals: z.array(z.enum(['engineer', 'official', 'specialist'])),
});

export const loadPathRoutes = {
  evaluateLoadPath: route({
    name: 'evaluateLoadPath',
    method: 'POST',
    path: '/load-paths/evaluate',
    permission: 'public',
    summary: 'What a wall, gravity or floor line is worth as far as it has been seen; stores nothing',
    query: z.object({ locale: locale.optional() }),
    body: loadPath,
    answers: { 200: loadPathAnswer },
  }),
} as const;

export type LoadPathAnswer = z.infer<typeof loadPathAnswer>;
