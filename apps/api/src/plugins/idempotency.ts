import { createHash } from 'node:crypto';
import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify';
import fp from 'fastify-plugin';
import type { Database } from '../platform/database/database.ts';
import { invalidInput, ProblemError } from '../platform/problem-error.ts';
import { principalKey } from './auth.ts';
import { hashKey, type Kept, seal, unseal } from './sealed-answer.ts';

declare module 'fastify' {
  interface FastifyContextConfig {
    /** Takes `Idempotency-Key`. */
    idempotent?: boolean;
  }
  interface FastifyRequest {
    /** The repeat that this request has begun and must end. */
    repeat: Repeat | null;
  }
}

interface Repeat {
  principal: string;
  /** As it came; never stored. */
  secret: string;
  /** What is stored of it. */
  key: string;
}

/** A process that was killed leaves its repeats running; after this a new try takes over. Longer than any request may take. */
const abandonedAfterMs = 120_000;
/** Long enough for a phone that was without signal for a night. */
const keptForMs = 24 * 3_600_000;
const keptHeaders = ['content-type', 'etag', 'location'];

/**
 * `Idempotency-Key` on routes that take one: a success is kept and answered again to the same key and body; another
 * body is refused (422), a first request still running too (409). Failures are not kept, so they can be tried again.
 */
export const idempotency = fp(
  async (app: FastifyInstance, { database }: { database: Database }) => {
    app.decorateRequest('repeat', null);
    app.addHook('preHandler', async (request, reply) => {
      const key = request.headers['idempotency-key'];
      if (!request.routeOptions.config.idempotent || !request.principal || key === undefined) return;
      if (typeof key !== 'string' || !/^[\x21-\x7e]{1,200}$/.test(key)) {
        throw invalidInput(
          'header/idempotency-key',
          'Idempotency-Key must be 1 to 200 visible characters without spaces.',
        );
      }
      const repeat = { principal: principalKey(request.principal), secret: key, key: hashKey(key) };
      const kept = await begin(database, repeat, fingerprintOf(request));
      if (!kept) {
        request.repeat = repeat;
        return;
      }
      return answerAgain(reply, kept);
    });
    app.addHook('onSend', async (request, reply, payload) => {
      if (!request.repeat) return payload;
      const repeat = request.repeat;
      request.repeat = null;
      try {
        await end(database, repeat, reply, payload);
      } catch (error) {
        // The work itself is done and told; a repeat will be refused as running, then tried anew, and find it done.
        request.log.error({ err: error }, 'the answer could not be kept for repeats');
      }
      return payload;
    });
  },
  { dependencies: ['auth'] },
);

/** Claims the key (null), or returns the answer kept for it. */
async function begin(database: Database, repeat: Repeat, fingerprint: string): Promise<Kept | null> {
  const { principal, key, secret } = repeat;
  return database.behindFence({ principal }, async (tx) => {
    await tx.idempotencyKey.deleteMany({ where: { principal, createdAt: { lt: new Date(Date.now() - keptForMs) } } });
    const made = await tx.idempotencyKey.createMany({ data: [{ principal, key, fingerprint }], skipDuplicates: true });
    if (made.count === 1) return null;
    const row = await tx.idempotencyKey.findUniqueOrThrow({ where: { principal_key: { principal, key } } });
    if (row.fingerprint !== fingerprint) {
      throw new ProblemError('key-reused', 'This Idempotency-Key was used for a different request; use a new one.');
    }
    if (row.status !== null && row.body !== null) return unseal(secret, principal, row.body);
    const abandoned = await tx.idempotencyKey.updateMany({
      where: { principal, key, status: null, createdAt: { lt: new Date(Date.now() - abandonedAfterMs) } },
      data: { createdAt: new Date() },
    });
    if (abandoned.count === 1) return null;
    throw new ProblemError(
      'still-running',
      'The first request with this Idempotency-Key is still running; wait for its answer.',
      {
        headers: { 'retry-after': '1' },
      },
    );
  });
}

async function end(
  database: Database,
  { principal, key, secret }: Repeat,
  reply: FastifyReply,
  payload: unknown,
): Promise<void> {
  const where = { principal_key: { principal, key } };
  const keep = reply.statusCode < 300 && (typeof payload === 'string' || payload === undefined || payload === null);
  await database.behindFence({ principal }, async (tx) => {
    if (!keep) return tx.idempotencyKey.delete({ where });
    const headers = Object.fromEntries(
      keptHeaders.flatMap((name) => (reply.hasHeader(name) ? [[name, String(reply.getHeader(name))]] : [])),
    );
    const status = reply.statusCode;
    const body = seal(secret, principal, { status, headers, body: (payload as string) ?? '' });
    return tx.idempotencyKey.update({ where, data: { status, body } });
  });
}

function answerAgain(reply: FastifyReply, { status, headers, body }: Kept): FastifyReply {
  return reply
    .code(status)
    .headers({ ...headers, 'idempotency-replayed': 'true' })
    .serializer((payload: unknown) => payload as string)
    .send(body);
}

/** Of what was asked, as the schema read it, so key order and spaces do not matter. */
function fingerprintOf(request: FastifyRequest): string {
  return createHash('sha256')
    .update(`${request.method} ${request.url}\n`)
    .update(request.headers['if-match'] ?? '')
    .update(JSON.stringify(request.body ?? null))
    .digest('hex');
}
