import { starterCostBook } from '@underlath/rules/pricing';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { ProblemError } from '../../platform/problem-error.ts';
import { csvOfBook, csvOfRows, readBookCsv, rowsOfCsv } from './cost-book-csv.ts';

test('what is written is read back as it was, whatever stands in a cell', () => {
  const cell = fc.oneof(
    fc.string({ unit: 'grapheme' }),
    fc.constantFrom('=1+1', "'=1+1", "''@x", '+1', '-1', '@a', '\t=a', 'a"b', 'a,b', 'a\r\nb', "'", 'é'),
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

test('a book exported and imported again changes nothing, with the UTF-8 mark or without', () => {
  const csv = csvOfBook(starterCostBook);
  expect(csv.startsWith('\uFEFFrow,id,name,unit,currency,')).toBe(true);
  for (const each of [csv, csv.slice(1), csv.replaceAll('\r\n', '\n')])
    expect(readBookCsv(each, starterCostBook)).toEqual({ book: starterCostBook, changes: [] });
});

test('a wrong cell is named by row and column with what came and what is allowed', () => {
  const csv = csvOfBook(starterCostBook).replace(',38.00,', ',$38,');
  const read = () => readBookCsv(csv, starterCostBook);
  expect(read).toThrow(ProblemError);
  try {
    read();
  } catch (error) {
    expect((error as ProblemError).errors).toEqual([
      {
        pointer: '/csv/3/wage_usd_per_hour',
        detail: expect.stringMatching(/^row 3, wage_usd_per_hour: came as “\$38”; allowed is US dollars/),
      },
    ]);
  }
});

test('a quote that is never closed is no CSV', () => {
  expect(() => rowsOfCsv('row,id\r\ntrade,"carpenter')).toThrow(/cannot be read as comma-separated values/);
});
