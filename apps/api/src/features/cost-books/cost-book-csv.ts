import type { FieldProblem } from '@underlath/contract';
import {
  type BookChange,
  type CostBook,
  compareBooks,
  HEADER,
  readBookTable,
  tableOfBook,
} from '@underlath/rules/pricing';
import { ProblemError } from '../../platform/problem-error.ts';
import { csvOfRows, rowsOfCsv } from '../../shared/csv.ts';

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
