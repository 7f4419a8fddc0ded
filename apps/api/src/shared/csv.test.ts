import fc from 'fast-check';
import { expect, test } from 'vitest';
import { csvOfRows, rowsOfCsv } from './csv.ts';

test('what is written is read back as it was, whatever stands in a cell', () => {
  const cell = fc.oneof(
    fc.string({ unit: 'grapheme' }),
    fc.constantFrom('=1+1', "'=1+1", "''@x", '+1', '-1', "'-1", '@a', '\t=a', 'a"b', 'a,b', 'a\r\nb', "'", 'é'),
  );
  const rows = fc.array(fc.array(cell, { minLength: 2, maxLength: 4 }), { minLength: 1, maxLength: 5 });
  fc.assert(
    fc.property(rows, (cells) => {
      expect(rowsOfCsv(csvOfRows(cells))).toEqual(cells);
    }),
  );
});

test('no cell that is written starts a formula', () => {
  for (const sign of ['=', '+', '-', '@', '\t', '\r', '＝']) {
    const [, line] = csvOfRows([['name'], [`${sign}HYPERLINK("x")`]]).split(/\r\n(?=["'])/);
    expect(line).toMatch(/^"?'/);
  }
});

test('a number below zero stays a number; what only begins like one does not', () => {
  expect(csvOfRows([['-1150.00', '-1+1', '-', '+1']])).toBe("\uFEFF-1150.00,'-1+1,'-,'+1\r\n");
});

test('a quote that is never closed is no CSV', () => {
  expect(() => rowsOfCsv('row,id\r\ntrade,"carpenter')).toThrow(/cannot be read as comma-separated values/);
});
