import { expect, test } from 'vitest';
import { sortRows } from './data-table.tsx';
import { errorAt, readablePointer } from './states.tsx';

const columns = [
  { key: 'price', head: 'Price', cell: () => null, sortBy: (row: { name: string; price: number }) => row.price },
];
const rows = [
  { name: 'b', price: 200 },
  { name: 'a', price: 30 },
  { name: 'c', price: 200 },
];

test('figures sort as figures, and equal rows keep their order', () => {
  expect(sortRows(rows, columns, { key: 'price', down: false }).map((row) => row.name)).toEqual(['a', 'b', 'c']);
  expect(sortRows(rows, columns, { key: 'price', down: true }).map((row) => row.name)).toEqual(['b', 'c', 'a']);
});

test('an unknown column leaves the rows as they came', () => {
  expect(sortRows(rows, columns, { key: 'age', down: false })).toEqual(rows);
});

test('a pointer is read as a person counts', () => {
  expect(readablePointer('/inputs/plates/0/lengthIn')).toBe('inputs, plates, 1, lengthIn');
});

test('a problem that points at a field gives that field its error', () => {
  const problem = { title: 'Not valid', errors: [{ pointer: '#/name', detail: 'Give the project a name.' }] };
  expect(errorAt(problem, '/name')).toBe('Give the project a name.');
  expect(errorAt(problem, '/client')).toBeUndefined();
});
