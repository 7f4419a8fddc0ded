import rateLimit from '@fastify/rate-limit';
import type { FastifyInstance, FastifyRequest } from 'fastify';
import fp from 'fastify-plugin';
import { ProblemError } from '../platform/problem-error.ts';

/** Requests a minute. */
export interface RateLimits {
  /** From one address, all routes together. A crew phone that opens a project asks for hundreds of pictures. */
  perAddress: number;
  /** From one address with one e-mail address: sign-in and opening a company. */
  signIn: number;
  /** From one address: exchanging a link or an invitation, answering, a second step, and what an account asks a password for. */
  clientLink: number;
}

export const defaultLimits: RateLimits = { perAddress: 6000, signIn: 20, clientLink: 60 };

/** Where a secret is tried or a decision is made, by method and path. */
const tight: { route: RegExp; limit: keyof RateLimits; byEmail?: boolean }[] = [
  { route: /^POST \/api\/v1\/(session|companies)$/, limit: 'signIn', byEmail: true },
  { route: /^POST \/api\/v1\/invitations\/(look-up|accept)$/, limit: 'clientLink' },
  { route: /^POST \/api\/v1\/(session|account)\//, limit: 'clientLink' },
  { route: /^POST \/api\/v1\/client\//, limit: 'clientLink' },
];

/** Counts per process; each limit answers 429 with Retry-After. */
export const limits = fp(async (app: FastifyInstance, { limits }: { limits: RateLimits }) => {
  app.addHook('onRoute', (route) => {
    const name = `${[route.method].flat()[0]} ${route.url}`;
    const found = tight.find(({ route: pattern }) => pattern.test(name));
    if (!found) return;
    const rule = {
      max: limits[found.limit],
      groupId: found.limit,
      timeWindow: 60_000,
      // The e-mail address is in the body, which is there only after parsing.
      ...(found.byEmail && { hook: 'preHandler' as const, keyGenerator: addressAndEmail }),
    };
    route.config = { ...route.config, rateLimit: rule };
  });
  await app.register(rateLimit, {
    global: true,
    max: limits.perAddress,
    timeWindow: 60_000,
    errorResponseBuilder: (_request, { ttl }) => {
      const seconds = Math.max(1, Math.ceil(ttl / 1000));
      return new ProblemError('too-many-requests', `Too many requests came from here; try again in ${seconds} s.`, {
        headers: { 'retry-after': String(seconds) },
      });
    },
  });
});

function addressAndEmail(request: FastifyRequest): string {
  const email = (request.body as { email?: unknown } | undefined)?.email;
  return `${request.ip} ${String(email ?? '').toLowerCase()}`;
}
