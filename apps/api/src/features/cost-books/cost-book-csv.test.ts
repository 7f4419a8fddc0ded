import { starterCostBook } from '@underlath/rules/pricing';
import { expect, test } from 'vitest';
import { ProblemError } from '../../platform/problem-error.ts';
import { csvOfBook, readBookCsv } from './cost-book-csv.ts';

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
