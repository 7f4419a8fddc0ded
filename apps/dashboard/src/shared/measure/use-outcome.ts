import { type Check, InputError, type Outcome, runCheck, type Situation, UnknownEditionError } from '@underlath/rules';
import { useMemo } from 'react';
import { useLocale, useT } from '../i18n/locale.tsx';
import { shareWords } from '../i18n/messages/share.ts';
import { askedInputs, type Inputs } from './form.ts';

export type LiveOutcome = { outcome: Outcome | null; errors: Readonly<Record<string, string>> };

/** Inputs by which measurements can name an edition of their own. */
const namingEdition = ['edition', 'standard', 'code'];

/**
 * What the check says of the measurements so far, computed in the browser by the same package the server uses. Errors
 * are by path (`counts.flush`); a missing measurement is not an error. The server's verdict is the one on record.
 */
export function useOutcome(check: Check, inputs: Inputs, context: Situation = {}, edition?: string): LiveOutcome {
  const { locale } = useLocale();
  const t = useT(shareWords);
  return useMemo(() => {
    try {
      return {
        outcome: runCheck(check, { inputs: askedInputs(check.inputs, inputs), context, edition }).toJSON(),
        errors: {},
      };
    } catch (error) {
      if (error instanceof UnknownEditionError) {
        const words = t('noEdition', { typed: error.edition, allowed: error.allowed.join(', ') });
        return { outcome: null, errors: Object.fromEntries(namingEdition.map((name) => [name, words])) };
      }
      if (!(error instanceof InputError)) throw error;
      return {
        outcome: null,
        errors: Object.fromEntries(error.issues.map((i) => [i.path.join('.'), i.words[locale]])),
      };
    }
  }, [check, inputs, context, edition, locale, t]);
}
