import { memberRoutes } from '@underlath/contract';
import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify';
import type { Cookies } from '../../plugins/cookies.ts';
import { deviceOf } from '../../plugins/device.ts';
import { serve } from '../../plugins/serve.ts';
import { callerOf } from '../../shared/caller.ts';
import type { ProfileService } from '../accounts/profile.service.ts';
import type { Session } from '../accounts/sign-in.service.ts';
import type { ApiKeysService } from './api-keys.service.ts';
import type { CompaniesService } from './companies.service.ts';
import type { InvitationsService } from './invitations.service.ts';
import type { JoiningService } from './joining.service.ts';
import type { From, MembersService } from './members.service.ts';

interface Services {
  companies: CompaniesService;
  members: MembersService;
  invitations: InvitationsService;
  joining: JoiningService;
  apiKeys: ApiKeysService;
  profile: ProfileService;
  cookies: Cookies;
}

export function registerMembersRoutes(app: FastifyInstance, services: Services): void {
  registerSessions(app, services);
  registerPeople(app, services);
  registerInvitations(app, services);
  registerApiKeys(app, services);
}

const fromOf = (request: FastifyRequest): From => ({ device: deviceOf(request), log: request.log });

function registerSessions(app: FastifyInstance, { companies, members, profile, cookies }: Services): void {
  const begin = (reply: FastifyReply, { me, signedIn }: Session) => {
    cookies.setSession(reply, signedIn.token, signedIn.expiresAt);
    cookies.setDevice(reply, me.member.email);
    return me;
  };

  serve(app, memberRoutes.getSignUp, async () => ({ open: await companies.isOpen() }));

  serve(app, memberRoutes.createCompany, async ({ body, locale, request, reply }) => {
    const session = await companies.create(body, fromOf(request));
    await profile.welcome(session.signedIn.userId, locale);
    return begin(reply, session);
  });

  serve(app, memberRoutes.whoAmI, ({ principal }) => {
    if (principal.kind !== 'member') throw new Error('the permission "session" lets members through, and nobody else');
    return members.whoAmI(principal.companyId, principal.memberId);
  });
}

function registerPeople(app: FastifyInstance, { companies, members }: Services): void {
  serve(app, memberRoutes.getCompany, ({ principal }) => companies.company(principal.companyId));

  serve(app, memberRoutes.changeCompany, ({ body, principal, ifMatch }) =>
    companies.change(callerOf(principal), ifMatch, body),
  );

  serve(app, memberRoutes.listMembers, ({ principal }) => members.list(principal.companyId));

  serve(app, memberRoutes.changeMember, ({ params, body, principal, ifMatch }) =>
    members.change(callerOf(principal), params.memberId, ifMatch, body),
  );

  serve(app, memberRoutes.removeMember, ({ params, principal, ifMatch }) =>
    members.remove(callerOf(principal), params.memberId, ifMatch),
  );
}

function registerInvitations(app: FastifyInstance, { invitations, joining, cookies }: Services): void {
  serve(app, memberRoutes.listInvitations, ({ principal }) => invitations.list(principal.companyId));

  serve(app, memberRoutes.invite, ({ body, principal }) => invitations.invite(callerOf(principal), body));

  serve(app, memberRoutes.revokeInvitation, ({ params, principal }) =>
    invitations.revoke(callerOf(principal), params.invitationId),
  );

  serve(app, memberRoutes.lookUpInvitation, ({ body }) => joining.lookUp(body.token));

  serve(app, memberRoutes.acceptInvitation, async ({ body, request, reply }) => {
    const { me, signedIn } = await joining.accept(body, fromOf(request));
    cookies.setSession(reply, signedIn.token, signedIn.expiresAt);
    cookies.setDevice(reply, me.member.email);
    return me;
  });
}

function registerApiKeys(app: FastifyInstance, { apiKeys }: Services): void {
  serve(app, memberRoutes.listApiKeys, ({ principal }) => apiKeys.list(principal.companyId));

  serve(app, memberRoutes.createApiKey, ({ body, principal }) => apiKeys.create(callerOf(principal), body));

  serve(app, memberRoutes.revokeApiKey, ({ params, principal }) =>
    apiKeys.revoke(callerOf(principal), params.apiKeyId),
  );
}
