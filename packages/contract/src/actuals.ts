import * as z from 'zod';
import { day, givenDay, id, instant, line, positiveCents, text, words } from './common.ts';
import { office, route } from './route.ts';

/** What a job took for one kind of work. A wrong one is taken back with a reason; it is never changed. */
export const actual = z.object({
  id,
  findingId: id,
  operation: z.string(),
  title: text,
  unit: z.string(),
  quantity: z.number(),
  hours: z.number(),
  /** Material and everything else that was paid, without the hours. */
  costCents: positiveCents,
  note: z.string(),
  doneOn: day,
  enteredAt: instant,
  enteredBy: z.object({ id, name: z.string() }),
  takenBack: z.object({ at: instant, why: z.string() }).nullable(),
});

/** One kind of work of a finding: what its estimate says with today's book, and what it took. */
export const plannedAgainstTaken = z.object({
  operation: z.string(),
  title: text,
  unit: z.string(),
  planned: z.object({ quantity: z.number(), hours: z.number() }).nullable(),
  taken: z.object({ quantity: z.number(), hours: z.number(), costCents: z.int().min(0) }).nullable(),
});

const hours = z.object({ low: z.number(), likely: z.number(), high: z.number() });

/** What the jobs done say about one kind of work. The book is never changed by it. */
export const workHistory = z.object({
  operation: z.string(),
  title: text,
  unit: z.string(),
  jobs: z.int().min(1),
  seenPerUnit: z.number(),
  lowestPerUnit: z.number(),
  highestPerUnit: z.number(),
  /** Hours a unit in the book of today; null where it has none. */
  book: hours.nullable(),
  /** What the book may say; null where too few jobs are known and the book says nothing. */
  suggested: hours.nullable(),
});

const byFinding = z.object({ findingId: id });

export const actualRoutes = {
  listActuals: route({
    name: 'listActuals',
    method: 'GET',
    path: '/findings/:findingId/actuals',
    permission: office,
    summary: 'What the repair of a finding took, beside what was planned',
    params: byFinding,
    answers: { 200: z.object({ items: z.array(actual), work: z.array(plannedAgainstTaken) }) },
  }),
  enterActual: route({
    name: 'enterActual',
    method: 'POST',
    path: '/findings/:findingId/actuals',
    permission: office,
    summary: 'Enter hours and cost that one kind of work took; the cost book stays as it is',
    idempotent: true,
    params: byFinding,
    body: z.strictObject({
      id: id.optional(),
      operation: z.string().max(80),
      quantity: z.number().positive().max(100_000),
      hours: z.number().min(0).max(10_000),
      costCents: positiveCents.default(0),
      doneOn: givenDay,
      note: line(400).default(''),
    }),
    answers: { 201: actual },
  }),
  takeBackActual: route({
    name: 'takeBackActual',
    method: 'POST',
    path: '/actuals/:actualId/take-back',
    permission: office,
    summary: 'Take back an entry that was wrong; it stays readable and counts no more',
    params: z.object({ actualId: id }),
    body: z.strictObject({ why: words(400) }),
    answers: { 200: actual },
  }),
  getWorkHistory: route({
    name: 'getWorkHistory',
    method: 'GET',
    path: '/cost-book/history',
    permission: office,
    summary: "Hours that jobs took beside the cost book's, and what the book may say",
    answers: { 200: z.object({ costBookVersion: z.int(), items: z.array(workHistory) }) },
  }),
} as const;

export type Actual = z.infer<typeof actual>;
export type PlannedAgainstTaken = z.infer<typeof plannedAgainstTaken>;
export type WorkHistory = z.infer<typeof workHistory>;
