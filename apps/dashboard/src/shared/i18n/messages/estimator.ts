import type { Message } from '../define.ts';

/** The desk. English only: estimators write the documents of the contract in the contract's language. */
const en = {
  toDo: 'To do',
} satisfies Record<string, Message>;

export const estimator = { en, es: en };
