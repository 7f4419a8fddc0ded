import { type InputIssue, type Locale, say } from '@underlath/rules';
import { ProblemError } from '../platform/problem-error.ts';

/** What the rules refuse, as a problem: each input by its JSON Pointer (RFC 6901), for the caller and for who measures. */
export function refusedInputs(issues: readonly InputIssue[], root: readonly string[], locale: Locale): ProblemError {
  const errors = issues.map(({ path, message, words }) => ({
    pointer: [...root, ...path].map((step) => `/${String(step).replaceAll('~', '~0').replaceAll('/', '~1')}`).join(''),
    detail: say(message, locale),
    words: say(words, locale),
  }));
  return new ProblemError('invalid-input', errors.map(({ detail }) => detail).join(' '), { errors });
}
