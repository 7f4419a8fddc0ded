import type { Assumption, Field } from './fields.ts';
import type { Source } from './source.ts';
import { type Text, text } from './text.ts';

/** What the trade takes for a measurement nobody gave; no published source is known. */
export const SCREENING_PRACTICE: Source = {
  id: 'screening-practice',
  title: 'What a screening takes for what was not said',
  edition: 'practice',
  section: 'inputs left out',
  basis: 'common-practice',
};

/** Declares what is taken while an input is left out; without a source it is common practice and says so. */
export const assume = (words: Text, source: Source = SCREENING_PRACTICE): Assumption => ({ text: words, source });

/** What happens while an input is left out, for whoever is asked for it; undefined where the answer asks for it itself. */
export function leftOutWords(field: Field): Text | undefined {
  if (field.assumes) return text(`Left out: ${field.assumes.text.en}`, `Si falta: ${field.assumes.text.es}`);
  if (!('hardest' in field) || !field.hardest) return undefined;
  return text('Left out: the hardest answer counts.', 'Si falta: cuenta la respuesta más dura.');
}

/** For an input that only names the edition: the project's, else the newest the package holds. */
export const NEWEST_EDITION: Assumption = assume(
  text(
    'The edition of the project is taken, else the newest here.',
    'Se toma la edición del proyecto o la más nueva aquí.',
  ),
);
