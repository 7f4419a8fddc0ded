import compress from '@fastify/compress';
import type { FastifyInstance } from 'fastify';
import fp from 'fastify-plugin';

/** Answers below this many bytes fit into one packet anyhow. */
const THRESHOLD_BYTES = 1_400;
/** Of nine: what a server can do for each answer; files that stay are packed harder when they are built. */
const GZIP_LEVEL = 5;

/**
 * What is read goes out packed to who takes it: a letter with its choices is a tenth of its size then. What a change
 * answers stays as it is; some of those answers hold a secret that is told once, and none should share a packed answer
 * with words of the one who asks.
 */
export const packing = fp(async (app: FastifyInstance): Promise<void> => {
  app.addHook('onRoute', (route) => {
    if (route.method !== 'GET') route.compress = false;
  });
  await app.register(compress, {
    encodings: ['gzip'],
    threshold: THRESHOLD_BYTES,
    zlibOptions: { level: GZIP_LEVEL },
    // Bodies are taken as they come: a packed one could unpack to more than the limits allow.
    globalDecompression: false,
  });
});
