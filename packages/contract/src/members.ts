import * as z from 'zod';
import { givenInstant, id, instant, line, personName, role, words } from './common.ts';
import { everyone, ownerInPerson, ownerOnly, route } from './route.ts';

export const email = z.email().max(254);
export const password = z.string().max(1000);

export const company = z.object({
  id,
  version: z.int(),
  name: z.string(),
  licenseNumber: z.string().nullable(),
  phone: z.string().nullable(),
  email: z.string().nullable(),
  address: z.string().nullable(),
  state: z.string().nullable(),
  /** Prices, contract sums and the client's e-mail address are shown to the crew too. */
  crewSeesMoney: z.boolean(),
  estimatorsEditCostBook: z.boolean(),
});
export const member = z.object({
  id,
  version: z.int(),
  name: z.string(),
  email: z.string(),
  role,
  createdAt: instant,
  removedAt: instant.nullable(),
});
export const me = z.object({ member, company });
const madeBy = z.object({ id, name: z.string() });
export const invitation = z.object({
  id,
  email: z.string(),
  role,
  invitedBy: madeBy,
  createdAt: instant,
  expiresAt: instant,
  acceptedAt: instant.nullable(),
  revokedAt: instant.nullable(),
});
/** What a key is for: all that its role may, only reading, or only photos. */
export const keyUse = z.enum(['full', 'read', 'photos']);
export const apiKey = z.object({
  id,
  name: z.string(),
  /** It never does more than its maker may now. */
  role,
  use: keyUse,
  prefix: z.string(),
  createdBy: madeBy,
  createdAt: instant,
  expiresAt: instant,
  /** To the hour; null while it was never used. */
  lastUsedAt: instant.nullable(),
  revokedAt: instant.nullable(),
});
const byId = z.object({ memberId: id });
const optionalWords = (max: number) => line(max).nullable().optional();

export const memberRoutes = {
  getSignUp: route({
    name: 'getSignUp',
    method: 'GET',
    path: '/sign-up',
    permission: 'public',
    summary: 'Whether a company can be opened here now',
    answers: { 200: z.object({ open: z.boolean() }) },
  }),
  createCompany: route({
    name: 'createCompany',
    method: 'POST',
    path: '/companies',
    permission: 'public',
    summary: 'Open a company and become its owner',
    body: z.strictObject({ companyName: words(120), name: personName, email, password }),
    answers: { 201: me },
  }),
  whoAmI: route({
    name: 'whoAmI',
    method: 'GET',
    path: '/session',
    permission: 'session',
    summary: 'Who is signed in',
    answers: { 200: me },
  }),
  getCompany: route({
    name: 'getCompany',
    method: 'GET',
    path: '/company',
    permission: everyone,
    summary: 'The company',
    answers: { 200: company },
  }),
  changeCompany: route({
    name: 'changeCompany',
    method: 'PATCH',
    path: '/company',
    permission: ownerInPerson,
    summary: "Change the company's details, and what its people may see and do",
    versioned: true,
    body: z.strictObject({
      name: words(120).optional(),
      licenseNumber: optionalWords(60),
      phone: optionalWords(40),
      email: email.nullable().optional(),
      address: optionalWords(300),
      state: z
        .string()
        .regex(/^[A-Z]{2}$/, 'must be a two-letter state')
        .nullable()
        .optional(),
      crewSeesMoney: z.boolean().optional(),
      estimatorsEditCostBook: z.boolean().optional(),
    }),
    answers: { 200: company },
  }),
  listMembers: route({
    name: 'listMembers',
    method: 'GET',
    path: '/members',
    permission: everyone,
    summary: 'Members of the company, removed ones too',
    answers: { 200: z.object({ items: z.array(member) }) },
  }),
  changeMember: route({
    name: 'changeMember',
    method: 'PATCH',
    path: '/members/:memberId',
    permission: ownerInPerson,
    summary: "Change a member's name or role; a lower role ends what their keys and invitations had beyond it",
    versioned: true,
    params: byId,
    body: z.strictObject({ name: personName.optional(), role: role.optional() }),
    answers: { 200: member },
  }),
  removeMember: route({
    name: 'removeMember',
    method: 'DELETE',
    path: '/members/:memberId',
    permission: ownerInPerson,
    summary: 'Remove a member; their sessions, API keys and open invitations end at once',
    versioned: true,
    params: byId,
    answers: { 204: null },
  }),
  listInvitations: route({
    name: 'listInvitations',
    method: 'GET',
    path: '/invitations',
    permission: ownerOnly,
    summary: 'Invitations sent',
    answers: { 200: z.object({ items: z.array(invitation) }) },
  }),
  invite: route({
    name: 'invite',
    method: 'POST',
    path: '/invitations',
    permission: ownerInPerson,
    summary: 'Invite someone; the link is shown once and mailed',
    idempotent: true,
    body: z.strictObject({ email, role }),
    answers: { 201: invitation.extend({ link: z.string() }) },
  }),
  revokeInvitation: route({
    name: 'revokeInvitation',
    method: 'DELETE',
    path: '/invitations/:invitationId',
    permission: ownerInPerson,
    summary: 'Revoke an invitation',
    params: z.object({ invitationId: id }),
    answers: { 204: null },
  }),
  lookUpInvitation: route({
    name: 'lookUpInvitation',
    method: 'POST',
    path: '/invitations/look-up',
    permission: 'public',
    summary: 'What an invitation link offers; changes nothing',
    body: z.strictObject({ token: z.string().max(200) }),
    answers: { 200: z.object({ companyName: z.string(), email: z.string(), role, expiresAt: instant }) },
  }),
  acceptInvitation: route({
    name: 'acceptInvitation',
    method: 'POST',
    path: '/invitations/accept',
    permission: 'public',
    summary: 'Accept an invitation, choose a password, sign in; the same person sending it again is signed in again',
    body: z.strictObject({ token: z.string().max(200), name: personName, password }),
    answers: { 201: me },
  }),
  listApiKeys: route({
    name: 'listApiKeys',
    method: 'GET',
    path: '/api-keys',
    permission: ownerOnly,
    summary: 'API keys, without their secrets',
    answers: { 200: z.object({ items: z.array(apiKey) }) },
  }),
  createApiKey: route({
    name: 'createApiKey',
    method: 'POST',
    path: '/api-keys',
    permission: ownerInPerson,
    summary: 'Make an API key; the secret is shown once',
    idempotent: true,
    body: z.strictObject({
      name: words(80),
      role,
      use: keyUse.default('full'),
      /** At most two years ahead; one year where it is left out. */
      expiresAt: givenInstant.optional(),
    }),
    answers: { 201: apiKey.extend({ secret: z.string() }) },
  }),
  revokeApiKey: route({
    name: 'revokeApiKey',
    method: 'DELETE',
    path: '/api-keys/:apiKeyId',
    permission: ownerInPerson,
    summary: 'Revoke an API key',
    params: z.object({ apiKeyId: id }),
    answers: { 204: null },
  }),
} as const;

export type Company = z.infer<typeof company>;
export type Member = z.infer<typeof member>;
export type Me = z.infer<typeof me>;
export type Invitation = z.infer<typeof invitation>;
export type KeyUse = z.infer<typeof keyUse>;
export type ApiKey = z.infer<typeof apiKey>;
