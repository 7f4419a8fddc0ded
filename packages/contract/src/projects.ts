import * as z from 'zod';
import {
  cents,
  currency,
  day,
  givenDay,
  id,
  instant,
  locale,
  page,
  pageQuery,
  personName,
  positiveCents,
  severity,
  words,
} from './common.ts';
import { everyone, office, route } from './route.ts';
import { usState } from './us-states.ts';

/** Code editions a project can be judged under. */
export const codeEdition = z.enum(['irc-2012', 'irc-2015', 'irc-2018', 'irc-2021', 'irc-2024', 'ibc-2009', 'ibc-2015']);

const fields = {
  name: words(120),
  siteAddress: words(300),
  /** Whose laws hold there; null: not said. */
  siteState: usState.nullable(),
  /** Whose clock tells the day there, by its IANA name; null: the state's own where it has only one, else not said. */
  timeZone: words(40).nullable(),
  clientName: personName,
  clientEmail: z.email().max(254).nullable(),
  clientLocale: locale,
  yearBuilt: z.int().min(1600).max(2100).nullable(),
  stories: z.int().min(1).max(4),
  originalSumCents: positiveCents,
  originalDays: z.int().min(0).max(5000),
  startOn: givenDay.nullable(),
  codeEdition,
  standardEditions: z.array(words(40)).max(20),
  jurisdiction: words(120),
  contingencyCents: positiveCents,
};

export const project = z.object({
  id,
  version: z.int(),
  ...fields,
  // Names that were taken before are shown as they are.
  name: z.string(),
  siteAddress: z.string(),
  clientName: z.string(),
  jurisdiction: z.string(),
  siteState: z.string().nullable(),
  startOn: day.nullable(),
  codeEdition: z.string(),
  // Null for whom the company does not show it to.
  originalSumCents: positiveCents.nullable(),
  contingencyCents: positiveCents.nullable(),
  currency,
  createdAt: instant,
  updatedAt: instant,
});

export const severityCounts = z.object({
  'make-safe': z.int(),
  engineer: z.int(),
  repair: z.int(),
  record: z.int(),
});

export const projectRow = project.extend({ open: severityCounts });

/** Money and days of the contract; only approved changes and settled allowances are in the sum. */
export const contractSums = z.object({
  currency,
  originalSumCents: cents,
  approvedChangesCents: z.int(),
  /** Settled allowances, net. */
  allowancesCents: z.int(),
  currentSumCents: z.int(),
  pendingCents: z.int(),
  originalDays: z.int(),
  approvedDays: z.int(),
  currentDays: z.int(),
  pendingDays: z.int(),
  startOn: day.nullable(),
  finishOn: day.nullable(),
  contingencyCents: cents,
});

/** What needs someone, most urgent first. */
export const todo = z.object({
  kind: z.enum([
    'make-safe',
    'notice-overdue',
    'engineer',
    'notice',
    'price',
    'offer',
    'answer-question',
    'mail-failed',
    'mail-waiting',
    'await-client',
    'repair',
    'prove',
    'photo-failed',
    'measure',
  ]),
  severity: severity.nullable(),
  title: z.string(),
  where: z.string(),
  findingId: id.nullable(),
  changeOrderId: id.nullable(),
  since: instant,
  /** The last day of a notice; null where there is none. */
  dueOn: day.nullable(),
});

export const projectOverview = z.object({
  project,
  /** Null for whom the company does not show it to. */
  contract: contractSums.nullable(),
  open: severityCounts,
  todo: z.array(todo),
  photoCount: z.int(),
  findingCount: z.int(),
});

const byId = z.object({ projectId: id });

export const projectRoutes = {
  listProjects: route({
    name: 'listProjects',
    method: 'GET',
    path: '/projects',
    permission: everyone,
    summary: 'Projects, newest first',
    query: pageQuery.extend({ q: z.string().max(120).optional() }),
    answers: { 200: page(projectRow) },
  }),
  createProject: route({
    name: 'createProject',
    method: 'POST',
    path: '/projects',
    permission: office,
    summary: 'Create a project; a client-made id makes a repeat harmless',
    idempotent: true,
    body: z.strictObject({
      id: id.optional(),
      ...fields,
      siteState: fields.siteState.default(null),
      timeZone: fields.timeZone.default(null),
      /** How the contract counts its days; it becomes the first of its terms. Left out, nobody has said it yet. */
      dayKind: z.enum(['calendar', 'working']).optional(),
      clientEmail: fields.clientEmail.default(null),
      clientLocale: locale.default('en'),
      yearBuilt: fields.yearBuilt.default(null),
      startOn: fields.startOn.default(null),
      contingencyCents: positiveCents.default(0),
      standardEditions: fields.standardEditions.default([]),
    }),
    answers: { 201: project },
  }),
  getProject: route({
    name: 'getProject',
    method: 'GET',
    path: '/projects/:projectId',
    permission: everyone,
    summary: 'A project',
    params: byId,
    answers: { 200: project },
  }),
  changeProject: route({
    name: 'changeProject',
    method: 'PATCH',
    path: '/projects/:projectId',
    permission: office,
    summary: 'Change a project',
    versioned: true,
    params: byId,
    body: z.strictObject(fields).partial(),
    answers: { 200: project },
  }),
  projectOverview: route({
    name: 'projectOverview',
    method: 'GET',
    path: '/projects/:projectId/overview',
    permission: everyone,
    summary: 'What needs whom, counts, and the contract in short',
    params: byId,
    answers: { 200: projectOverview },
  }),
} as const;

export type Project = z.infer<typeof project>;
export type ProjectRow = z.infer<typeof projectRow>;
export type ProjectOverview = z.infer<typeof projectOverview>;
export type ContractSums = z.infer<typeof contractSums>;
export type Todo = z.infer<typeof todo>;
export type SeverityCounts = z.infer<typeof severityCounts>;
