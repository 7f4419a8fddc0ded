import {
  type AnswerOf,
  type BodyOut,
  type Locale,
  type ParamsOut,
  type QueryOut,
  type Route,
  seesMoney,
  withheld,
  withhold,
} from '@underlath/contract';
import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify';
import * as z from 'zod';
import type { Principal } from '../shared/principals.ts';
import { readIfMatch } from './etag.ts';
import { preferredLocale } from './preferred-locale.ts';

type Member = Extract<Principal, { kind: 'member' | 'api-key' }>;
type Client = Extract<Principal, { kind: 'client' }>;

/** Whom a handler works for, as the route's permission promises. */
export type PrincipalOf<R extends Route> = R['permission'] extends 'public'
  ? Principal | null
  : R['permission'] extends 'client-link'
    ? Client
    : Member;

export interface Call<R extends Route> {
  readonly params: ParamsOut<R>;
  readonly query: QueryOut<R>;
  readonly body: BodyOut<R>;
  readonly principal: PrincipalOf<R>;
  /** The version in `If-Match`; present on routes that are `versioned`, 0 otherwise. */
  readonly ifMatch: number;
  /** From `Accept-Language`: Spanish when asked for first, else English. */
  readonly locale: Locale;
  readonly request: FastifyRequest;
  readonly reply: FastifyReply;
}

/** JSON as the contract says; a stream or bytes where it names a media type; nothing where it is empty. */
type Handled<R extends Route> = [AnswerOf<R>] extends [never] ? unknown : AnswerOf<R>;

/** Serves one route of the contract: path, permission, schemas and manners come from its definition, the handler only translates. The first success status of the contract is sent unless the handler sets another. An answer with a `version` carries it as its ETag. */
export function serve<const R extends Route>(
  app: FastifyInstance,
  route: R,
  handle: (call: Call<R>) => Promise<Handled<R>>,
): void {
  const success = Number(Object.keys(route.answers)[0]);
  app.route({
    method: route.method,
    url: `/api/v1${route.path}`,
    config: {
      name: route.name,
      permission: route.permission,
      idempotent: route.idempotent ?? false,
      versioned: route.versioned ?? false,
      ...(route.upload && { upload: route.upload }),
    },
    schema: {
      operationId: route.name,
      summary: route.summary,
      ...(route.params && { params: route.params }),
      querystring: queryOf(route),
      ...(route.body && { body: route.body }),
      response: responses(route),
    },
    handler: async (request, reply) => {
      reply.code(success);
      const told = await handle({
        params: request.params as ParamsOut<R>,
        query: request.query as QueryOut<R>,
        body: request.body as BodyOut<R>,
        principal: request.principal as PrincipalOf<R>,
        ifMatch: route.versioned ? readIfMatch(request) : 0,
        locale: preferredLocale(request.headers['accept-language']),
        request,
        reply,
      });
      if (reply.sent) return reply;
      const answer = forWhom(request.principal, route.name, told);
      const version = (answer as { version?: unknown } | null)?.version;
      if (typeof version === 'number' && !reply.hasHeader('etag')) reply.header('etag', `"${version}"`);
      return answer ?? reply.send();
    },
  });
}

/** What the role of who asks may not see is null; asked again for an answer that was kept, since the role may be another by then. */
export function forWhom<A>(principal: Principal | null, name: string, answer: A): A {
  const paths = withheld[name];
  if (!paths || !principal || principal.kind === 'client' || seesMoney(principal)) return answer;
  return withhold(answer, paths);
}

/** A parameter there is not is told, not passed over: `?serverity=repair` would list everything. */
function queryOf({ query }: Route): z.ZodType {
  if (query === undefined) return z.strictObject({});
  return query instanceof z.ZodObject ? query.strict() : query;
}

/** Of each status: a schema, bytes of a media type, or nothing. */
function responses(route: Route): Record<string, unknown> {
  return Object.fromEntries(
    Object.entries(route.answers).map(([status, answer]) => {
      if (answer === null) return [status, z.null().describe('Done; there is nothing to read.')];
      if (typeof answer !== 'string') return [status, answer];
      return [status, { description: 'The bytes.', content: { [answer]: { schema: z.any() } } }];
    }),
  );
}
