import { LINK_ROLES, LINK_STATES, LOAD_PATH_KINDS, REFERRALS } from '@underlath/rules';
import * as z from 'zod';
import { id, instant, line, locale, severity, verdict, words } from './common.ts';
import { source } from './findings.ts';
import { rectangle } from './locations.ts';
import { everyone, office, route } from './route.ts';

const share = z.number().min(0).max(1);
const loadLb = z.number().min(0).max(1_000_000);
const lengthFt = z.number().positive().max(200);
const momentFtLb = z.number().min(0).max(100_000_000);

export const linkRole = z.enum([...new Set(Object.values(LINK_ROLES).flat())]);
export const linkState = z.enum(LINK_STATES);

/** One part the load passes through. Absent means not known. */
export const loadPathLink = z.strictObject({
  name: words(60),
  role: linkRole,
  state: linkState,
  /** Share left, one for each finding. Of one mode (the same line of nails, the same rod) they multiply, else the smallest counts. */
  remaining: z
    .array(z.union([share, z.strictObject({ share, mode: line(40).min(1) })]))
    .max(60)
    .optional(),
  /** Findings beside these that give no share left. */
  unmeasured: z.int().min(0).max(60).optional(),
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
  /** Usual links it has none of, such as a beam where joists land on a wall. Any other that is not listed counts as unseen. */
  without: z.array(linkRole).max(11).optional(),
  links: z.array(loadPathLink).min(1).max(60),
});

/** Segments side by side. */
export const loadPath = z.strictObject({
  kind: z.enum(LOAD_PATH_KINDS),
  /** Left out, some may stand there: a hold-down without their moment is "at most". */
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
  unmeasured: z.boolean(),
  /** A hold-down not charged yet with the stories above. */
  momentOpen: z.boolean(),
  /** A hold-down of which the stories above leave nothing. */
  usedUp: z.boolean(),
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
  /** Usual roles that are not listed; they count as unseen. */
  notListed: z.array(linkRole),
  /** Seen, with findings of which some give no share left. */
  unmeasured: z.array(z.string()),
  /** Hold-downs not charged yet with the stories above. */
  momentOpen: z.array(z.string()),
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
  notListed: z.array(linkRole),
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
  referrals: z.array(z.enum(REFERRALS)),
});

/** A link as it is kept: its shares come from the judgments of its findings. */
const keptLink = loadPathLink.omit({ remaining: true, unmeasured: true }).extend({
  /** Its findings, all of this place; needed where the state says so. */
  findingIds: z.array(id).max(60).default([]),
  /** Who says that it is sound: a photo of this project. */
  photoId: id.nullable().default(null),
  /** Where it is on the elevation. */
  at: rectangle.nullable().default(null),
  /** Where the link stands for many like parts: how many there are, were opened, and were bad. */
  parts: z
    .strictObject({ total: z.int().min(1).max(10_000), opened: z.int().min(0), bad: z.int().min(0) })
    .nullable()
    .default(null),
});

const keptSegment = loadPathSegment.omit({ links: true }).extend({
  /** Left end on the elevation, inches. */
  fromIn: z.number().min(0).max(2400).nullable().default(null),
  links: z.array(keptLink).min(1).max(60),
});

const kept = {
  name: words(80),
  kind: loadPath.shape.kind,
  /** Left out, it is what the place says. */
  storiesAbove: z.int().min(0).max(4).nullable(),
  storyShare: share.nullable(),
  shored: z.boolean(),
  demandLb: loadLb.nullable(),
  /** The wall line that stands on this one, and the depth of the floor between them: hold-downs without a moment take theirs from it. */
  lineAbove: z.strictObject({ loadPathId: id, floorDepthIn: z.number().min(0).max(60) }).nullable(),
  /** Where the intended capacities and the demand come from, such as a sheet of the drawings. */
  capacitiesFrom: line(200),
  segments: z.array(keptSegment).min(1).max(60),
};

/** How many of many like parts to open, by the check `sample.finite-lot`. */
const sampling = z.object({
  /** The link or the role that occurs more than once. */
  name: z.string(),
  total: z.int(),
  opened: z.int(),
  bad: z.int(),
  openMore: z.int(),
  words: z.string(),
});

/** What the line above brings to the foot of each segment, and how it was worked out or what is missing for it. */
const fromAbove = z.object({
  loadPathId: id,
  name: z.string(),
  momentsFtLb: z.array(z.number().nullable()),
  words: z.array(z.string()),
});

