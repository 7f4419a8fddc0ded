import * as z from 'zod';
import { id, instant, page, pageQuery } from './common.ts';
import { ownerOnly, route } from './route.ts';

/** What is written down of people, keys and rights. */
export const peopleEventType = z.enum([
  'sign-in.good',
  'sign-in.refused',
  'sign-in.ended',
  'device.ended',
  'password.changed',
  'password.reset',
  'email.changed',
  'email.confirmed',
  'name.changed',
  'second-factor.on',
  'second-factor.off',
  'passkey.added',
  'passkey.removed',
  'recovery-codes.made',
  'recovery-code.used',
  'member.joined',
  'member.role-changed',
  'member.renamed',
  'member.removed',
  'invitation.sent',
  'invitation.revoked',
  'invitation.accepted',
  'api-key.made',
  'api-key.changed',
  'api-key.revoked',
  'company.opened',
  'company.changed',
  'rights.changed',
  'cost-book.saved',
]);

/** Who did it. `nobody` is somebody who was not let in. The name is kept too, because people are renamed and removed. */
export const peopleActor = z.object({
  kind: z.enum(['member', 'api-key', 'system', 'nobody']),
  id: z.string(),
  name: z.string(),
});

const fact = z.union([z.string().max(500), z.number(), z.boolean(), z.null(), z.array(z.string().max(120)).max(50)]);
/** A few plain facts: a role before and after, the address it came from. Never a password, a token or a link. */
export const peopleFacts = z.record(z.string().max(60), fact);

export const peopleEvent = z.object({
  id,
  at: instant,
  type: peopleEventType,
  actor: peopleActor,
  /** The member, invitation or key it happened to; null where it is the company itself. */
  subjectId: id.nullable(),
  data: peopleFacts,
});

const filter = z.strictObject({ type: peopleEventType.optional() });

export const peopleLogRoutes = {
  listPeopleLog: route({
    name: 'listPeopleLog',
    method: 'GET',
    path: '/people-log',
    permission: ownerOnly,
    summary: 'What happened to people, keys and rights, newest first',
    query: filter.extend(pageQuery.shape),
    answers: { 200: page(peopleEvent) },
  }),
  exportPeopleLog: route({
    name: 'exportPeopleLog',
    method: 'GET',
    path: '/people-log/csv',
    permission: ownerOnly,
    summary: 'The same as CSV (RFC 4180, UTF-8), all of it, newest first',
    query: filter,
    answers: { 200: 'text/csv' },
  }),
} as const;

export type PeopleEventType = z.infer<typeof peopleEventType>;
export type PeopleActor = z.infer<typeof peopleActor>;
export type PeopleFacts = z.infer<typeof peopleFacts>;
export type PeopleEvent = z.infer<typeof peopleEvent>;
