/** A question about other inputs, plain JSON so the form and the API ask it the same way. */
export type Condition =
  | { readonly input: string; readonly is: readonly (string | number | boolean)[] }
  | { readonly input: string; readonly known: boolean }
  | { readonly input: string; readonly below: number }
  | { readonly not: Condition }
  | { readonly all: readonly Condition[] }
  | { readonly any: readonly Condition[] };

/** Whether a condition holds for the given inputs (of the same group as the field that carries it). */
export function holds(condition: Condition, inputs: Readonly<Record<string, unknown>>): boolean {
  if ('all' in condition) return condition.all.every((part) => holds(part, inputs));
  if ('any' in condition) return condition.any.some((part) => holds(part, inputs));
  if ('not' in condition) return !holds(condition.not, inputs);
  const value = inputs[condition.input];
  if ('known' in condition) return (value !== undefined && value !== null) === condition.known;
  if ('below' in condition) return typeof value === 'number' && value < condition.below;
  return condition.is.some((wanted) => wanted === value);
}
