import { text } from '@underlath/rules';
import type { FastifyRequest } from 'fastify';
import { ProblemError } from '../platform/problem-error.ts';

/** The ETag of a version: `"7"`. What is read carries a hash of its bytes too (`conditional.ts`). */
export const etagOf = (version: number): string => `"${version}"`;

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

/** @throws ProblemError `stale-version` (412) when the thing has moved on since the caller saw it */
export function assertVersion(seen: number, current: number): void {
  if (seen === current) return;
  throw new ProblemError(
    'stale-version',
    text(
      `You saw version ${seen}, and it is at version ${current} now. Load it again and repeat your change; what you typed was not saved.`,
      `Usted vio la versión ${seen} y ahora va en la ${current}. Cárguelo otra vez y repita el cambio; lo que escribió no se guardó.`,
    ),
    { headers: { etag: etagOf(current) } },
  );
}