/** A stored load path and what it is worth now. With `repaired`, what it would be worth. */
export const storedLoadPath = z.object({
  id,
  version: z.int(),
  projectId: id,
  locationId: id,
  ...kept,
  /** Findings taken as repaired in this answer; empty for what is. */
  repaired: z.array(id),
  answer: loadPathAnswer,
  /** Null while no line is said to stand on this one. */
  fromAbove: fromAbove.nullable(),
  sampling: z.array(sampling),
  changedAt: instant,
});

/** A strength that a check of this place worked out, to be taken over for a link. */
export const capacityProposal = z.object({
  findingId: id,
  number: z.int(),
  title: z.string(),
  role: linkRole,
  intendedLb: z.number(),
  why: z.string(),
});

/** A wall line of the project that may stand on one of this place. */
export const lineAboveChoice = z.object({
  loadPathId: id,
  name: z.string(),
  place: z.string(),
  demandLb: z.number().nullable(),
  /** Its wall is as wide and one story higher. */
  fits: z.boolean(),
});

const byPlace = z.object({ locationId: id });
const byId = z.object({ loadPathId: id });
const idList = z
  .string()
  .max(4000)
  .transform((list) => list.split(',').filter(Boolean))
  .pipe(z.array(id).max(60));

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
  listLoadPaths: route({
    name: 'listLoadPaths',
    method: 'GET',
    path: '/locations/:locationId/load-paths',
    permission: everyone,
    summary: 'Load paths of a place and what each is worth',
    params: byPlace,
    answers: { 200: z.object({ items: z.array(storedLoadPath) }) },
  }),
  createLoadPath: route({
    name: 'createLoadPath',
    method: 'POST',
    path: '/locations/:locationId/load-paths',
    permission: office,
    summary: 'Describe a line of this place as a chain of links',
    idempotent: true,
    params: byPlace,
    body: z.strictObject({
      id: id.optional(),
      ...kept,
      storiesAbove: kept.storiesAbove.default(null),
      storyShare: kept.storyShare.default(null),
      shored: kept.shored.default(false),
      demandLb: kept.demandLb.default(null),
      lineAbove: kept.lineAbove.optional(),
      capacitiesFrom: kept.capacitiesFrom.default(''),
    }),
    answers: { 201: storedLoadPath },
  }),
  getLoadPath: route({
    name: 'getLoadPath',
    method: 'GET',
    path: '/load-paths/:loadPathId',
    permission: everyone,
    summary: 'A load path; with `repaired`, what it would be worth once these findings are repaired',
    params: byId,
    query: z.object({ repaired: idList.optional() }),
    answers: { 200: storedLoadPath },
  }),
  changeLoadPath: route({
    name: 'changeLoadPath',
    method: 'PATCH',
    path: '/load-paths/:loadPathId',
    permission: office,
    summary: 'Change a load path; segments are replaced as a whole',
    versioned: true,
    params: byId,
    body: z.strictObject(kept).partial(),
    answers: { 200: storedLoadPath },
  }),
  removeLoadPath: route({
    name: 'removeLoadPath',
    method: 'DELETE',
    path: '/load-paths/:loadPathId',
    permission: office,
    summary: 'Remove a load path; its findings stay',
    versioned: true,
    params: byId,
    answers: { 204: null },
  }),
  listCapacities: route({
    name: 'listCapacities',
    method: 'GET',
    path: '/locations/:locationId/capacities',
    permission: office,
    summary: 'Strengths that checks of this place worked out, to be taken over for links',
    params: byPlace,
    answers: { 200: z.object({ items: z.array(capacityProposal) }) },
  }),
  listLinesAbove: route({
    name: 'listLinesAbove',
    method: 'GET',
    path: '/locations/:locationId/lines-above',
    permission: office,
    summary: 'Wall lines of the project that may stand on a line of this place, those first that fit it',
    params: byPlace,
    answers: { 200: z.object({ items: z.array(lineAboveChoice) }) },
  }),
} as const;

export type LoadPathAnswer = z.infer<typeof loadPathAnswer>;
export type StoredLoadPath = z.infer<typeof storedLoadPath>;
export type KeptSegment = z.infer<typeof keptSegment>;
export type KeptLink = z.infer<typeof keptLink>;
export type LineAboveChoice = z.infer<typeof lineAboveChoice>;
export type CapacityProposal = z.infer<typeof capacityProposal>;
