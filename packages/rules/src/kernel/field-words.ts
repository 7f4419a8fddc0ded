import type { Field, LengthField, NumberField } from './fields.ts';
import { formatExact } from './measure.ts';
import { joinTexts, type Text, text } from './text.ts';
import { INCHES_PER } from './units.ts';

/** The most things counted, the longest name and the longest list that a field takes which sets no limit of its own. */
export const MOST_COUNTED = 100_000;
export const LONGEST_NAME = 60;
export const MOST_ITEMS = 200;

const same = (words: string): Text => text(words, words);
const range = (from: string, to: string): Text => text(`${from} to ${to}`, `${from} a ${to}`);
const between = (from: string, to: string): Text => text(`between ${from} and ${to}`, `entre ${from} y ${to}`);

/** Units as a reader says them; a year, a bare factor and a count need none. */
const SIGNS: Readonly<Record<string, string>> = {
  pct: '%',
  F: ' °F',
  plf: ' lb/ft',
  sf: ' sq ft',
  year: '',
  factor: '',
  count: '',
};

/** A number with its unit, as a reader says it: `1,500 psi`, `12%`. */
function writeNumber(value: number, unit: string): string {
  return unit === 'year' ? String(value) : `${value.toLocaleString('en-US')}${SIGNS[unit] ?? ` ${unit}`}`;
}

/** Up to here a carpenter says inches, not feet and inches. */
const MOST_IN_INCHES = 48;

/** The ends of a range, or the sizes there are, as a reader says them: a length as the tape has it. */
function writeAll(values: readonly number[], { kind, unit, max }: LengthField | NumberField): string[] {
  if (kind === 'number') return values.map((value) => writeNumber(value, unit));
  const inInches = unit === 'in' && max <= MOST_IN_INCHES;
  return values.map((value) => formatExact(value * INCHES_PER[unit], inInches ? 'inches' : 'feet-inches'));
}

const writeEnds = (field: LengthField | NumberField) => writeAll([field.min, field.max], field) as [string, string];

/** What an input takes, in words for a reader: `1/2" to 1"`, the choices by name. Empty for a group, whose parts say it. */
export function allowedWords(field: Field): Text {
  switch (field.kind) {
    case 'length':
    case 'number': {
      if ('oneOf' in field && field.oneOf) return same(writeAll(field.oneOf, field).join(', '));
      return range(...writeEnds(field));
    }
    case 'count':
      return text('a whole number', 'un número entero');
    case 'choice':
      return joinTexts(
        field.options.map(({ label }) => label),
        ' · ',
      );
    case 'flag':
      return text('yes, no, or not known', 'sí, no, o no se sabe');
    case 'name':
      return text('a name', 'un nombre');
    case 'list':
      return text('one or more, each with:', 'uno o más, cada uno con:');
    case 'group':
      return same('');
  }
}

/** What a measurement or a count has to be, for who just typed something else: `has to be between 2" and 24"`. */
function hasToBe(field: Field): Text {
  switch (field.kind) {
    case 'length':
    case 'number': {
      if ('oneOf' in field && field.oneOf) {
        const sizes = allowedWords(field);
        return text(`has to be one of ${sizes.en}`, `tiene que ser una de ${sizes.es}`);
      }
      const limits = between(...writeEnds(field));
      return text(`has to be ${limits.en}`, `tiene que estar ${limits.es}`);
    }
    case 'count': {
      const { min = 0, max = MOST_COUNTED } = field;
      const limits = between(writeNumber(min, 'count'), writeNumber(max, 'count'));
      return text(`has to be a whole number ${limits.en}`, `tiene que ser un número entero ${limits.es}`);
    }
    case 'choice':
      return text('has to be one of the answers offered', 'tiene que ser una de las respuestas ofrecidas');
    case 'flag':
      return text('has to be yes, no or not known', 'tiene que ser sí, no o no se sabe');
    case 'name': {
      const { maxLength = LONGEST_NAME } = field;
      return text(`has to have 1 to ${maxLength} letters`, `tiene que tener de 1 a ${maxLength} letras`);
    }
    case 'list': {
      const { minItems = 0, maxItems = MOST_ITEMS } = field;
      return text(
        `has to have ${minItems} to ${maxItems} entries`,
        `tiene que tener de ${minItems} a ${maxItems} datos`,
      );
    }
    case 'group':
      return text('has to be answered part by part', 'se contesta parte por parte');
  }
}

/** A label in the middle of a text: without the "Or:" of a second way to measure, the question mark or the colon. */
const tidyLabel = (label: string): string => {
  const bare = label.replace(/^(Or|O): /, '').replace(/[¿?:]/g, '');
  return `${bare.charAt(0).toUpperCase()}${bare.slice(1)}`;
};

/**
 * The refusal of a value that a field cannot take, in the words of the trade: `Depth: has to be between 2" and 24".` Text
 * that came in its place is named, since no box shows it any more.
 */
export function refusalWords(field: Field, typed?: string): Text {
  const rule = hasToBe(field);
  const not = typed === undefined ? text('', '') : text(`, not "${typed}"`, `, no "${typed}"`);
  return text(
    `${tidyLabel(field.label.en)}: ${rule.en}${not.en}.`,
    `${tidyLabel(field.label.es)}: ${rule.es}${not.es}.`,
  );
}
