import { type Test, testOf } from './conditions.ts';
import { LONGEST_NAME, MOST_COUNTED, MOST_ITEMS } from './field-words.ts';
import type { Field, Fields } from './fields.ts';
import { type InputIssue, MOST_ISSUES, refuseRest, refuseUnknown, refuseValue, refuseWhole } from './refusals.ts';

export type { InputIssue } from './refusals.ts';

export type AnyInputs = Readonly<Record<string, unknown>>;

/** What was read: clean inputs with defaults filled in, what is missing, and everything that is wrong with them. */
export interface ReadResult {
  readonly inputs: AnyInputs;
  /** Names of the needed inputs that are absent, nested ones dotted (`counts.flush`, `members.0.sizeIn`). */
  readonly missing: readonly string[];
  /** Names of the inputs that were left out and for which something is assumed, dotted like `missing`; found when asked. */
  readonly assumed: () => readonly string[];
  /** Empty when the inputs can be judged. */
  readonly issues: readonly InputIssue[];
}

/**
 * Reads raw inputs. Wrong types, impossible numbers and unknown names are issues; every measurement may be absent. Made
 * once for a set of fields, and copying nothing that needs no change, so that judging thousands of findings costs little.
 */
export type ReadInputs = (raw: unknown) => ReadResult;

/** So many missing names are listed: a long list of empty items says no more with the rest of them. */
const MOST_MISSING = 200;

/** Where a value stands; the way back to the root is walked only when something is wrong. */
interface Place {
  readonly step: string | number;
  readonly parent: Place | undefined;
}

const pathOf = (place: Place | undefined): (string | number)[] => (place ? [...pathOf(place.parent), place.step] : []);

/** What a reader gives for a value it refuses. */
const REFUSED = Symbol('refused');

/** What one reading has found so far. */
interface Found {
  issues: InputIssue[] | undefined;
  /** How many issues were not worded. */
  unworded: number;
  missing: string[] | undefined;
  /** One for each object that left something open. */
  assumed: (() => string[])[] | undefined;
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
      const { min = 0, max = MOST_COUNTED } = field;
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
      const { maxLength = LONGEST_NAME } = field;
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

/** Words are made only for an issue that is listed. */
function addIssue(found: Found, wordIssue: () => InputIssue): void {
  if (!found.issues) found.issues = [wordIssue()];
  else if (found.issues.length < MOST_ISSUES) found.issues.push(wordIssue());
  else found.unworded++;
}

function listReader(name: string, field: Extract<Field, { kind: 'list' }>): Read {
  const readItem = objectReader(field.item);
  const { minItems = 0, maxItems = MOST_ITEMS, orNumber, orWord } = field;
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
      if (read === REFUSED) addIssue(found, () => refuseValue(pathOf(place), field, item));
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

/**
 * Reads an object that stands at `place`; anything else is refused. The object given is kept unless it must change. It walks
 * what is there, not all that could be: to look for a name that is absent costs more than to read one.
 */
function objectReader(fields: Fields): Read {
  const parts = Object.entries(fields).map(([name, field]) => partOf(name, field));
  const places = new Map(parts.map(({ name }, at) => [name, at]));
  /** The reading in which a part last came, below zero where it was refused. No reader runs inside itself. */
  const came = new Float64Array(parts.length);
  let reading = 0;
  return (raw, place, found) => {
    if (typeof raw !== 'object' || raw === null || Array.isArray(raw)) return REFUSED;
    const given = raw as Record<string, unknown>;
    let clean = given;
    let isStrange = false;
    reading++;
    for (const key in given) {
      const value = given[key];
      const at = places.get(key);
      if (at === undefined) {
        isStrange = true;
        continue;
      }
      if (value === undefined) continue;
      const part = parts[at] as Part;
      let read: unknown;
      if (!isLeftOut(part, value)) {
        read = part.read(value, place, found);
        came[at] = reading;
        if (read === REFUSED) {
          addIssue(found, () => refuseValue([...pathOf(place), key], part.field, value));
          read = undefined;
          came[at] = -reading;
        }
      }
      if (read === value) continue;
      if (clean === given) clean = { ...given };
      clean[key] = read;
    }
    if (isStrange) noteUnknown(given, places, place, found);
    let isShort = false;
    let isOpen = false;
    for (let at = 0; at < parts.length; at++) {
      if (came[at] === reading) continue;
      const part = parts[at] as Part;
      if (part.isNeeded !== undefined) isShort = true;
      if (came[at] === -reading) continue;
      if (part.isAssumed !== undefined) isOpen = true;
      if (part.preset === undefined) continue;
      if (clean === given) clean = { ...given };
      clean[part.name] = part.preset;
    }
    if (isShort) {
      for (let at = 0; at < parts.length; at++)
        if (came[at] !== reading) noteMissing(parts[at] as Part, clean, place, found);
    }
    if (isOpen) {
      found.assumed ??= [];
      found.assumed.push(() => assumedIn(given, clean, parts, place));
    }
    return clean;
  };
}

/** Nobody gave it: nothing there, or a yes-or-no answered with "unknown". */
const isLeftOut = ({ isFlag }: Part, value: unknown): boolean =>
  value === undefined || value === null || (isFlag && value === 'unknown');

/** Names that no field has. */
function noteUnknown(
  given: AnyInputs,
  places: ReadonlyMap<string, number>,
  place: Place | undefined,
  found: Found,
): void {
  for (const key of Object.keys(given))
    if (!places.has(key)) addIssue(found, () => refuseUnknown([...pathOf(place), key], [...places.keys()]));
}

function noteMissing({ name, isNeeded }: Part, clean: AnyInputs, place: Place | undefined, found: Found): void {
  if (isNeeded === undefined || !isNeeded(clean)) return;
  found.missing ??= [];
  if (found.missing.length < MOST_MISSING) found.missing.push([...pathOf(place), name].join('.'));
}

function assumedIn(given: AnyInputs, clean: AnyInputs, parts: readonly Part[], place: Place | undefined): string[] {
  return parts.flatMap((part) =>
    isLeftOut(part, given[part.name]) && part.isAssumed?.(clean) ? [[...pathOf(place), part.name].join('.')] : [],
  );
}

const NO_NAMES: readonly string[] = [];
const NO_ISSUES: readonly InputIssue[] = [];
const noNames = (): readonly string[] => NO_NAMES;

/** Makes the reader of a set of fields. */
export function inputReader(fields: Fields): ReadInputs {
  const object = objectReader(fields);
  return (raw) => {
    const found: Found = { issues: undefined, unworded: 0, missing: undefined, assumed: undefined };
    const inputs = object(raw, undefined, found);
    if (inputs === REFUSED) return { inputs: {}, missing: NO_NAMES, assumed: noNames, issues: [refuseWhole(raw)] };
    const { issues = NO_ISSUES, unworded, missing = NO_NAMES, assumed } = found;
    return {
      inputs: inputs as AnyInputs,
      missing,
      assumed: assumed ? () => assumed.flatMap((names) => names()) : noNames,
      issues: unworded > 0 ? [...issues, refuseRest(unworded)] : issues,
    };
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
