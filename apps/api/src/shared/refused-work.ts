import { WorkAmountError } from '@underlath/rules/offers';
import { invalidInput } from '../platform/problem-error.ts';

/** Prices the content of estimates, or points at what in it comes to more than can be kept. @throws ProblemError `invalid-input` */
export function refuseWork<T>(price: () => T): T {
  try {
    return price();
  } catch (error) {
    if (!(error instanceof WorkAmountError)) throw error;
    throw invalidInput(error.manualLine === null ? '/choices' : `/manualLines/${error.manualLine}`, error.words.en);
  }
}
