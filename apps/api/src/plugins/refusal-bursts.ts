import type { FastifyInstance, FastifyRequest } from 'fastify';
import fp from 'fastify-plugin';
import { principalKey } from './auth.ts';

interface Options {
  /** How long refusals are counted before the log is told; a minute unless told. */
  windowMs?: number;
}

/** Fewer refusals than this from one place are everyday slips. */
const burst = 20;
/** Places named in a line; the others are counted. */
const named = 5;
/** Places counted at once: who comes from more of them is not one burst. */
const mostPlaces = 10_000;
const refusals = new Set([401, 403, 429]);

/**
 * Tells the server's log when refusals (401, 403, 429) come in bursts from one address or one member, key or link: one
 * line a minute at most, with the addresses and ids, and nothing of what was sent.
 */
export const refusalBursts = fp(async (app: FastifyInstance, { windowMs = 60_000 }: Options) => {
  let counts = new Map<string, number>();
  app.addHook('onResponse', async (request, reply) => {
    if (!refusals.has(reply.statusCode)) return;
    for (const place of placesOf(request))
      if (counts.has(place) || counts.size < mostPlaces) counts.set(place, (counts.get(place) ?? 0) + 1);
  });
  const tell = () => {
    const bursts = [...counts].filter(([, count]) => count >= burst).sort(([, one], [, other]) => other - one);
    counts = new Map();
    if (bursts.length === 0) return;
    const from = Object.fromEntries(bursts.slice(0, named));
    app.log.warn({ from, others: Math.max(0, bursts.length - named) }, 'many requests were refused in a short time');
  };
  const timer = setInterval(tell, windowMs).unref();
  app.addHook('onClose', async () => {
    clearInterval(timer);
    tell();
  });
});

function placesOf(request: FastifyRequest): string[] {
  const { principal } = request;
  return [`address:${request.ip}`, ...(principal ? [principalKey(principal)] : [])];
}
