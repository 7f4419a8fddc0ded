import { text } from '@underlath/rules';
import { ProblemError } from '../platform/problem-error.ts';

/** The ETag of a version: `"7"`. What is read carries a hash of its bytes too (`conditional.ts`). */
const etagOf = (version: number): string => `"${version}"`;

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
