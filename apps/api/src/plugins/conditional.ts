import { createHash } from 'node:crypto';
import type { FastifyInstance } from 'fastify';
import fp from 'fastify-plugin';

const versionTag = /^"(\d{1,9})"$/;

/**
 * A version alone does not say that an answer is the same: a change order shows today's contract, in one language or the
 * other. So what is read is tagged with its version and a hash of its bytes: `If-Match` goes by the version, and
 * `If-None-Match` (304, nothing is sent) by both.
 */
export const conditional = fp(async (app: FastifyInstance) => {
  app.addHook('onSend', async (request, reply, payload) => {
    if (request.method !== 'GET' || reply.statusCode !== 200 || typeof payload !== 'string') return payload;
    const version = versionTag.exec(String(reply.getHeader('etag') ?? ''))?.[1];
    if (version === undefined) return payload;
    const etag = `"${version}.${createHash('sha256').update(payload).digest('base64url').slice(0, 16)}"`;
    reply.header('etag', etag);
    if (!isAmong(etag, request.headers['if-none-match'])) return payload;
    reply.code(304).removeHeader('content-type').removeHeader('content-length');
    return null;
  });
});

/** RFC 9110, 13.1.2: tags are compared weakly, and `*` is any. */
export function isAmong(etag: string, header: string | undefined): boolean {
  if (header === undefined) return false;
  return header.split(',').some((one) => [etag, '*'].includes(one.trim().replace(/^W\//, '')));
}
