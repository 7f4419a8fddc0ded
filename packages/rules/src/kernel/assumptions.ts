import type { Assumption } from './fields.ts';
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

/** For an input that only names the edition: the project's, else the newest the package holds. */
export const NEWEST_EDITION: Assumption = assume(
  text(
    'The edition of the project is taken, else the newest here.',
    'Se toma la edición del proyecto o la más nueva aquí.',
  ),
);
