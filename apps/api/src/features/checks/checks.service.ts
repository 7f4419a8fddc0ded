import type { CheckAnswer, checkDescription } from '@underlath/contract';
import {
  type Check,
  describeCheck,
  type EvaluateRequest,
  InputError,
  type InputIssue,
  type Locale,
  type Outcome,
  rulesVersion,
  say,
  toAnswer,
  UnknownEditionError,
} from '@underlath/rules';
import { checks, evaluateCheck, findCheck, UnknownCheckError } from '@underlath/rules/all-checks';
import type { z } from 'zod';
import { invalidInput, notFound, ProblemError } from '../../platform/problem-error.ts';

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
    return invalidInput('/edition', `edition: got "${error.edition}"; allowed is one of ${allowed}.`);
  }
  if (error instanceof InputError) {
    const errors = error.issues.map((issue) => ({ pointer: pointerOf(issue), detail: say(issue.message, locale) }));
    return new ProblemError('invalid-input', errors.map(({ detail }) => detail).join(' '), { errors });
  }
  return error;
}

/** JSON Pointer (RFC 6901) into the body. */
const pointerOf = ({ path }: InputIssue): string =>
  ['inputs', ...path].map((step) => `/${String(step).replaceAll('~', '~0').replaceAll('/', '~1')}`).join('');
