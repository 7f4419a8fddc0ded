import { type Condition, type Field, type Fields, holds } from '@underlath/rules/kernel';

/** Measurements as the form holds them: a field that is absent is not known. */
export type Inputs = Readonly<Record<string, unknown>>;

export type VisibleField = { name: string; field: Field };

/** What a field answers when nobody touched it. */
export function givenOrDefault(name: string, field: Field, inputs: Inputs): unknown {
  const value = inputs[name];
  return value === undefined && 'default' in field ? field.default : value;
}

/** The inputs with their defaults, as conditions are asked of them. */
export function withDefaults(fields: Fields, inputs: Inputs): Inputs {
  const entries = Object.entries(fields).map(([name, field]) => [name, givenOrDefault(name, field, inputs)] as const);
  return Object.fromEntries(entries.filter(([, value]) => value !== undefined));
}

/** The fields to ask for now, in the check's own order. */
export function visibleFields(fields: Fields, inputs: Inputs): VisibleField[] {
  const answers = withDefaults(fields, inputs);
  return Object.entries(fields)
    .filter(([, field]) => field.showWhen === undefined || holds(field.showWhen, answers))
    .map(([name, field]) => ({ name, field }));
}

/** Whether the check can answer without this field now. */
export function isOptional(field: Field, answers: Inputs): boolean {
  const needed: 'always' | 'optional' | { readonly when: Condition } = field.needed ?? 'always';
  if (needed === 'always') return false;
  return needed === 'optional' || !holds(needed.when, answers);
}

/** The inputs with one answer changed; undefined or null takes it away. */
export function setAnswer(inputs: Inputs, name: string, value: unknown): Inputs {
  const { [name]: _old, ...rest } = inputs;
  return value === undefined || value === null ? rest : { ...rest, [name]: value };
}

/**
 * What is sent to be judged: answers to questions that are no longer asked are left out, so that a measurement made
 * before the person changed an earlier answer can't speak for another case. Defaults the person saw and left are sent.
 */
export function askedInputs(fields: Fields, inputs: Inputs): Inputs {
  const asked = visibleFields(fields, inputs).flatMap(({ name, field }) => {
    const value = givenOrDefault(name, field, inputs);
    if (value === undefined || value === null) return [];
    if (field.kind === 'group') return [[name, askedInputs(field.fields, value as Inputs)] as const];
    if (field.kind === 'list')
      return [[name, (value as Inputs[]).map((item) => askedInputs(field.item, item))] as const];
    return [[name, value] as const];
  });
  return Object.fromEntries(asked);
}

/** Where a person goes on: the first question without an answer, or the last one. */
export function firstOpenStep(fields: Fields, inputs: Inputs): number {
  const steps = visibleFields(fields, inputs);
  const at = steps.findIndex(({ name, field }) => givenOrDefault(name, field, inputs) === undefined);
  return at < 0 ? Math.max(0, steps.length - 1) : at;
}

/** The drawing that goes with a question: its own, or for a group the first one its parts name. */
export function pictureOf(field: Field): string | undefined {
  if (field.picture || field.kind !== 'group') return field.picture;
  return Object.values(field.fields).find((part) => part.picture)?.picture;
}
