import type { FastifyRequest } from 'fastify';
import { ProblemError } from '../platform/problem-error.ts';

/**
 * The version named in `If-Match`.
 * @throws ProblemError `version-required` (428) without one, `stale-version` (412) for one this server never gave out
 */
export function readIfMatch(request: Pick<FastifyRequest, 'headers'>): number {
  const header = request.headers['if-match']?.trim();
  if (!header) {
    throw new ProblemError(
      'version-required',
      'Send the ETag you last saw in If-Match, so that nobody’s change is lost.',
    );
  }
  const version = /^(?:W\/)?"(\d{1,9})(?:\.[\w-]{16})?"$/.exec(header)?.[1];
  if (!version)
    throw new ProblemError('stale-version', `If-Match is ${header}, which is no ETag of this server; load it again.`);
  return Number(version);
}
