import { useT } from '../shared/i18n/locale.tsx';
import { letterWords } from '../shared/i18n/messages/letter.ts';
import type { ClientKey } from './problem-words.ts';

/** Words for the status line, in whatever language the page has while they stand there. */
export function Said({ words }: { words: ClientKey }) {
  return useT(letterWords)(words);
}
