import { ProblemAnswer } from '../shared/api/errors.ts';
import { useT } from '../shared/i18n/locale.tsx';
import { letterWords } from '../shared/i18n/messages/letter.ts';
import { FailState } from '../shared/ui/states.tsx';
import { problemWords } from './problem-words.ts';

/** What happened to a send, in the owner's words, with the reference the contractor can look up. */
export function Trouble({ error }: { error: Error }) {
  const t = useT(letterWords);
  const words = problemWords(error);
  const requestId = error instanceof ProblemAnswer ? error.requestId : undefined;
  return <FailState problem={{ title: t(words.title), detail: t(words.todo), ...(requestId ? { requestId } : {}) }} />;
}
