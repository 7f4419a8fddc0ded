import type { Problem } from '@underlath/contract';

/** What the server said about measurements, by the path the form uses: `/inputs/counts/flush` -> `counts.flush`. */
export function inputErrors(problem: Problem | null): Record<string, string> {
  const errors = problem?.errors ?? [];
  return Object.fromEntries(
    errors
      .filter((error) => error.pointer.startsWith('/inputs/'))
      .map((error) => [error.pointer.slice('/inputs/'.length).replaceAll('/', '.'), error.detail]),
  );
}
