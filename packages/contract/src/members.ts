import * as z from 'zod';
import { id, instant, line, personName, role, words } from './common.ts';
import { everyone, ownerOnly, route } from './route.ts';

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
});
export const member = z.object({
  id,
  name: z.string(),
  email: z.string(),
  role,
  createdAt: instant,
  removedAt: instant.nullable(),
});
export const me = z.object({ member, company });
export const invitation = z.object({
  id,
  email: z.string(),
  role,
  createdAt: instant,
  expiresAt: instant,
  acceptedAt: instant.nullable(),
  revokedAt: instant.nullable(),
});
export const apiKey = z.object({
  id,
  name: z.string(),
  role,
  prefix: z.string(),
  createdAt: instant,
  revokedAt: instant.nullable(),
});
const byId = z.object({ memberId: id });
const optionalWords = (max: number) => line(max).nullable().optional();

export const memberRoutes = {
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
    permission: ownerOnly,
    summary: "Change the company's details",
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
    permission: ownerOnly,
    summary: "Change a member's name or role",
    params: byId,
    body: z.strictObject({ name: personName.optional(), role: role.optional() }),
    answers: { 200: member },
  }),
  removeMember: route({
    name: 'removeMember',
    method: 'DELETE',
    path: '/members/:memberId',
    permission: ownerOnly,
    summary: 'Remove a member; their sessions end at once',
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
    permission: ownerOnly,
    summary: 'Invite someone; the link is shown once and mailed',
    body: z.strictObject({ email, role }),
    answers: { 201: invitation.extend({ link: z.string() }) },
  }),
  revokeInvitation: route({
    name: 'revokeInvitation',
    method: 'DELETE',
    path: '/invitations/:invitationId',
    permission: ownerOnly,
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
    summary: 'Accept an invitation, choose a password, sign in',
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
    permission: ownerOnly,
    summary: 'Make an API key; the secret is shown once',
    body: z.strictObject({ name: words(80), role }),
    answers: { 201: apiKey.extend({ secret: z.string() }) },
  }),
  revokeApiKey: route({
    name: 'revokeApiKey',
    method: 'DELETE',
    path: '/api-keys/:apiKeyId',
    permission: ownerOnly,
    summary: 'Revoke an API key',
    params: z.object({ apiKeyId: id }),
    answers: { 204: null },
  }),
} as const;

export type Company = z.infer<typeof company>;
export type Member = z.infer<typeof member>;
export type Me = z.infer<typeof me>;
export type Invitation = z.infer<typeof invitation>;
export type ApiKey = z.infer<typeof apiKey>;
