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
    summary: 'Recompute the chain, the sent documents and the decisions',
    params: byProject,
    answers: { 200: recordCheck },
  }),
} as const;

export type RecordEvent = z.infer<typeof recordEvent>;
export type RecordCheck = z.infer<typeof recordCheck>;
