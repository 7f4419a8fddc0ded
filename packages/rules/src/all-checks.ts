import type { JudgedOutcome } from './judging/judged-outcome.ts';
import { type EvaluateRequest, runCheck } from './judging/run-check.ts';
import type { Check } from './kernel/index.ts';
import { checkEntries } from './registry.ts';

/** Every check, loaded: for the server, the handbook and the tests. A browser loads one when it is picked. */
export const checks: readonly Check[] = await Promise.all(checkEntries.map(({ load }) => load()));

/** No check has this id. */
export class UnknownCheckError extends Error {
  override readonly name = 'UnknownCheckError';
  readonly checkId: string;
  constructor(checkId: string) {
    super(`There is no check "${checkId}".`);
    this.checkId = checkId;
  }
}

const byId = new Map(checks.map((check) => [check.id, check]));

/** The check with this id, or undefined. */
export const findCheck = (id: string): Check | undefined => byId.get(id);

/**
 * Judges measurements by a check. A missing measurement is an `undetermined` outcome, never an error.
 * Throws UnknownCheckError, UnknownEditionError or InputError.
 */
export function evaluateCheck(id: string, request: EvaluateRequest): JudgedOutcome {
  const check = findCheck(id);
  if (!check) throw new UnknownCheckError(id);
  return runCheck(check, request);
}
