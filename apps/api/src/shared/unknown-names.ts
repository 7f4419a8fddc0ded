import type { FieldProblem } from '@underlath/contract';

/** Names that are not known are named so far, and the rest counted: who sends thousands need not read them all back. */
const NAMED = 20;
const NAME_LENGTH = 60;

/** What is said of fields there are not. @param pointer of what holds them */
export function unknownNames(keys: readonly string[], pointer: string): FieldProblem[] {
  const named = keys.slice(0, NAMED).map((key) => {
    const name = key.length > NAME_LENGTH ? `${key.slice(0, NAME_LENGTH)}…` : key;
    return { pointer: `${pointer}/${name}`, detail: `there is no field called "${name}"` };
  });
  const more = keys.length - named.length;
  return more > 0 ? [...named, { pointer, detail: `and ${more} more fields that there are not` }] : named;
}
