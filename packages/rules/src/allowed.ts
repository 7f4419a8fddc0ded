import { type Field, formatLength, joinTexts, type Text, text } from './kernel/index.ts';

const INCHES_PER_UNIT = { in: 1, ft: 12 } as const;

const same = (words: string): Text => text(words, words);
const range = (from: string, to: string): Text => text(`${from} to ${to}`, `${from} a ${to}`);

/** Units as a reader says them; a year and a bare factor need none. */
const SIGNS: Readonly<Record<string, string>> = {
  pct: '%',
  F: ' °F',
  plf: ' lb/ft',
  sf: ' sq ft',
  year: '',
  factor: '',
};

/** What an input takes, in words for a reader: `1/2" to 1"`, the choices by name. Empty for a group, whose parts say it. */
export function allowedWords(field: Field): Text {
  switch (field.kind) {
    case 'length': {
      const show = (value: number): string => formatLength(value * INCHES_PER_UNIT[field.unit]);
      return field.oneOf ? same(field.oneOf.map(show).join(', ')) : range(show(field.min), show(field.max));
    }
    case 'number': {
      const sign = SIGNS[field.unit] ?? ` ${field.unit}`;
      const show = (value: number): string =>
        field.unit === 'year' ? String(value) : `${value.toLocaleString('en-US')}${sign}`;
      return range(show(field.min), show(field.max));
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
