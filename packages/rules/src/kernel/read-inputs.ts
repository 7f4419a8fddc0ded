import { holds } from './conditions.ts';
import type { Field, Fields } from './fields.ts';
import { type Text, text } from './text.ts';

/** One thing wrong with the inputs, addressed so that a form can point at it. */
export interface InputIssue {
  readonly path: readonly (string | number)[];
  readonly message: Text;
}

export type AnyInputs = Readonly<Record<string, unknown>>;

/** Either clean inputs, defaults filled in, or everything that is wrong with them. */
export type ReadResult =
  | { readonly inputs: AnyInputs; readonly issues?: undefined }
  | { readonly inputs?: undefined; readonly issues: readonly InputIssue[] };

/** A set of fields made ready once, so that reading thousands of findings costs little. */
export interface InputReader {
  /** Wrong types, impossible numbers and unknown names are refused; every measurement may be absent. */
  readonly read: (raw: unknown) => ReadResult;
  /** Names of the needed inputs that are absent, nested ones dotted (`counts.flush`, `members.0.sizeIn`). */
  readonly missing: (inputs: AnyInputs) => readonly string[];
}

const MAX_COUNT = 100_000;
const MAX_NAME = 60;
const MAX_ITEMS = 200;

/** Where a value stands; the way back to the root is walked only when something is wrong. */
interface Place {
  readonly step: string | number;
  readonly parent: Place | undefined;
}

const pathOf = (place: Place | undefined): (string | number)[] => (place ? [...pathOf(place.parent), place.step] : []);

const show = (value: unknown): string => {
  const shown = typeof value === 'number' ? String(value) : JSON.stringify(value);
  return shown === undefined ? String(value) : shown.slice(0, 60);
};

/** What a field allows, in words. */
function allowed(field: Field): Text {
  switch (field.kind) {
    case 'length':
      if (field.oneOf) {
        const sizes = `${field.oneOf.join(', ')} ${field.unit}`;
        return text(`one of ${sizes}`, `uno de ${sizes}`);
      }
      return text(
        `a number from ${field.min} to ${field.max} ${field.unit}`,
        `un número de ${field.min} a ${field.max} ${field.unit}`,
      );
    case 'number':
      return text(
        `a number from ${field.min} to ${field.max} ${field.unit}`,
        `un número de ${field.min} a ${field.max} ${field.unit}`,
      );
    case 'count': {
      const [least, most] = [field.min ?? 0, field.max ?? MAX_COUNT];
      return text(`a whole number from ${least} to ${most}`, `un número entero de ${least} a ${most}`);
    }
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
      const [least, most] = [field.minItems ?? 0, field.maxItems ?? MAX_ITEMS];
      return text(
        `a list of ${least} to ${most} objects with ${keys}`,
        `una lista de ${least} a ${most} objetos con ${keys}`,
      );
    }
  }
}

function issueAt(place: Place, field: Field, value: unknown): InputIssue {
  const path = pathOf(place);
  const range = allowed(field);
  const name = path.join('.');
  return {
    path,
    message: text(
      `${name} (${field.label.en}): got ${show(value)}; allowed is ${range.en}.`,
      `${name} (${field.label.es}): llegó ${show(value)}; se permite ${range.es}.`,
    ),
  };
}

/** Reads one present value, or adds an issue and gives undefined. */
type Read = (value: unknown, place: Place, issues: InputIssue[]) => unknown;

const within = (value: unknown, min: number, max: number): value is number =>
  typeof value === 'number' && value >= min && value <= max;

/** A reader that refuses what `accepts` does not take. */
const plain =
  (field: Field, accepts: (value: unknown) => boolean): Read =>
  (value, place, issues) => {
    if (accepts(value)) return value;
    issues.push(issueAt(place, field, value));
    return undefined;
  };

function readerOf(field: Field): Read {
  switch (field.kind) {
    case 'length': {
      const { min, max, oneOf } = field;
      return plain(field, (value) => within(value, min, max) && (!oneOf || oneOf.includes(value)));
    }
    case 'number': {
      const { min, max } = field;
      return plain(field, (value) => within(value, min, max));
    }
    case 'count': {
      const { min = 0, max = MAX_COUNT } = field;
      return plain(field, (value) => within(value, min, max) && Number.isInteger(value));
    }
    case 'flag':
      return plain(field, (value) => typeof value === 'boolean');
    case 'choice': {
      const values = new Set<unknown>(field.options.map((option) => option.value));
      const one = plain(field, (value) => values.has(value));
      return (value, place, issues) => one(typeof value === 'number' ? String(value) : value, place, issues);
    }
    case 'name':
      return (value, place, issues) => {
        const name = typeof value === 'string' ? value.trim() : '';
        if (name.length > 0 && name.length <= (field.maxLength ?? MAX_NAME)) return name;
        issues.push(issueAt(place, field, value));
        return undefined;
      };
    case 'group':
      return objectReader(field.fields, field);
    case 'list':
      return listReader(field);
  }
}

