import { parse } from 'csv-parse/sync';
import { stringify } from 'csv-stringify/sync';
import { ProblemError } from '../platform/problem-error.ts';

/** What a spreadsheet takes for a formula when a cell starts with it, apostrophes that guard it included. */
const formula = /^'*[=+\-@\t\r\n＝＋－＠]/;
/** A number below zero starts with a sign as well, and runs nothing. */
const plainNumber = /^-\d+(\.\d+)?$/;

/** A cell that a spreadsheet would run starts with an apostrophe, which `unguard` takes off again. */
const guard = (cell: string): string => (formula.test(cell) && !plainNumber.test(cell) ? `'${cell}` : cell);
const unguard = (cell: string): string => (cell.startsWith("'") && formula.test(cell.slice(1)) ? cell.slice(1) : cell);

/** RFC 4180, with the mark by which spreadsheets know UTF-8. */
export const csvOfRows = (rows: Rows): string => write(rows, true);

/** What follows the first rows, where they are written some at a time. */
export const moreCsvRows = (rows: Rows): string => write(rows, false);

type Rows = readonly (readonly string[])[];

const write = (rows: Rows, bom: boolean): string =>
  stringify(
    rows.map((cells) => cells.map(guard)),
    { bom, record_delimiter: '\r\n' },
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
