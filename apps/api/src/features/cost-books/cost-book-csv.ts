import type { FieldProblem } from '@underlath/contract';
import {
  type BookChange,
  type CostBook,
  compareBooks,
  HEADER,
  readBookTable,
  tableOfBook,
} from '@underlath/rules/pricing';
import { parse } from 'csv-parse/sync';
import { stringify } from 'csv-stringify/sync';
import { ProblemError } from '../../platform/problem-error.ts';

/** What a spreadsheet takes for a formula when a cell starts with it, apostrophes that guard it included. */
const formula = /^'*[=+\-@\t\r\n＝＋－＠]/;

/** A cell that a spreadsheet would run starts with an apostrophe, which `unguard` takes off again. */
const guard = (cell: string): string => (formula.test(cell) ? `'${cell}` : cell);
const unguard = (cell: string): string => (cell.startsWith("'") && formula.test(cell.slice(1)) ? cell.slice(1) : cell);

/** RFC 4180, with the mark by which spreadsheets know UTF-8. */
export const csvOfRows = (rows: readonly (readonly string[])[]): string =>
  stringify(
    rows.map((cells) => cells.map(guard)),
    { bom: true, record_delimiter: '\r\n' },
  );

/** @throws ProblemError `invalid-input` where the text is no CSV */
export function rowsOfCsv(csv: string): string[][] {
  try {
    const rows: string[][] = parse(csv, { bom: true, relax_column_count: true, skip_empty_lines: false });
    return rows.map((cells) => cells.map(unguard));
  } catch (cause) {
    // The parser names the line and what is wrong with its quotes.
    const detail = `The file cannot be read as comma-separated values: ${cause instanceof Error ? cause.message : String(cause)}`;
    throw new ProblemError('invalid-input', detail, { errors: [{ pointer: '/csv', detail }], cause });
  }
}

export const csvOfBook = (book: CostBook): string =>
  csvOfRows([HEADER, ...tableOfBook(book).map(({ cells }) => cells)]);

/**
 * The book a CSV holds, and what it would change in `current`. The whole file fits or none of it is taken.
 * @throws ProblemError `invalid-input` with each cell that does not fit, at `/csv/<row>/<column>`
 */
export function readBookCsv(csv: string, current: CostBook): { book: CostBook; changes: BookChange[] } {
  const { book, errors } = readBookTable(rowsOfCsv(csv), current.notice);
  if (book) return { book, changes: compareBooks(current, book) };
  const problems = errors.map(
    ({ row, column, detail }): FieldProblem => ({
      pointer: `/csv/${row}/${column}`,
      detail: `row ${row}, ${column}: ${detail}`,
    }),
  );
  const count = problems.length === 1 ? 'one cell does' : `${problems.length} cells do`;
  throw new ProblemError('invalid-input', `Nothing was taken from the file: ${count} not fit.`, { errors: problems });
}
