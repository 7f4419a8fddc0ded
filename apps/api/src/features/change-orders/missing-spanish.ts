import type { MissingSpanish } from '@underlath/contract';
import { ProblemError } from '../../platform/problem-error.ts';

/** @throws ProblemError `invalid-input` that points at each name which a reader of Spanish would get in English */
export function assertSpanish(missing: readonly MissingSpanish[]): void {
  if (missing.length === 0) return;
  const errors = missing.map(({ kind, id, english }) => ({
    pointer: `/spanish/${kind}/${id}`,
    detail: `"${english}" has no Spanish`,
  }));
  throw new ProblemError(
    'invalid-input',
    'The client reads Spanish, and some names in the letter are English only. Type their Spanish, or send it as it is and they are marked as English.',
    { errors },
  );
}
