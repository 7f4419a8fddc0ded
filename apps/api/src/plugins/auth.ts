import cookie from '@fastify/cookie';
import type { Permission } from '@underlath/contract';
import { text } from '@underlath/rules';
import type { FastifyInstance, FastifyRequest } from 'fastify';
import fp from 'fastify-plugin';
import type { Accounts } from '../platform/accounts/accounts.ts';
import { ProblemError } from '../platform/problem-error.ts';
import { hashSecret } from '../platform/secrets.ts';
import type { ApiKeyPrincipal, Principal, PrincipalLookups } from '../shared/principals.ts';
import type { Cookies } from './cookies.ts';

declare module 'fastify' {
  interface FastifyRequest {
    /** Who asks; null on public routes and for nobody. */
    principal: Principal | null;
  }
}

interface Options {
  accounts: Accounts;
  cookies: Cookies;
  lookups: PrincipalLookups;
}

/** Finds out who asks, from an API key, the session cookie or the client cookie, as far as the route needs to know. */
export const auth = fp(
  async (app: FastifyInstance, options: Options) => {
    await app.register(cookie);
    app.decorateRequest('principal', null);
    // Before the body is read, and after the rate limits, which are route hooks of the stage before.
    app.addHook('preParsing', async (request) => {
      if (!request.is404)
        request.principal = await findPrincipal(request, request.routeOptions.config.permission, options);
    });
  },
  { name: 'auth' },
);

async function findPrincipal(
  request: FastifyRequest,
  permission: Permission | undefined,
  { accounts, cookies, lookups }: Options,
): Promise<Principal | null> {
  if (permission === undefined || permission === 'public') return null;
  if (permission === 'client-link') {
    const token = cookies.readClient(request);
    const { letterId = '' } = request.params as { letterId?: string };
    return token ? lookups.client(hashSecret(token), letterId) : null;
  }
  const { authorization } = request.headers;
  if (authorization !== undefined) return findApiKey(authorization, lookups);
  const token = cookies.readSession(request);
  const member = token ? await accounts.memberOf(token) : null;
  if (member) assertShown(request, member.memberId);
  return member && { kind: 'member', ...member, actorId: member.memberId };
}

/**
 * Tabs of a browser share its cookie. A page says for whom it is drawn, and once somebody else has signed in beside it,
 * nothing more is read or done from it in their name. @throws ProblemError `not-signed-in`
 */
function assertShown({ headers }: FastifyRequest, memberId: string): void {
  const shown = headers['underlath-member'];
  if (shown === undefined || shown === memberId) return;
  throw new ProblemError(
    'not-signed-in',
    text(
      'Somebody else signed in in this browser meanwhile. Sign in again to go on here; nothing was done in their name.',
      'Mientras tanto otra persona entró en este navegador. Entre otra vez para seguir aquí; no se hizo nada en su nombre.',
    ),
  );
}

async function findApiKey(authorization: string, lookups: PrincipalLookups): Promise<ApiKeyPrincipal> {
  const secret = /^Bearer +(\S+)$/i.exec(authorization)?.[1];
  const principal = secret && (await lookups.apiKey(hashSecret(secret)));
  if (principal) return principal;
  throw new ProblemError('not-signed-in', 'The API key is not known here, has expired, or was revoked.', {
    headers: { 'www-authenticate': 'Bearer' },
  });
}

/** One short text for whoever asks, to keep their repeats apart from everyone else's. */
export function principalKey(principal: Principal): string {
  if (principal.kind === 'member') return `member:${principal.companyId}:${principal.memberId}`;
  if (principal.kind === 'api-key') return `api-key:${principal.companyId}:${principal.apiKeyId}`;
  return `client:${principal.companyId}:${principal.linkId}`;
}
