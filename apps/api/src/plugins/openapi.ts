import { createHash } from 'node:crypto';
import { gzipSync } from 'node:zlib';
import swagger from '@fastify/swagger';
import swaggerUi from '@fastify/swagger-ui';
import type { Permission } from '@underlath/contract';
import type { FastifyInstance, RouteOptions } from 'fastify';
import fp from 'fastify-plugin';
import { createJsonSchemaTransform, createJsonSchemaTransformObject } from 'fastify-type-provider-zod';
import * as z from 'zod';
import { notFound } from '../platform/problem-error.ts';
import { isAmong } from './conditional.ts';
import {
  apiPartOf,
  finishDocument,
  namedSchemas,
  type OpenApiDocument,
  parts,
  problemStatuses,
} from './openapi-parts.ts';

declare module 'fastify' {
  interface FastifySchema {
    /** For `finishDocument`, which takes both out again. */
    'x-problems'?: number[];
    'x-upload'?: object;
  }
  interface FastifyContextConfig {
    /** Needs `If-Match`. */
    versioned?: boolean;
    /** Takes a form with these fields before its part `file`. */
    upload?: z.ZodType;
  }
}

interface Options {
  version: string;
  cookies: { session: string; client: string };
}

const address = '/api/v1/openapi.json';
/** The page on which the API is read and tried. */
export const referenceAddress = '/api/reference';

/** OpenAPI 3.1, written from the schemas that validate the requests, and a page of it. */
export const openApi = fp(async (app: FastifyInstance, { version, cookies }: Options) => {
  const schemaRegistry = namedSchemas();
  const transform = createJsonSchemaTransform({ schemaRegistry });
  const name = createJsonSchemaTransformObject({ schemaRegistry });
  await app.register(swagger, {
    openapi: {
      openapi: '3.1.0',
      info: {
        title: 'Underlath',
        version,
        description:
          'Records what demolition uncovers in a wood-framed house, judges it against named rules, and carries it to a signed change order. Screening only: structural decisions belong to a licensed engineer and the building official.',
      },
      tags: parts,
      components: {
        securitySchemes: {
          session: { type: 'apiKey', in: 'cookie', name: cookies.session },
          apiKey: { type: 'http', scheme: 'bearer' },
          clientLink: { type: 'apiKey', in: 'cookie', name: cookies.client },
        },
      },
    },
    transform: (document) => withManners(transform(document), document.route),
    transformObject: (document) => finishDocument(name(document) as OpenApiDocument),
  });
  serveDocument(app);
  await serveReference(app);
});

/** Written and packed once: it is the same for everyone until the program is another. */
function serveDocument(app: FastifyInstance): void {
  let made: { text: string; packed: Buffer; etag: string } | undefined;
  const make = () => {
    const text = JSON.stringify(app.swagger());
    const etag = `"${createHash('sha256').update(text).digest('base64url').slice(0, 22)}"`;
    return { text, packed: gzipSync(text, { level: 9 }), etag };
  };
  const options = { config: { permission: 'public' as const }, schema: { hide: true } };
  app.get(address, options, async (request, reply) => {
    made ??= make();
    reply.header('etag', made.etag).header('cache-control', 'no-cache').header('vary', 'accept-encoding');
    if (isAmong(made.etag, request.headers['if-none-match'])) return reply.code(304).send();
    reply.type('application/json');
    if (!/\bgzip\b/.test(String(request.headers['accept-encoding'] ?? ''))) return reply.send(made.text);
    return reply.header('content-encoding', 'gzip').send(made.packed);
  });
}

/** The library's page under our own content policy: no other site is asked for anything, and what is tried goes to this server. */
async function serveReference(app: FastifyInstance): Promise<void> {
  await app.register(swaggerUi, {
    routePrefix: referenceAddress,
    uiConfig: {
      layout: 'BaseLayout',
      docExpansion: 'list',
      deepLinking: true,
      displayRequestDuration: true,
      persistAuthorization: false,
    },
    uiHooks: {
      onRequest: async (request, reply) => {
        const file = request.routeOptions.url?.slice(referenceAddress.length);
        // Its own copies of the document would be written anew for each reader.
        if (file === '/json') return reply.redirect(address);
        if (file === '/yaml') throw notFound('form of the description');
      },
    },
    theme: { title: 'The API of Underlath' },
  });
}

type Documented = ReturnType<ReturnType<typeof createJsonSchemaTransform>>;

/** Adds what every route of ours has and its schemas do not say: who may call it, its headers, its problems, its form. */
function withManners({ schema, url }: Documented, { config, schema: declared }: RouteOptions): Documented {
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
      ...(config?.name && { tags: [apiPartOf(config.name)] }),
      security: securityOf(config?.permission),
      ...(!isEmpty && {
        headers: { type: 'object', properties: headers, ...(config?.versioned && { required: ['if-match'] }) },
      }),
      'x-problems': problemStatuses({
        isPublic: config?.permission === 'public',
        hasId: declared?.params !== undefined,
        hasBody: declared?.body !== undefined || config?.upload !== undefined,
        isVersioned: config?.versioned === true,
        isIdempotent: config?.idempotent === true,
        isUpload: config?.upload !== undefined,
      }),
      ...(config?.upload && { 'x-upload': z.toJSONSchema(config.upload, { io: 'input', unrepresentable: 'any' }) }),
    },
  };
}

function securityOf(permission: Permission | undefined): Record<string, string[]>[] {
  if (permission === 'public') return [];
  if (permission === 'client-link') return [{ clientLink: [] }];
  return permission === 'session' ? [{ session: [] }] : [{ session: [] }, { apiKey: [] }];
}