function listReader(field: Extract<Field, { kind: 'list' }>): Read {
  const readItem = objectReader(field.item, field);
  const { minItems = 0, maxItems = MAX_ITEMS, orNumber } = field;
  const asItem = (value: unknown) =>
    orNumber !== undefined && typeof value === 'number' ? { [orNumber]: value } : value;
  return (value, place, issues) => {
    const items = orNumber !== undefined && typeof value === 'number' ? [value] : value;
    if (!Array.isArray(items) || items.length < minItems || items.length > maxItems) {
      issues.push(issueAt(place, field, value));
      return undefined;
    }
    return items.map((item, at) => readItem(asItem(item), { step: at, parent: place }, issues));
  };
}

interface Part {
  readonly name: string;
  readonly read: Read;
  readonly preset: unknown;
  readonly isFlag: boolean;
}

/** Reads an object; `owner` is the field it belongs to, none for the inputs themselves. */
function objectReader(
  fields: Fields,
  owner?: Field,
): (raw: unknown, place: Place | undefined, issues: InputIssue[]) => unknown {
  const parts: Part[] = Object.entries(fields).map(([name, field]) => ({
    name,
    read: readerOf(field),
    preset: 'default' in field ? field.default : undefined,
    isFlag: field.kind === 'flag',
  }));
  const names = new Set(Object.keys(fields));
  return (raw, place, issues) => {
    if (typeof raw !== 'object' || raw === null || Array.isArray(raw)) {
      issues.push(owner && place ? issueAt(place, owner, raw) : notAnObject(raw));
      return undefined;
    }
    const given = raw as Record<string, unknown>;
    const clean: Record<string, unknown> = {};
    for (const { name, read, preset, isFlag } of parts) {
      const value = Object.hasOwn(given, name) ? given[name] : undefined;
      const absent = value === undefined || value === null || (isFlag && value === 'unknown');
      if (!absent) clean[name] = read(value, { step: name, parent: place }, issues);
      else if (preset !== undefined) clean[name] = preset;
    }
    for (const key in given) if (!names.has(key)) issues.push(unknownName(key, place, names));
    return clean;
  };
}

const notAnObject = (raw: unknown): InputIssue => ({
  path: [],
  message: text(`Inputs: got ${show(raw)}; allowed is an object.`, `Datos: llegó ${show(raw)}; se permite un objeto.`),
});

function unknownName(key: string, place: Place | undefined, names: ReadonlySet<string>): InputIssue {
  const known = [...names].join(', ');
  return {
    path: [...pathOf(place), key],
    message: text(`Unknown input ${key}; allowed are ${known}.`, `Dato desconocido: ${key}; se permiten ${known}.`),
  };
}

const NOTHING: readonly string[] = [];

type Missing = (inputs: AnyInputs, prefix: string, into: string[] | undefined) => string[] | undefined;

/** Finds what is needed and absent; makes no list while nothing is. */
function missingIn(fields: Fields): Missing {
  const parts = Object.entries(fields).map(([name, field]) => ({
    name,
    needed: field.needed ?? 'always',
    nested:
      field.kind === 'group' ? missingIn(field.fields) : field.kind === 'list' ? missingIn(field.item) : undefined,
  }));
  return (inputs, prefix, into) => {
    let found = into;
    const add = (name: string) => {
      if (found) found.push(prefix + name);
      else found = [prefix + name];
    };
    for (const { name, needed, nested } of parts) {
      const value = inputs[name];
      if (value === undefined || value === null) {
        if (needed === 'always' || (needed !== 'optional' && holds(needed.when, inputs))) add(name);
      } else if (nested) {
        if (Array.isArray(value))
          for (let at = 0; at < value.length; at++) found = nested(value[at], `${prefix}${name}.${at}.`, found);
        else found = nested(value as AnyInputs, `${prefix}${name}.`, found);
      }
    }
    return found;
  };
}

/** Makes the reader of a set of fields. */
export function inputReader(fields: Fields): InputReader {
  const object = objectReader(fields);
  const missing = missingIn(fields);
  return {
    read: (raw) => {
      const issues: InputIssue[] = [];
      const inputs = object(raw, undefined, issues) as AnyInputs;
      return issues.length > 0 ? { issues } : { inputs };
    },
    missing: (inputs) => missing(inputs, '', undefined) ?? NOTHING,
  };
}

/** The field a path points at, if it points at one. */
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
