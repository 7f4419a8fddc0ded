import * as z from 'zod';
import type { Field, Fields } from './fields.ts';
import { type Text, text } from './text.ts';

/** One thing wrong with the inputs, addressed so that a form can point at it. */
export interface InputIssue {
  readonly path: readonly (string | number)[];
  readonly message: Text;
}

const show = (value: unknown): string => {
  const shown = typeof value === 'number' ? String(value) : JSON.stringify(value);
  return shown === undefined ? String(value) : shown.slice(0, 60);
};

/** What a field allows, in words. */
function allowed(field: Field): Text {
  switch (field.kind) {
    case 'length':
    case 'number':
      if (field.kind === 'length' && field.oneOf) {
        const sizes = field.oneOf.join(', ');
        return text(`one of ${sizes} ${field.unit}`, `uno de ${sizes} ${field.unit}`);
      }
      return text(
        `a number from ${field.min} to ${field.max} ${field.unit}`,
        `un número de ${field.min} a ${field.max} ${field.unit}`,
      );
    case 'count':
      return text(
        `a whole number from ${field.min ?? 0} to ${field.max ?? MAX_COUNT}`,
        `un número entero de ${field.min ?? 0} a ${field.max ?? MAX_COUNT}`,
      );
    case 'choice': {
      const values = field.options.map((option) => option.value).join(', ');
      return text(`one of ${values}`, `uno de ${values}`);
    }
    case 'flag':
      return text('true or false, or left out when unknown', 'true o false, o nada si no se sabe');
    case 'name':
      return text(`1 to ${field.maxLength ?? MAX_NAME} letters`, `de 1 a ${field.maxLength ?? MAX_NAME} letras`);
    case 'group': {
      const keys = Object.keys(field.fields).join(', ');
      return text(`an object with ${keys}`, `un objeto con ${keys}`);
    }
    case 'list': {
      const keys = Object.keys(field.item).join(', ');
      const most = field.maxItems ?? MAX_ITEMS;
      return text(
        `a list of ${field.minItems ?? 0} to ${most} objects with ${keys}`,
        `una lista de ${field.minItems ?? 0} a ${most} objetos con ${keys}`,
      );
    }
  }
}

const MAX_COUNT = 100_000;
const MAX_NAME = 60;
const MAX_ITEMS = 200;

/** Says what the input is called, what came, and what is allowed. */
export function issueText(name: string, field: Field, value: unknown): Text {
  const range = allowed(field);
  return text(
    `${name} (${field.label.en}): got ${show(value)}; allowed is ${range.en}.`,
    `${name} (${field.label.es}): llegó ${show(value)}; se permite ${range.es}.`,
  );
}

const emptyIs = (value: unknown): unknown => (value === null ? undefined : value);
const unknownIs = (value: unknown): unknown => (value === null || value === 'unknown' ? undefined : value);
const numberAsText = (value: unknown): unknown => (typeof value === 'number' ? String(value) : emptyIs(value));

function scalarSchema(name: string, field: Field): z.ZodType {
  const error = (issue: { input?: unknown }) => issueText(name, field, issue.input).en;
  switch (field.kind) {
    case 'length': {
      const inRange = z.number({ error }).min(field.min, { error }).max(field.max, { error });
      const { oneOf } = field;
      return oneOf ? inRange.refine((value) => oneOf.includes(value), { error }) : inRange;
    }
    case 'number':
      return z.number({ error }).min(field.min, { error }).max(field.max, { error });
    case 'count':
      return z
        .number({ error })
        .int({ error })
        .min(field.min ?? 0, { error })
        .max(field.max ?? MAX_COUNT, { error });
    case 'choice':
      return z.enum(field.options.map((option) => option.value) as [string, ...string[]], { error });
    case 'flag':
      return z.boolean({ error });
    case 'name':
      return z
        .string({ error })
        .trim()
        .min(1, { error })
        .max(field.maxLength ?? MAX_NAME, { error });
    case 'group':
      return objectSchema(field.fields, error);
    case 'list':
      return z
        .array(objectSchema(field.item), { error })
        .min(field.minItems ?? 0, { error })
        .max(field.maxItems ?? MAX_ITEMS, { error });
  }
}

function fieldSchema(name: string, field: Field): z.ZodType {
  const schema = scalarSchema(name, field);
  const mayBeAbsent =
    'default' in field && field.default !== undefined ? schema.default(field.default) : schema.optional();
  if (field.kind === 'flag') return z.preprocess(unknownIs, mayBeAbsent);
  if (field.kind === 'choice') return z.preprocess(numberAsText, mayBeAbsent);
  if (field.kind === 'list' && field.orNumber !== undefined) {
    const inner = field.orNumber;
    const asItem = (value: unknown) => (typeof value === 'number' ? { [inner]: value } : value);
    return z.preprocess((value) => {
      if (typeof value === 'number') return [asItem(value)];
      return Array.isArray(value) ? value.map(asItem) : emptyIs(value);
    }, mayBeAbsent);
  }
  return z.preprocess(emptyIs, mayBeAbsent);
}

function unknownKeyMessage(keys: readonly string[], fields: Fields): string {
  return `Unknown input ${keys.join(', ')}; allowed are ${Object.keys(fields).join(', ')}.`;
}

function objectSchema(fields: Fields, error?: (issue: { input?: unknown }) => string): z.ZodType {
  const shape = Object.fromEntries(Object.entries(fields).map(([name, field]) => [name, fieldSchema(name, field)]));
  return z.strictObject(shape, {
    error: (issue) =>
      issue.code === 'unrecognized_keys'
        ? unknownKeyMessage((issue as { keys?: string[] }).keys ?? [], fields)
        : (error?.(issue) ?? `Inputs: got ${show(issue.input)}; allowed is an object.`),
  });
}

/** The zod schema of a set of fields. Every measurement may be absent; wrong types, impossible numbers and unknown names are refused. */
export const schemaOf = (fields: Fields): z.ZodType<Record<string, unknown>> =>
  objectSchema(fields) as z.ZodType<Record<string, unknown>>;

/** The field an issue points at, if it points at one. */
export function fieldAt(fields: Fields, path: readonly PropertyKey[]): Field | undefined {
  let here: Fields | undefined = fields;
  let field: Field | undefined;
  for (const step of path) {
    if (typeof step === 'number') continue;
    field = here?.[String(step)];
    here = field?.kind === 'group' ? field.fields : field?.kind === 'list' ? field.item : undefined;
  }
  return field;
}

const valueAt = (value: unknown, path: readonly PropertyKey[]): unknown =>
  path.reduce<unknown>((here, step) => (here as Record<PropertyKey, unknown> | undefined)?.[step], value);

/** Turns a zod failure into issues worded in both languages. */
export function issuesOf(error: z.ZodError, fields: Fields, inputs: unknown): InputIssue[] {
  return error.issues.map((issue) => {
    const field = fieldAt(fields, issue.path);
    const name = issue.path.map(String).join('.');
    const path = issue.path.map((step) => (typeof step === 'number' ? step : String(step)));
    const words =
      field && issue.code !== 'unrecognized_keys'
        ? issueText(name, field, valueAt(inputs, issue.path))
        : text(issue.message, issue.message);
    if (issue.code !== 'unrecognized_keys') return { path, message: words };
    const keys = issue.keys.join(', ');
    return {
      path: [...path, issue.keys[0] ?? ''],
      message: text(issue.message, `Dato desconocido: ${keys}.`),
    };
  });
}
