import rateLimit from '@fastify/rate-limit';
import { text } from '@underlath/rules';
import type { FastifyInstance, FastifyRequest } from 'fastify';
import fp from 'fastify-plugin';
import { ProblemError } from '../platform/problem-error.ts';
import { networkOf, type SharedLimits } from '../platform/shared-limits.ts';
import type { Cookies } from './cookies.ts';

/** How often, in a minute unless it says otherwise. */
export interface RateLimits {
  /** From one address, all routes together. A crew phone that opens a project asks for hundreds of pictures. */
  perAddress: number;
  /** Passwords tried from one address for one e-mail address. */
  signIn: number;
  /** Passwords tried from one address, whatever the e-mail addresses: an office of thirty behind one address signs in at seven. */
  signInAddress: number;
  /** Passwords tried for one e-mail address in an hour: from one device that signed in before, or from all others together. At most 100 in a row: NIST SP 800-63B-4 section 3.2.2, from memory. */
  signInAccount: number;
  /** From one address: exchanging a link or an invitation, and answering. */
  clientLink: number;
  /** By one link, from anywhere. */
  link: number;
  /** Changes of one company's people and programs together. Several crews that send a day's photos come to hundreds. */
  company: number;
  /** What all clients of one company send together. */
  companyLetters: number;
}

export const defaultLimits: RateLimits = {
  perAddress: 6_000,
  signIn: 20,
  signInAddress: 60,
  signInAccount: 100,
  clientLink: 60,
  link: 30,
  company: 3_000,
  companyLetters: 600,
};

/** For tests and benches, which come from one address. */
export const noLimits = Object.fromEntries(
  Object.keys(defaultLimits).map((name) => [name, 10_000_000]),
) as unknown as RateLimits;

interface Rule {
  name: keyof RateLimits;
  /** Whose tries are counted; undefined where the request names nobody. */
  who: (request: FastifyRequest, cookies: Cookies) => string | undefined;
  seconds?: number;
}

const address = (request: FastifyRequest): string => networkOf(request.ip);
const field = (name: string) => (request: FastifyRequest) => {
  const value = (request.body as Record<string, unknown> | null | undefined)?.[name];
  return typeof value === 'string' ? value.toLowerCase() : undefined;
};
const email = field('email');
/** A token is letters of both cases, and two that differ in them alone count as one: no harm in that. */
const token = field('token');
const letter = (request: FastifyRequest) => (request.params as { letterId?: string }).letterId;
const company = (request: FastifyRequest) => request.principal?.companyId;
const person = ({ principal }: FastifyRequest) => (principal?.kind === 'member' ? principal.userId : undefined);

const byAddressAndEmail: Rule = {
  name: 'signIn',
  who: (request) => `${address(request)} ${email(request) ?? ''}`,
};
const byAddress: Rule = { name: 'signInAddress', who: address };
/** A device that the person signed in on before has a count of its own, so that strangers who use up the address's do not lock them out. */
const byAccount: Rule = {
  name: 'signInAccount',
  who: (request, cookies) => {
    const tried = email(request);
    const device = tried && cookies.readDevice(request, tried);
    return device ? `device ${device}` : tried;
  },
  seconds: 3_600,
};
const linksByAddress: Rule = { name: 'clientLink', who: address };
const byToken: Rule = { name: 'link', who: token };

/** Where a secret is tried or a decision is made, by method and path. The narrowest count comes first: what it refuses burdens no other. */
const tight: { route: RegExp; rules: readonly Rule[] }[] = [
  { route: /^POST \/api\/v1\/(session|companies)$/, rules: [byAddressAndEmail, byAddress, byAccount] },
  // It tries the password of an account that is known already.
  { route: /^POST \/api\/v1\/invitations\/accept$/, rules: [byToken, linksByAddress, byAddress] },
  { route: /^POST \/api\/v1\/invitations\/look-up$/, rules: [byToken, linksByAddress] },
  { route: /^POST \/api\/v1\/session\//, rules: [byAddress] },
  { route: /^POST \/api\/v1\/account\/forgotten$/, rules: [byAddressAndEmail, byAddress] },
  { route: /^POST \/api\/v1\/account\/(reset|confirm)$/, rules: [byToken, linksByAddress] },
  // Whoever holds somebody's phone could try their password here.
  { route: /^POST \/api\/v1\/account\//, rules: [{ name: 'signInAccount', who: person, seconds: 3_600 }, byAddress] },
  {
    route: /^POST \/api\/v1\/client\//,
    rules: [
      { name: 'link', who: (request) => letter(request) ?? token(request) },
      linksByAddress,
      { name: 'companyLetters', who: company },
    ],
  },
];

const ofMembers: readonly Rule[] = [{ name: 'company', who: company }];

interface Options {
  limits: RateLimits;
  shared: SharedLimits;
  cookies: Cookies;
}

/**
 * Each limit answers 429 with Retry-After. The wide one counts per process, in memory: it keeps one caller from filling
 * the server, and a look into the database for each picture would cost more than the picture. All others are shared.
 */
export const limits = fp(async (app: FastifyInstance, { limits, shared, cookies }: Options) => {
  await app.register(rateLimit, {
    global: true,
    max: limits.perAddress,
    timeWindow: 60_000,
    keyGenerator: address,
    errorResponseBuilder: (_request, { ttl }) => tooMany(ttl),
  });
  // Once it is known who asks and what for; nothing of the work is begun then.
  app.addHook('preHandler', async (request) => {
    for (const { name, who, seconds = 60 } of rulesOf(request)) {
      const key = who(request, cookies);
      if (key === undefined) continue;
      const wait = await shared.take({ name, tries: limits[name], seconds }, key);
      if (wait > 0) throw tooMany(wait);
    }
  });
});

function rulesOf(request: FastifyRequest): readonly Rule[] {
  if (request.is404 || ['GET', 'HEAD', 'OPTIONS'].includes(request.method)) return [];
  const name = `${request.method} ${request.routeOptions.url}`;
  const found = tight.find(({ route }) => route.test(name));
  if (found) return found.rules;
  return request.principal ? ofMembers : [];
}

function tooMany(waitMs: number): ProblemError {
  const seconds = Math.max(1, Math.ceil(waitMs / 1000));
  return new ProblemError(
    'too-many-requests',
    text(
      `Too many requests came from here; try again in ${seconds} s.`,
      `Llegaron demasiados envíos desde aquí; intente otra vez en ${seconds} s.`,
    ),
    {
      headers: { 'retry-after': String(seconds) },
    },
  );
}
