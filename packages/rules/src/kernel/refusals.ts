import { compareLengths } from './compare.ts';
import { LONGEST_NAME, MOST_COUNTED, MOST_ITEMS, refusalWords } from './field-words.ts';
import type { Field } from './fields.ts';
import { decimal } from './quantity.ts';
import { atMost } from './ratio.ts';
import { type Text, text } from './text.ts';
import { INCHES_PER } from './units.ts';

export type InputPath = readonly (string | number)[];

/** One thing wrong with the inputs, addressed so that a form can point at it. */
export interface InputIssue {
  readonly path: InputPath;
  /** For who calls the API: names the input, what came, and what is allowed. */
  readonly message: Text;
  /** For who measures: the trade's words, without the name of an input. */
  readonly words: Text;
}

/** So many issues are worded; the rest are counted, so that a hostile body costs no more than an honest one. */
export const MOST_ISSUES = 20;
/** Of a value that came, so many characters are shown. */
const MOST_SHOWN = 60;

const cut = (words: string): string => (words.length > MOST_SHOWN ? `${words.slice(0, MOST_SHOWN)}…` : words);

/** What came, short whatever it is. */
export function showValue(value: unknown): Text {
  if (Array.isArray(value)) return text(`a list of ${value.length}`, `una lista de ${value.length}`);
  if (typeof value === 'object' && value !== null) return text('an object', 'un objeto');
  const shown = typeof value === 'string' ? JSON.stringify(cut(value)) : String(value);
  return text(shown, shown);
}

function refusal(path: InputPath, name: Text, came: Text, allowed: Text, words: Text): InputIssue {
  return {
    path,
    message: text(
      `${name.en}: got ${came.en}; allowed is ${allowed.en}.`,
      `${name.es}: llegó ${came.es}; se permite ${allowed.es}.`,
    ),
    words,
  };
}

/** What a field allows, for who calls the API. */
function allowedValue(field: Field): Text {
  switch (field.kind) {
    case 'length':
    case 'number': {
      const { min, max, unit } = field;
      if ('oneOf' in field && field.oneOf) {
        const sizes = `${field.oneOf.join(', ')} ${unit}`;
        return text(`one of ${sizes}`, `uno de ${sizes}`);
      }
      return text(`a number from ${min} to ${max} ${unit}`, `un número de ${min} a ${max} ${unit}`);
    }
    case 'count': {
      const { min = 0, max = MOST_COUNTED } = field;
      return text(`a whole number from ${min} to ${max}`, `un número entero de ${min} a ${max}`);
    }
    case 'choice': {
      const values = field.options.map((option) => option.value).join(', ');
      return text(`one of ${values}`, `uno de ${values}`);
    }
    case 'flag':
      return text('true or false, or left out when unknown', 'true o false, o nada si no se sabe');
    case 'name': {
      const { maxLength = LONGEST_NAME } = field;
      return text(`1 to ${maxLength} letters`, `de 1 a ${maxLength} letras`);
    }
    case 'group': {
      const keys = Object.keys(field.fields).join(', ');
      return text(`an object with ${keys}`, `un objeto con ${keys}`);
    }
    case 'list': {
      const keys = Object.keys(field.item).join(', ');
      const { minItems = 0, maxItems = MOST_ITEMS } = field;
      return text(
        `a list of ${minItems} to ${maxItems} objects with ${keys}`,
        `una lista de ${minItems} a ${maxItems} objetos con ${keys}`,
      );
    }
  }
}

const typedText = (value: unknown): string | undefined =>
  typeof value === 'string' && value !== '' ? cut(value) : undefined;

/** Refuses a value that its field cannot take. */
export function refuseValue(path: InputPath, field: Field, value: unknown): InputIssue {
  const name = path.join('.');
  const named = text(`${name} (${field.label.en})`, `${name} (${field.label.es})`);
  return refusal(path, named, showValue(value), allowedValue(field), refusalWords(field, typedText(value)));
}

/** Refuses an input that another one rules out. `came` and `allowed` are for the API, `words` for people. */
export function refuse(path: InputPath, came: Text | string | number, allowed: Text, words: Text): InputIssue {
  const name = path.join('.');
  const shown = typeof came === 'object' ? came : text(String(came), String(came));
  return refusal(path, text(name, name), shown, allowed, words);
}

/** What was measured, and what it can be at most: in inches or feet, each with its name in the trade. */
export interface Longest {
  readonly what: Text;
  readonly came: number | undefined;
  readonly most: number | undefined;
  readonly ofWhat: Text;
  readonly unit?: 'in' | 'ft';
}

/** Refuses a length longer than what it is part of; nothing while either is still to be measured. */
export function refuseLonger(path: InputPath, { what, came, most, ofWhat, unit = 'in' }: Longest): InputIssue[] {
  if (came === undefined || most === undefined || atMost(came, most)) return [];
  const { measured, limit } = compareLengths(came * INCHES_PER[unit], most * INCHES_PER[unit], 'at-most');
  const allowed = `${decimal(most, 4)} ${unit}`;
  const words = text(
    `${what.en}: ${measured.en} is more than ${ofWhat.en}, ${limit}.`,
    `${what.es}: ${measured.es} es más que ${ofWhat.es}, ${limit}.`,
  );
  return [
    refuse(
      path,
      `${decimal(came, 4)} ${unit}`,
      text(`at most ${allowed}, ${ofWhat.en}`, `hasta ${allowed}, ${ofWhat.es}`),
      words,
    ),
  ];
}

/** Refuses a name that another item of the list has. */
export const refuseSameName = (path: InputPath, name: string): InputIssue =>
  refuse(
    path,
    text(`"${name}" twice`, `"${name}" dos veces`),
    text('each name once', 'cada nombre una vez'),
    text(
      `Two are called "${name}": give each a name of its own.`,
      `Hay dos que se llaman "${name}": dé a cada uno su propio nombre.`,
    ),
  );

/** Refuses a name that no field has. */
export const refuseUnknown = (path: InputPath, names: readonly string[]): InputIssue => {
  const [key, known] = [cut(String(path.at(-1))), names.join(', ')];
  return {
    path: [...path.slice(0, -1), key],
    message: text(`Unknown input ${key}; allowed are ${known}.`, `Dato desconocido: ${key}; se permiten ${known}.`),
    words: text('Something was sent that this check does not ask for.', 'Se envió algo que esta revisión no pide.'),
  };
};

/** Refuses inputs that are no object at all. */
export const refuseWhole = (raw: unknown): InputIssue =>
  refusal(
    [],
    text('Inputs', 'Datos'),
    showValue(raw),
    text('an object', 'un objeto'),
    text('The measurements could not be read.', 'No se pudieron leer las medidas.'),
  );

/** The issues over those worded, counted. */
export const refuseRest = (count: number): InputIssue =>
  refusal(
    [],
    text('Inputs', 'Datos'),
    text(`${count} more that do not fit`, `${count} más que no caben`),
    text('what the check describes', 'lo que la revisión describe'),
    text(`And ${count} more that cannot be.`, `Y ${count} más que no pueden ser.`),
  );

/** The first issues, and how many more there are. */
export const firstIssues = (issues: readonly InputIssue[]): readonly InputIssue[] =>
  issues.length <= MOST_ISSUES ? issues : [...issues.slice(0, MOST_ISSUES), refuseRest(issues.length - MOST_ISSUES)];
