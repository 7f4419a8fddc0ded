import swagger from '@fastify/swagger';
import type { FastifyInstance } from 'fastify';
import fp from 'fastify-plugin';
import { jsonSchemaTransform } from 'fastify-type-provider-zod';

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
    transform: jsonSchemaTransform,
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
