import { createHash } from 'node:crypto';
import type { FastifyInstance, FastifyReply, FastifyRequest, RouteHandlerMethod } from 'fastify';
import fp from 'fastify-plugin';
import type { Database, Tx } from '../platform/database/database.ts';
import { invalidInput, ProblemError } from '../platform/problem-error.ts';
import { principalKey } from './auth.ts';
import { hashKey, type KeptAnswer, seal, unseal } from './sealed-answer.ts';
import { forWhom } from './serve.ts';

declare module 'fastify' {
  interface FastifyContextConfig {
    /** Of the route in the contract. */
    name?: string;
    /** Takes `Idempotency-Key`. */
    idempotent?: boolean;
  }
}

interface Repeat {
  companyId: string;
  principal: string;
  /** As it came; never stored. */
  secret: string;
  /** What is stored of it. */
  key: string;
  fingerprint: string;
}

/** Long enough for a phone that was without signal for a night. */
const keptForMs = 24 * 3_600_000;
const keptHeaders = ['content-type', 'etag', 'location'];

/**
 * `Idempotency-Key` on routes that take one: a success is kept and answered again to the same key and body; another
 * body is refused (422), a first request still running too (409). Failures are not kept, so they can be tried again.
 * The answer is kept in the transaction of the work: either both are there or neither, whenever the process dies.
 */
export const idempotency = fp(
  async (app: FastifyInstance, { database }: { database: Database }) => {
    app.addHook('onRoute', (route) => {
      if (route.config?.idempotent) route.handler = onceForEachKey(database, route.handler);
    });
  },
  { dependencies: ['auth'] },
);

function onceForEachKey(database: Database, handler: RouteHandlerMethod): RouteHandlerMethod {
  return async function (request, reply) {
    const repeat = readRepeat(request);
    if (!repeat) return handler.call(this, request, reply);
    const { companyId, principal } = repeat;
    const { isAgain, ...answer } = await database.asOne({ companyId, principal }, async (tx) => {
      const kept = await begin(tx, repeat);
      if (kept) return { ...kept, isAgain: true };
      const made = readAnswer(reply, await handler.call(this, request, reply));
      await keep(tx, repeat, made);
      return { ...made, isAgain: false };
    });
    return send(reply, isAgain ? asSeenNow(request, answer) : answer, isAgain);
  };
}

/** @throws ProblemError `invalid-input` for a key that is none */
function readRepeat(request: FastifyRequest): Repeat | null {
  const key = request.headers['idempotency-key'];
  if (!request.principal || key === undefined) return null;
  if (typeof key !== 'string' || !/^[\x21-\x7e]{1,200}$/.test(key)) {
    throw invalidInput('header/idempotency-key', 'Idempotency-Key must be 1 to 200 visible characters without spaces.');
  }
  const { companyId } = request.principal;
  const principal = principalKey(request.principal);
  return { companyId, principal, secret: key, key: hashKey(key), fingerprint: fingerprintOf(request) };
}

/**
 * Holds the key until the transaction ends (null), or returns the answer kept for it. The hold is the connection's: one
 * whose process was killed lets go of it, and of its work, by itself.
 */
async function begin(tx: Tx, { principal, key, secret, fingerprint }: Repeat): Promise<KeptAnswer | null> {
  const [hold] = await tx.$queryRaw<{ isOurs: boolean }[]>`
    select pg_try_advisory_xact_lock(hashtextextended(${`${principal} ${key}`}, 0)) as "isOurs"`;
  if (!hold?.isOurs) {
    throw new ProblemError(
      'still-running',
      'The first request with this Idempotency-Key is still running; wait for its answer.',
      { headers: { 'retry-after': '1' } },
    );
  }
  const row = await tx.idempotencyKey.findUnique({ where: { principal_key: { principal, key } } });
  if (!row) return null;
  if (row.fingerprint !== fingerprint) {
    throw new ProblemError('key-reused', 'This Idempotency-Key was used for a different request; use a new one.');
  }
  return unseal(secret, principal, row.body);
}

async function keep(tx: Tx, { principal, key, secret, fingerprint }: Repeat, answer: KeptAnswer): Promise<void> {
  const tooOld = new Date(Date.now() - keptForMs);
  const body = seal(secret, principal, answer);
  // Another request of the same person may be clearing the same rows; nobody waits for that.
  await tx.$executeRaw`
    with swept as (delete from idempotency_key where (principal, key) in (
      select principal, key from idempotency_key where principal = ${principal} and created_at < ${tooOld}
      for update skip locked))
    insert into idempotency_key (principal, key, fingerprint, status, body)
    values (${principal}, ${key}, ${fingerprint}, ${answer.status}, ${body})`;
}

/** What will be sent, as it will be sent. @throws Error for a route that sends by itself, before its work is kept */
function readAnswer(reply: FastifyReply, payload: unknown): KeptAnswer {
  if (reply.sent || payload === undefined) throw new Error('a route that takes Idempotency-Key returns its answer');
  const body = reply.serialize(payload);
  if (typeof body !== 'string') throw new Error('a route that takes Idempotency-Key answers with JSON');
  if (!reply.hasHeader('content-type')) reply.type('application/json; charset=utf-8');
  const headers = Object.fromEntries(
    keptHeaders.flatMap((name) => (reply.hasHeader(name) ? [[name, String(reply.getHeader(name))]] : [])),
  );
  return { status: reply.statusCode, headers, body };
}

/** What was shown once is not shown to whoever lost the right to it since. */
function asSeenNow({ principal, routeOptions }: FastifyRequest, kept: KeptAnswer): KeptAnswer {
  const body = forWhom(principal, routeOptions.config.name ?? '', JSON.parse(kept.body));
  return { ...kept, body: JSON.stringify(body) };
}

function send(reply: FastifyReply, { status, headers, body }: KeptAnswer, isAgain: boolean): FastifyReply {
  return reply
    .code(status)
    .headers({ ...headers, ...(isAgain && { 'idempotency-replayed': 'true' }) })
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
