import type { Problem } from '@underlath/contract';
import { fieldWords } from '../../shared/api/problem-words.ts';

/** What the server said about measurements, by the path the form uses: `/inputs/counts/flush` -> `counts.flush`. */
export function inputErrors(problem: Problem | null): Record<string, string> {
  const errors = problem?.errors ?? [];
  return Object.fromEntries(
    errors
      .filter((error) => error.pointer.startsWith('/inputs/'))
      .map((error) => [error.pointer.slice('/inputs/'.length).replaceAll('/', '.'), fieldWords(error)]),
  );
}

/** Said when a form is sent while one of its measurements is refused as it stands. */
export const REFUSED_MEASUREMENT = {
  pointer: '/inputs',
  detail: 'A measurement can’t be as it stands.',
  words: 'A measurement can’t be as it stands: see the marked answer.',
};
