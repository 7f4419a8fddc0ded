/** A question about other inputs, plain JSON so the form and the API ask it the same way. */
export type Condition =
  | { readonly input: string; readonly is: readonly (string | number | boolean)[] }
  | { readonly input: string; readonly known: boolean }
  | { readonly input: string; readonly below: number }
  | { readonly not: Condition }
  | { readonly all: readonly Condition[] }
  | { readonly any: readonly Condition[] };

type Inputs = Readonly<Record<string, unknown>>;
/** A condition made ready: it is asked of thousands of findings. */
export type Test = (inputs: Inputs) => boolean;

/** Makes the test of a condition; the inputs are those of the group that carries it. */
export function testOf(condition: Condition): Test {
  if ('all' in condition) {
    const parts = condition.all.map(testOf);
    return (inputs) => parts.every((part) => part(inputs));
  }
  if ('any' in condition) {
    const parts = condition.any.map(testOf);
    return (inputs) => parts.some((part) => part(inputs));
  }
  if ('not' in condition) {
    const part = testOf(condition.not);
    return (inputs) => !part(inputs);
  }
  const { input } = condition;
  if ('known' in condition) {
    const { known } = condition;
    return (inputs) => (inputs[input] !== undefined && inputs[input] !== null) === known;
  }
  if ('below' in condition) {
    const { below } = condition;
    return (inputs) => typeof inputs[input] === 'number' && inputs[input] < below;
  }
  const wanted: readonly unknown[] = condition.is;
  return (inputs) => wanted.includes(inputs[input]);
}

/** Whether a condition holds for the given inputs. */
export const holds = (condition: Condition, inputs: Inputs): boolean => testOf(condition)(inputs);
