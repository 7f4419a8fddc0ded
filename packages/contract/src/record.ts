import * as z from 'zod';
import { id, instant, page, pageQuery, sha256 } from './common.ts';
import { office, route } from './route.ts';

/** One event of a project's record. `hash` covers `body` (canonical JSON) and `prevHash`. */
export const recordEvent = z.object({
  seq: z.int(),
  at: instant,
  type: z.string(),
  subjectId: id,
  actor: z.object({ kind: z.enum(['member', 'api-key', 'client', 'system']), id: z.string(), name: z.string() }),
  data: z.record(z.string(), z.unknown()),
  prevHash: sha256,
  hash: sha256,
});
export const recordCheck = z.object({
  ok: z.boolean(),
  events: z.int(),
  head: z.object({ seq: z.int(), hash: sha256 }),
  /** What was found wrong, in words, with the event it is about. */
  faults: z.array(z.object({ seq: z.int().nullable(), what: z.string() })),
  /** How much was held against the events. */
  compared: z.object({ rows: z.int(), moneyRows: z.int(), documents: z.int(), decisions: z.int() }),
  /** What events written by earlier versions do not tell, and of how many rows. */
  untold: z.array(z.object({ what: z.string(), rows: z.int() })),
  /** Kinds of events whose rows this version does not compare. */
  otherKinds: z.array(z.string()),
  /** Places of the record known from outside of the database. Without one, a removed end would not show. */
  witnesses: z.object({
    /** Kept in the file store, and those of them that the record agrees with. */
    kept: z.int(),
    keptAgreed: z.int(),
    /** Handed in with the request. */
    handed: z.int(),
    handedAgreed: z.int(),
    /** The newest event that one of those that agree knows; 0 without any. */
    newestSeq: z.int(),
  }),
});

const byProject = z.object({ projectId: id });

export const recordRoutes = {
  listRecord: route({
    name: 'listRecord',
    method: 'GET',
    path: '/projects/:projectId/record',
    permission: office,
    summary: "The project's record, newest first",
    params: byProject,
    query: pageQuery,
    answers: { 200: page(recordEvent) },
  }),
  verifyRecord: route({
    name: 'verifyRecord',
    method: 'GET',
    path: '/projects/:projectId/record/verify',
    permission: office,
    summary: 'Replay the events, compare every row they made, and the place of the record that is handed in',
    params: byProject,
    query: z
      .object({
        /** Number and hash of an event, as a letter or a mail prints them. */
        seq: z.coerce.number().int().min(0).max(2_147_483_647),
        hash: sha256,
      })
      .partial(),
    answers: { 200: recordCheck },
  }),
} as const;

export type RecordEvent = z.infer<typeof recordEvent>;
export type RecordCheck = z.infer<typeof recordCheck>;
