import type { FastifyRequest } from 'fastify';
import type { SeenDevice } from '../platform/accounts/accounts.ts';

/** What a request tells of the device it comes from. */
export const deviceOf = (request: FastifyRequest): SeenDevice => ({
  userAgent: request.headers['user-agent'],
  address: request.ip,
});
