import type { BodyOut, LoadPathAnswer, loadPathRoutes } from '@underlath/contract';
import { evaluateLoadPath, LoadPathError, type Locale, say, toLoadPathAnswer } from '@underlath/rules';
import { ProblemError } from '../../platform/problem-error.ts';

type LoadPathBody = BodyOut<typeof loadPathRoutes.evaluateLoadPath>;

/** What lines of a house are worth, by the rules package. */
export class LoadPathsService {
  /** Keeps nothing. @throws ProblemError `invalid-input` with a pointer for each thing that cannot be */
  evaluate(body: LoadPathBody, locale: Locale): LoadPathAnswer {
    try {
      return toLoadPathAnswer(evaluateLoadPath(body), locale) as LoadPathAnswer;
    } catch (error) {
      if (!(error instanceof LoadPathError)) throw error;
      const errors = error.issues.map(({ path, message }) => ({
        pointer: path.map((step) => `/${step}`).join(''),
        detail: say(message, locale),
      }));
      throw new ProblemError('invalid-input', errors.map(({ detail }) => detail).join(' '), { errors });
    }
  }
}
