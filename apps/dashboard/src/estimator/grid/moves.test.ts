import { expect, test } from 'vitest';
import { blockOf, moved, stepped } from './moves.ts';

const size = { rows: 30, columns: 4 };
const at = { row: 3, column: 2 };

test.each([
  ['ArrowUp', false, { row: 2, column: 2 }],
  ['ArrowDown', false, { row: 4, column: 2 }],
  ['ArrowLeft', false, { row: 3, column: 1 }],
  ['ArrowRight', false, { row: 3, column: 3 }],
  ['Home', false, { row: 3, column: 0 }],
  ['End', false, { row: 3, column: 3 }],
  ['PageUp', false, { row: 0, column: 2 }],
  ['PageDown', false, { row: 13, column: 2 }],
  ['ArrowDown', true, { row: 29, column: 2 }],
  ['ArrowLeft', true, { row: 3, column: 0 }],
  ['Home', true, { row: 0, column: 0 }],
  ['End', true, { row: 29, column: 3 }],
  ['a', false, undefined],
])('%s (far: %s) leads to %o', (key, far, to) => expect(moved(at, key, far, size)).toEqual(to));

test('no key leads out of the grid', () => {
  expect(moved({ row: 0, column: 0 }, 'ArrowUp', false, size)).toEqual({ row: 0, column: 0 });
  expect(moved({ row: 29, column: 3 }, 'ArrowRight', false, size)).toEqual({ row: 29, column: 3 });
});

test('after the last cell of a row comes the first of the next, and back', () => {
  expect(stepped({ row: 3, column: 3 }, 1, size)).toEqual({ row: 4, column: 0 });
  expect(stepped({ row: 4, column: 0 }, -1, size)).toEqual({ row: 3, column: 3 });
  expect(stepped({ row: 29, column: 3 }, 1, size)).toEqual({ row: 29, column: 3 });
});

test('a block from a spreadsheet keeps its rows and its empty cells', () => {
  expect(blockOf('1\t2\r\n\t 4\r\n')).toEqual([
    ['1', '2'],
    ['', '4'],
  ]);
});
