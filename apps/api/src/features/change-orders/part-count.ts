import { canBeParted, MOST_IN_PARTS } from '@underlath/contract';
import { invalidInput } from '../../platform/problem-error.ts';

/** @throws ProblemError `invalid-input` for findings so few or so many that none can be left out */
export function assertCanPart(count: number): void {
  if (canBeParted(count)) return;
  throw invalidInput(
    '/byPart',
    `came as true for ${count === 1 ? 'one finding' : `${count} findings`}; allowed is true for 2 to ${MOST_IN_PARTS} findings`,
  );
}
