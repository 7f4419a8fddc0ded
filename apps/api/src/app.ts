import { join } from 'node:path';
import multipart from '@fastify/multipart';
import underPressure from '@fastify/under-pressure';
import { photoCaps } from '@underlath/contract';
import { text } from '@underlath/rules';
import Fastify, { type FastifyError, type FastifyInstance, type FastifyServerOptions, LogController } from 'fastify';
import { serializerCompiler, validatorCompiler } from 'fastify-type-provider-zod';
import type { Deps } from './deps.ts';
import { pendingMigrations } from './platform/database/migrations.ts';
import { newId } from './platform/ids.ts';
import type { Platform } from './platform/platform.ts';
import { ProblemError } from './platform/problem-error.ts';
import { createSharedLimits } from './platform/shared-limits.ts';
import { auth } from './plugins/auth.ts';
import { refuseConnection } from './plugins/broken-request.ts';
import { conditional } from './plugins/conditional.ts';
import { health } from './plugins/health.ts';
import { idempotency } from './plugins/idempotency.ts';
import { defaultLimits, limits, type RateLimits } from './plugins/limits.ts';
import { openApi, referenceAddress } from './plugins/openapi.ts';
import { packing } from './plugins/packing.ts';
import { permissions } from './plugins/permissions.ts';
import { problemDocuments, sendProblem } from './plugins/problems.ts';
import { refusalBursts } from './plugins/refusal-bursts.ts';
import { security } from './plugins/security.ts';
import { dashboardFiles } from './plugins/static.ts';
import { storableText } from './plugins/storable-text.ts';
import { wellKnown } from './plugins/well-known.ts';

export interface AppOptions {
  limits?: RateLimits;
  /** How long the process may be stuck before it answers 503 `busy`, milliseconds; 3,000 unless told, 0 never. */
  busyAfterMs?: number;
  logger?: FastifyServerOptions['logger'];
}

/** A photo of the largest size over a slow phone line (25 MB at 1 Mbit/s) takes a little over three minutes. */
const requestTimeoutMs = 300_000;
/** Nothing moving on a connection for this long ends it. */
const connectionTimeoutMs = 60_000;
/** JSON bodies; photos come as streams with a cap of their own. */
const bodyLimitBytes = 1_048_576;

/** Builds the server: manners first, then every feature's routes, then the dashboard's files. */
export async function buildApp(platform: Platform, deps: Deps, options: AppOptions = {}): Promise<FastifyInstance> {
  const { config, database, fileStore, migrations, accounts } = platform;
  const app = Fastify({
    logger: options.logger ?? false,
    logController: new LogController({ disableRequestLogging: true }),
    genReqId: () => newId(),
    // Only behind a TLS proxy of ours is the caller's address in a header; elsewhere anyone could write one.
    trustProxy: config.publicUrl.startsWith('https:') ? 'loopback,linklocal,uniquelocal' : false,
    requestTimeout: requestTimeoutMs,
    connectionTimeout: connectionTimeoutMs,
    bodyLimit: bodyLimitBytes,
    forceCloseConnections: 'idle',
    return503OnClosing: false,
    routerOptions: { maxParamLength: 300 },
    clientErrorHandler: refuseConnection,
    frameworkErrors: (error: FastifyError, request, reply) => {
      const detail = `The address is not readable: ${error.message}.`;
      // No hook runs for such a request.
      reply.headers({ 'x-content-type-options': 'nosniff', 'cache-control': 'no-store', 'x-request-id': request.id });
      sendProblem(request, reply, new ProblemError('malformed-request', detail, { cause: error }));
    },
  });
  // A connection that was busy when the stop began is kept open after its answer, and the stop would wait for it.
  app.addHook('preClose', async () => {
    setInterval(() => app.server.closeIdleConnections(), 250).unref();
  });
  // JSON and photos are all that is taken; plain text would be read as a body that does not fit.
  app.removeContentTypeParser('text/plain');
  app.setValidatorCompiler(validatorCompiler);
  app.setSerializerCompiler(serializerCompiler);
  await app.register(problemDocuments);
  await app.register(security, { publicUrl: config.publicUrl });
  await app.register(underPressure, {
    maxEventLoopDelay: options.busyAfterMs ?? 3_000,
    pressureHandler: () => {
      throw new ProblemError(
        'busy',
        text(
          'The server is too busy just now; try again in a few seconds.',
          'El servidor tiene demasiado trabajo en este momento; intente otra vez en unos segundos.',
        ),
        {
          headers: { 'retry-after': '5' },
        },
      );
    },
  });
  await app.register(limits, {
    limits: options.limits ?? defaultLimits,
    shared: createSharedLimits(database.pool),
    cookies: deps.cookies,
  });
  await app.register(refusalBursts);
  await app.register(auth, { accounts, cookies: deps.cookies, lookups: deps.lookups });
  await app.register(permissions, { publicPages: referenceAddress });
  await app.register(idempotency, { database });
  await app.register(multipart, {
    limits: { fileSize: photoCaps.bytes, files: 1, fields: 12, fieldSize: 8_192, parts: 13 },
  });
  await app.register(storableText);
  await app.register(conditional);
  await app.register(packing);
  await app.register(openApi, { version: deps.version, cookies: deps.cookies.names });
  await app.register(wellKnown, config);
  await app.register(health, {
    checks: {
      database: () => database.ping(),
      fileStore: () => fileStore.ping(),
      migrations: async () => assertNone(await pendingMigrations(database.pool, migrations)),
    },
  });
  // In a context of its own, so that the routes are registered after every hook above is in place.
  await app.register(async (api) => {
    for (const feature of deps.features) feature.register(api);
  });
  await app.register(dashboardFiles, { folder: join(config.projectRoot, 'apps/dashboard/dist') });
  return app;
}

function assertNone(pending: string[]): void {
  if (pending.length > 0) throw new Error(`migrations are missing: ${pending.join(', ')}`);
}
