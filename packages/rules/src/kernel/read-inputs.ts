import { type Test, testOf } from './conditions.ts';
import type { Field, Fields } from './fields.ts';
import { type Text, text } from './text.ts';

/** One thing wrong with the inputs, addressed so that a form can point at it. */
export interface InputIssue {
  readonly path: readonly (string | number)[];
  readonly message: Text;
}

export type AnyInputs = Readonly<Record<string, unknown>>;

/** What was read: clean inputs with defaults filled in, what is missing, and everything that is wrong with them. */
export interface ReadResult {
  readonly inputs: AnyInputs;
  /** Names of the needed inputs that are absent, nested ones dotted (`counts.flush`, `members.0.sizeIn`). */
  readonly missing: readonly string[];
  /** Names of the inputs that were left out and for which something is assumed, dotted like `missing`. */
  readonly assumed: readonly string[];
  /** Empty when the inputs can be judged. */
  readonly issues: readonly InputIssue[];
}

/**
 * Reads raw inputs. Wrong types, impossible numbers and unknown names are issues; every measurement may be absent. Made
 * once for a set of fields, and copying nothing that needs no change, so that judging thousands of findings costs little.
 */
export type ReadInputs = (raw: unknown) => ReadResult;

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

function issueAt(path: readonly (string | number)[], field: Field, value: unknown): InputIssue {
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

/** What a reader gives for a value it refuses. */
const REFUSED = Symbol('refused');

/** What one reading has found so far. */
interface Found {
  issues: InputIssue[] | undefined;
  missing: string[] | undefined;
  assumed: string[] | undefined;
}

/** Reads one present value of a field that stands in `owner`; nested readers note what they find themselves. */
type Read = (value: unknown, owner: Place | undefined, found: Found) => unknown;

const plain =
  (accepts: (value: unknown) => boolean): Read =>
  (value) =>
    accepts(value) ? value : REFUSED;

const within = (value: unknown, min: number, max: number): value is number =>
  typeof value === 'number' && value >= min && value <= max;

function readerOf(name: string, field: Field): Read {
  switch (field.kind) {
    case 'length': {
      const { min, max, oneOf } = field;
      return plain((value) => within(value, min, max) && (!oneOf || oneOf.includes(value)));
    }
    case 'number': {
      const { min, max } = field;
      return plain((value) => within(value, min, max));
    }
    case 'count': {
      const { min = 0, max = MAX_COUNT } = field;
      return plain((value) => within(value, min, max) && Number.isInteger(value));
    }
    case 'flag':
      return plain((value) => typeof value === 'boolean');
    case 'choice': {
      const values: readonly unknown[] = field.options.map((option) => option.value);
      return (value) => {
        const chosen = typeof value === 'number' ? String(value) : value;
        return values.includes(chosen) ? chosen : REFUSED;
      };
    }
    case 'name': {
      const { maxLength = MAX_NAME } = field;
      return (value) => {
        const given = typeof value === 'string' ? value.trim() : '';
        return given.length > 0 && given.length <= maxLength ? given : REFUSED;
      };
    }
    case 'group': {
      const read = objectReader(field.fields);
      return (value, owner, found) => read(value, { step: name, parent: owner }, found);
    }
    case 'list':
      return listReader(name, field);
  }
}

function addIssue(found: Found, issue: InputIssue): void {
  if (found.issues) found.issues.push(issue);
  else found.issues = [issue];
}

function listReader(name: string, field: Extract<Field, { kind: 'list' }>): Read {
  const readItem = objectReader(field.item);
  const { minItems = 0, maxItems = MAX_ITEMS, orNumber, orWord } = field;
  const asItem = (value: unknown) => {
    if (orNumber !== undefined && typeof value === 'number') return { [orNumber]: value };
    return orWord !== undefined && typeof value === 'string' ? { [orWord]: value } : value;
  };
  return (value, owner, found) => {
    const items = orNumber !== undefined && typeof value === 'number' ? [value] : value;
    if (!Array.isArray(items) || items.length < minItems || items.length > maxItems) return REFUSED;
    const list = { step: name, parent: owner };
    return items.map((item, at) => {
      const place = { step: at, parent: list };
      const read = readItem(asItem(item), place, found);
      if (read === REFUSED) addIssue(found, issueAt(pathOf(place), field, item));
      return read;
    });
  };
}

/** One field of an object, made ready. */
interface Part {
  readonly name: string;
  readonly field: Field;
  readonly read: Read;
  readonly preset: unknown;
  readonly isFlag: boolean;
  /** Whether the absent field is needed; undefined when it never is. */
  readonly isNeeded: Test | undefined;
  /** Whether leaving it out assumes something; undefined when it never does. */
  readonly isAssumed: Test | undefined;
}

const always: Test = () => true;
const never: Test = () => false;

function partOf(name: string, field: Field): Part {
  const { needed = 'always' } = field;
  const isNeeded = needed === 'always' ? always : needed === 'optional' ? undefined : testOf(needed.when);
  const preset = 'default' in field ? field.default : undefined;
  const isShown = field.showWhen ? testOf(field.showWhen) : always;
  const isAssumed = field.assumes && ((inputs: AnyInputs) => isShown(inputs) && !(isNeeded ?? never)(inputs));
  return {
    name,
    field,
    read: readerOf(name, field),
    preset,
    isFlag: field.kind === 'flag',
    isNeeded: preset === undefined ? isNeeded : undefined,
    isAssumed: preset === undefined ? isAssumed : field.assumes && isShown,
  };
}

/** Reads an object that stands at `place`; anything else is refused. The object given is kept unless it must change. */
function objectReader(fields: Fields): Read {
  const parts = Object.entries(fields).map(([name, field]) => partOf(name, field));
  const names = parts.map((part) => part.name);
  return (raw, place, found) => {
    if (typeof raw !== 'object' || raw === null || Array.isArray(raw)) return REFUSED;
    const given = raw as Record<string, unknown>;
    let clean = given;
    let present = 0;
    let isShort = false;
    let isOpen = false;
    for (let at = 0; at < parts.length; at++) {
      const part = parts[at] as Part;
      const value = given[part.name];
      let read = part.preset;
      if (value !== undefined) present++;
      if (value !== undefined && value !== null && !(part.isFlag && value === 'unknown')) {
        read = part.read(value, place, found);
        if (read === REFUSED) {
          addIssue(found, issueAt([...pathOf(place), part.name], part.field, value));
          read = undefined;
        }
      } else if (part.isAssumed !== undefined) isOpen = true;
      if (read === undefined && part.isNeeded !== undefined) isShort = true;
      if (read !== value) {
        if (clean === given) clean = { ...given };
        clean[part.name] = read;
      }
    }
    noteUnknown(given, present, names, place, found);
    if (isShort) noteMissing(clean, parts, place, found);
    if (isOpen) noteAssumed(given, clean, parts, place, found);
    return clean;
  };
}

/** A name that no field has; looked for only when there are more keys than fields with a value. */
function noteUnknown(
  given: Record<string, unknown>,
  present: number,
  names: readonly string[],
  place: Place | undefined,
  found: Found,
): void {
  let keys = 0;
  for (const _ in given) keys++;
  if (keys === present) return;
  for (const key of Object.keys(given)) if (!names.includes(key)) addIssue(found, unknownName(key, place, names));
}

function noteMissing(clean: AnyInputs, parts: readonly Part[], place: Place | undefined, found: Found): void {
  for (let at = 0; at < parts.length; at++) {
    const part = parts[at] as Part;
    if (part.isNeeded === undefined || clean[part.name] !== undefined || !part.isNeeded(clean)) continue;
    const name = [...pathOf(place), part.name].join('.');
    if (found.missing) found.missing.push(name);
    else found.missing = [name];
  }
}

function noteAssumed(
  given: AnyInputs,
  clean: AnyInputs,
  parts: readonly Part[],
  place: Place | undefined,
  found: Found,
): void {
  for (const { name, isFlag, isAssumed } of parts) {
    const value = given[name];
    const isLeftOut = value === undefined || value === null || (isFlag && value === 'unknown');
    if (!isLeftOut || !isAssumed?.(clean)) continue;
    found.assumed ??= [];
    found.assumed.push([...pathOf(place), name].join('.'));
  }
}

function unknownName(key: string, place: Place | undefined, names: readonly string[]): InputIssue {
  const known = names.join(', ');
  return {
    path: [...pathOf(place), key],
    message: text(`Unknown input ${key}; allowed are ${known}.`, `Dato desconocido: ${key}; se permiten ${known}.`),
  };
}

const notAnObject = (raw: unknown): InputIssue => ({
  path: [],
  message: text(`Inputs: got ${show(raw)}; allowed is an object.`, `Datos: llegó ${show(raw)}; se permite un objeto.`),
});

const NO_NAMES: readonly string[] = [];
const NO_ISSUES: readonly InputIssue[] = [];

/** Makes the reader of a set of fields. */
export function inputReader(fields: Fields): ReadInputs {
  const object = objectReader(fields);
  return (raw) => {
    const found: Found = { issues: undefined, missing: undefined, assumed: undefined };
    const inputs = object(raw, undefined, found);
    if (inputs === REFUSED) return { inputs: {}, missing: NO_NAMES, assumed: NO_NAMES, issues: [notAnObject(raw)] };
    const { missing = NO_NAMES, assumed = NO_NAMES, issues = NO_ISSUES } = found;
    return { inputs: inputs as AnyInputs, missing, assumed, issues };
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
