import { isUniqueViolation } from '../platform/database/database-errors.ts';
import { hashOf } from '../platform/hash.ts';
import { ProblemError } from '../platform/problem-error.ts';

/** What was asked for when a thing was made, kept in its first event: it tells a repeat from another thing under the same id. */
export const contentHash = (content: unknown): string => hashOf(content);

/** @throws ProblemError `already-exists` when the id stands for something else */
export function assertSameContent(what: string, earlier: unknown, content: unknown): void {
  if (earlier === contentHash(content)) return;
  throw new ProblemError(
    'already-exists',
    `There is already a ${what} with this id and other content; choose a new id.`,
  );
}

/**
 * Runs a transaction that makes something under an id chosen by the caller, and once more when another request made the
 * same id at the same moment: the second run finds it.
 */
export async function makeOnce<Result>(work: () => Promise<Result>): Promise<Result> {
  try {
    return await work();
  } catch (error) {
    if (!isUniqueViolation(error)) throw error;
    return work();
  }
}
