import type { FindingContext, FindingState } from '@underlath/contract';
import { editionUnder } from '@underlath/rules';
import { findCheck } from '@underlath/rules/all-checks';
import { invalidInput, ProblemError } from '../../platform/problem-error.ts';

interface Rectangle {
  xIn: number;
  yIn: number;
  widthIn: number;
  heightIn: number;
}

/** What the place says, unless the person on site says otherwise. */
export const contextAt = (place: { storiesAbove: number }, told: FindingContext): FindingContext => ({
  storiesAbove: place.storiesAbove,
  ...told,
});

/** The edition to judge by: the one asked for, else the project's where the check has it. */
export function editionFor(
  checkId: string,
  asked: string | undefined,
  projectEditions: readonly string[],
  inputs: Record<string, unknown>,
): string | undefined {
  if (asked !== undefined) return asked;
  const check = findCheck(checkId);
  return check && editionUnder(check, projectEditions, inputs);
}

/** @throws ProblemError `invalid-input` when the rectangle leaves the drawn place */
export function assertInside(
  extent: Rectangle | null | undefined,
  place: { name: string; widthIn: number | null; heightIn: number | null },
): void {
  if (!extent || place.widthIn === null || place.heightIn === null) return;
  const rightIn = extent.xIn + extent.widthIn;
  const topIn = extent.yIn + extent.heightIn;
  if (rightIn <= place.widthIn && topIn <= place.heightIn) return;
  throw invalidInput(
    '/extent',
    `extent: it reaches to ${rightIn} in across and ${topIn} in up; "${place.name}" is ${place.widthIn} in by ${place.heightIn} in.`,
  );
}

/** A phone's clock may be wrong by a time zone, not by days. */
const clockErrorMs = 86_400_000;

/** @throws ProblemError `invalid-input` for a moment that has not come yet */
export function assertSeen(seenAt: Date, now: Date): void {
  if (seenAt.getTime() - now.getTime() <= clockErrorMs) return;
  throw invalidInput(
    '/seenAt',
    `seenAt: got ${seenAt.toISOString()}, which has not come yet; it is ${now.toISOString()}.`,
  );
}

/** After which states each of the three moves may follow. */
const movesFrom: Record<'withdrawn' | 'repaired' | 'proven', readonly FindingState[]> = {
  withdrawn: ['noted', 'judged', 'priced', 'declined'],
  repaired: ['approved'],
  proven: ['repaired'],
};

/** @throws ProblemError `wrong-state` */
export function assertMove(from: FindingState, to: keyof typeof movesFrom): void {
  const allowed = movesFrom[to];
  if (allowed.includes(from)) return;
  throw new ProblemError(
    'wrong-state',
    `The finding is ${from}; it can be marked ${to} only when it is ${allowed.join(' or ')}.`,
  );
}

/** Only the first two states follow the measurements; later ones follow what was decided. */
export function stateAfterJudging(from: FindingState, missing: readonly string[]): FindingState {
  if (from !== 'noted' && from !== 'judged') return from;
  return missing.length > 0 ? 'noted' : 'judged';
}
