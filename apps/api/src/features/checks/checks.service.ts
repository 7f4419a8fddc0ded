import type { CheckAnswer, checkDescription } from '@underlath/contract';
import {
  type Check,
  describeCheck,
  type EvaluateRequest,
  firstIssues,
  InputError,
  type Locale,
  type Outcome,
  rulesVersion,
  say,
  text,
  toAnswer,
  UnknownEditionError,
} from '@underlath/rules';
import { checks, evaluateCheck, findCheck, UnknownCheckError } from '@underlath/rules/all-checks';
import type { z } from 'zod';
import { invalidInput, notFound } from '../../platform/problem-error.ts';
import { refusedInputs } from '../../shared/refused-inputs.ts';

type Description = z.output<typeof checkDescription>;

/** The checks of the rules package, for anyone who asks. It keeps nothing. */
export class ChecksService {
  async list(locale: Locale): Promise<{ rulesVersion: string; items: Description[] }> {
    return { rulesVersion, items: await Promise.all(checks.map((check) => describe(check, locale))) };
  }

  /** @throws ProblemError `not-found` */
  async get(id: string, locale: Locale): Promise<Description> {
    const check = findCheck(id);
    if (!check) throw notFound('check');
    return describe(check, locale);
  }

  /** @throws ProblemError `not-found`, `invalid-input` */
  evaluate(id: string, request: EvaluateRequest, locale: Locale): CheckAnswer {
    if (!findCheck(id)) throw notFound('check');
    return toAnswer(this.judge(id, request, locale), locale) as CheckAnswer;
  }

  /** Judges and keeps every wording in both languages. @throws ProblemError `invalid-input` with a pointer for each input */
  judge(id: string, request: EvaluateRequest, locale: Locale): Outcome {
    try {
      return evaluateCheck(id, request).toJSON();
    } catch (error) {
      throw explain(error, locale);
    }
  }
}

async function describe(check: Check, locale: Locale): Promise<Description> {
  const words = await describeCheck(check, locale);
  return {
    ...words,
    sources: [...words.sources],
    doesNotCover: [...words.doesNotCover],
    values: [...words.values],
    cases: [...words.cases],
  };
}

function explain(error: unknown, locale: Locale): unknown {
  if (error instanceof UnknownCheckError) {
    return invalidInput('/checkId', `checkId: there is no check "${error.checkId}"; GET /api/v1/checks lists them.`);
  }
  if (error instanceof UnknownEditionError) {
    const allowed = error.allowed.join(', ');
    const words = text('This check does not know that edition.', 'Esta revisión no conoce esa edición.');
    return invalidInput(
      '/edition',
      `edition: got "${error.edition}"; allowed is one of ${allowed}.`,
      say(words, locale),
    );
  }
  if (error instanceof InputError) return refusedInputs(firstIssues(error.issues), ['inputs'], locale);
  return error;
}
