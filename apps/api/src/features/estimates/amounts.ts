import { AmountError, type Locale, say } from '@underlath/rules';
import { invalidInput } from '../../platform/problem-error.ts';

/**
 * Prices, or says which line comes to more than can be kept.
 * @param pointerOf where a priced line stands in the body
 * @throws ProblemError `invalid-input`
 */
export function refuseAmounts<T>(price: () => T, pointerOf: (line: number) => string, locale: Locale = 'en'): T {
  try {
    return price();
  } catch (error) {
    if (!(error instanceof AmountError)) throw error;
    throw invalidInput(pointerOf(error.line), say(error.words, locale));
  }
}
