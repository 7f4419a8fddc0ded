import swagger from '@fastify/swagger';
import { type Permission, problem, problems } from '@underlath/contract';
import type { FastifyInstance, RouteOptions } from 'fastify';
import fp from 'fastify-plugin';
import { jsonSchemaTransform } from 'fastify-type-provider-zod';
import * as z from 'zod';

declare module 'fastify' {
  interface FastifyContextConfig {
    /** Needs `If-Match`. */
    versioned?: boolean;
  }
}

/** OpenAPI 3.1, written from the schemas that validate the requests, at /api/v1/openapi.json. */
export const openApi = fp(async (app: FastifyInstance, { version }: { version: string }) => {
  await app.register(swagger, {
    openapi: {
      openapi: '3.1.0',
      info: {
        title: 'Underlath',
        version,
        description:
          'Records what demolition uncovers in a wood-framed house, judges it against named rules, and carries it to a signed change order. Screening only: structural decisions belong to a licensed engineer and the building official.',
      },
      components: {
        securitySchemes: {
          session: { type: 'apiKey', in: 'cookie', name: 'underlath_session' },
          apiKey: { type: 'http', scheme: 'bearer' },
          clientLink: { type: 'apiKey', in: 'cookie', name: 'underlath_letter' },
        },
      },
    },
    transform: (document) => withManners(jsonSchemaTransform(document), document.route),
  });
  app.get(
    '/api/v1/openapi.json',
    { config: { permission: 'public' }, schema: { hide: true } },
    async (_request, reply) => {
      reply.type('application/json').serializer((payload: unknown) => JSON.stringify(payload));
      return app.swagger();
    },
  );
});

type Documented = ReturnType<typeof jsonSchemaTransform>;

const problemSchema = z.toJSONSchema(problem, { target: 'draft-2020-12' });
const catalogue = Object.entries(problems).map(([type, { status, title }]) => `\`${type}\` (${status}) ${title}`);
const failure = {
  description: `A problem document (RFC 9457); \`type\` ends in one of: ${catalogue.join('; ')}.`,
  content: { 'application/problem+json': { schema: problemSchema } },
};

/** Adds what every route of ours has and its schemas do not say: who may call it, its headers, its problems. */
function withManners({ schema, url }: Documented, { config }: RouteOptions): Documented {
  if (!schema || schema.hide) return { schema, url };
  const headers = {
    ...(config?.idempotent && {
      'idempotency-key': {
        type: 'string',
        maxLength: 200,
        description: 'The same key and body are answered the same again.',
      },
    }),
    ...(config?.versioned && { 'if-match': { type: 'string', description: 'The ETag last seen, such as "3".' } }),
  };
  const isEmpty = Object.keys(headers).length === 0;
  return {
    url,
    schema: {
      ...schema,
      security: securityOf(config?.permission),
      ...(!isEmpty && {
        headers: { type: 'object', properties: headers, ...(config?.versioned && { required: ['if-match'] }) },
      }),
      response: { ...(schema.response as object), default: failure },
    },
  };
}

function securityOf(permission: Permission | undefined): Record<string, string[]>[] {
  if (permission === 'public') return [];
  if (permission === 'client-link') return [{ clientLink: [] }];
  return permission === 'session' ? [{ session: [] }] : [{ session: [] }, { apiKey: [] }];
}
