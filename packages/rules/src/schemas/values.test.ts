import { expect, test } from 'vitest';
import { line, lines, manyWords, personName, words } from './values.ts';

const told = (schema: typeof personName, text: string) =>
  schema.safeParse(text).error?.issues.map(({ message }) => message) ?? [];

test('a text that does not fit is told one thing about it', () => {
  for (const schema of [words(20), personName, manyWords(20)]) {
    for (const text of ['', '   ', '\u202e', '...', 'a\u0007']) expect(told(schema, text), text).toHaveLength(1);
  }
});

test('a line may stay empty and holds no break, lines hold breaks and tabs', () => {
  expect(told(line(20), '')).toEqual([]);
  expect(told(line(20), 'a\nb')).toEqual(['must be one line, without control or direction marks']);
  expect(told(lines(20), 'a\n\tb')).toEqual([]);
  expect(told(lines(20), 'a\u001bb')).toHaveLength(1);
});

test('words take a number, a name does not', () => {
  expect(told(words(20), '12')).toEqual([]);
  expect(told(personName, '12')).toEqual(['must have a letter']);
});
