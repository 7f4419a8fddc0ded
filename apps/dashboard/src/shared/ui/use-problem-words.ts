import { fieldWords, plainWords } from '../api/problem-words.ts';
import { useLocale, useT } from '../i18n/locale.tsx';
import { type ProblemKey, problemTitles } from '../i18n/messages/problems.ts';

/** What the API says when it can't (RFC 9457), or what the API client made of no answer at all (`offline`). */
export type ShownProblem = {
  type?: string;
  title: string;
  status?: number;
  detail?: string;
  requestId?: string | undefined;
  /** `words` are for people and stand in place of `detail`; `where` is said beside it by a form that knows its questions. */
  errors?: readonly { pointer: string; detail: string; words?: string | undefined; where?: string }[] | undefined;
  offline?: boolean;
};

export type ProblemLine = { words: string; where: string | undefined };

/** What happened and why, in the reader's language where it is known. */
export function useProblemWords(problem: ShownProblem): { title: string; lines: ProblemLine[] } {
  const t = useT(problemTitles);
  const { locale } = useLocale();
  const name = problem.type?.split(/[/:#]/).at(-1) ?? '';
  const isKnown = locale !== 'en' && name in problemTitles.en;
  return { title: isKnown ? t(name as ProblemKey) : problem.title, lines: linesOf(problem) };
}

/** The detail, unless it only strings together what is wrong with each answer; then those, each once. */
function linesOf({ detail = '', errors = [] }: ShownProblem): ProblemLine[] {
  const isStrung = errors.some((error) => detail.includes(error.detail));
  const whole = detail === '' || isStrung ? [] : [{ words: plainWords(detail), where: undefined }];
  const each = errors.map((error) => ({ words: fieldWords(error), where: error.where }));
  return [...new Map([...whole, ...each].map((line) => [`${line.words} ${line.where}`, line])).values()];
}
