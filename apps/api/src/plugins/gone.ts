import type { FastifyReply } from 'fastify';

/** Aborts when the caller hangs up before the answer is written. */
export function goneOf(reply: FastifyReply): AbortSignal {
  const controller = new AbortController();
  reply.raw.once('close', () => {
    if (!reply.raw.writableFinished) controller.abort();
  });
  return controller.signal;
}
