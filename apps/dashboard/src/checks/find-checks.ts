import { type Check, type CheckCard, elementWords, type Fields, type Text } from '@underlath/rules';

/** Letters without their accents, so that "numero" finds "número". */
const plain = (words: string): string => words.normalize('NFD').replace(/\p{M}/gu, '').toLowerCase();

const both = ({ en, es }: Text): string => `${en} ${es}`;

const labelsOf = (fields: Fields): string[] =>
  Object.values(fields).flatMap((field) => [
    both(field.label),
    ...(field.kind === 'group' ? labelsOf(field.fields) : []),
    ...(field.kind === 'list' ? labelsOf(field.item) : []),
  ]);

/** A check, or its card alone while the rest of it is read. */
export type Findable = CheckCard & Partial<Pick<Check, 'inputs' | 'sources'>>;

/** Everything a check can be found by: its names in both languages, what is measured, and its documents. */
function haystack(check: Findable): string {
  const sources = (check.sources ?? []).map(({ title, edition, section }) => `${title} ${edition} ${section}`);
  const words = [check.id, both(elementWords(check)), both(check.title), both(check.question)];
  return plain([...words, ...labelsOf(check.inputs ?? {}), ...sources].join(' '));
}

/** The checks that have every typed word somewhere. */
export function findChecks<C extends Findable>(checks: readonly C[], typed: string): readonly C[] {
  const words = plain(typed).split(/\s+/).filter(Boolean);
  if (words.length === 0) return checks;
  return checks.filter((check) => {
    const all = haystack(check);
    return words.every((word) => all.includes(word));
  });
}
