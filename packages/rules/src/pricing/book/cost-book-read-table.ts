import { type CostBook, costBookSchema } from './cost-book.ts';
import { type CellValue, COLUMNS, type Column, ROW_KINDS, type RowKind } from './cost-book-columns.ts';
import { HEADER } from './cost-book-table.ts';

/** One cell that does not fit. Rows are counted as a spreadsheet does: the header is row 1. */
export interface CellError {
  readonly row: number;
  readonly column: string;
  /** What came and what is allowed. */
  readonly detail: string;
}

export type ReadBook =
  | { readonly book: CostBook; readonly errors: readonly [] }
  | { readonly book: null; readonly errors: readonly CellError[] };

type Fields = Record<string, CellValue>;
interface Row {
  readonly kind: RowKind;
  readonly number: number;
  readonly fields: Fields;
}

const wrong = (row: number, column: string, came: string, allowed: string): CellError => ({
  row,
  column,
  detail: `came as ${came === '' ? 'nothing' : `“${came.slice(0, 80)}”`}; allowed is ${allowed}`,
});

/**
 * Reads a whole cost book from rows of texts, the header first, in any order of columns. All of it or nothing: any cell that
 * does not fit is named by row and column, and then there is no book. `notice` is not in a table and stays as given.
 */
export function readBookTable(table: readonly (readonly string[])[], notice: CostBook['notice']): ReadBook {
  const header = (table[0] ?? []).map((cell) => cell.trim().toLowerCase());
  const headErrors = checkHeader(header);
  if (headErrors.length > 0) return { book: null, errors: headErrors };
  const errors: CellError[] = [];
  const rows = table.slice(1).flatMap((cells, at) => readRow(header, cells, at + 2, errors) ?? []);
  const settings = rows.filter(({ kind }) => kind === 'settings');
  if (settings.length !== 1)
    errors.push(
      wrong(settings[1]?.number ?? 2, 'row', `${settings.length} settings rows`, 'one row of the kind “settings”'),
    );
  const { raw, rowAt } = assemble(rows, notice, errors);
  const parsed = costBookSchema.safeParse(raw);
  if (parsed.success && errors.length === 0) return { book: parsed.data, errors: [] };
  for (const issue of parsed.error?.issues ?? []) {
    const at = rowAt(issue.path);
    if (at && !errors.some((error) => error.row === at.row && same(error.column, at.column)))
      errors.push({ ...at, detail: issue.message });
  }
  return { book: null, errors: errors.toSorted((one, other) => one.row - other.row) };
}

/** Hours are three columns of one field: an error in any of them is enough. */
const same = (one: string, other: string): boolean =>
  one === other || (one.startsWith('hours_') && other.startsWith('hours_'));

function checkHeader(header: readonly string[]): CellError[] {
  return [
    ...COLUMNS.filter(({ name, mayLack }) => {
      const times = header.filter((each) => each === name).length;
      return times !== 1 && !(mayLack && times === 0);
    }).map(({ name }) => wrong(1, name, header.includes(name) ? `${name} twice` : '', `the column “${name}” once`)),
    ...header
      .filter((name) => !HEADER.includes(name))
      .map((name) => wrong(1, name, name, 'the columns of an export, separated by commas')),
  ];
}

function readRow(header: readonly string[], cells: readonly string[], number: number, errors: CellError[]): Row | null {
  if (cells.every((cell) => cell.trim() === '')) return null;
  const cellOf = (name: string) => cells[header.indexOf(name)] ?? '';
  const kind = ROW_KINDS.find((each) => each === cellOf('row').trim());
  if (!kind) {
    errors.push(wrong(number, 'row', cellOf('row'), ROW_KINDS.join(', ')));
    return null;
  }
  if (cells.length > header.length)
    errors.push(wrong(number, 'row', `${cells.length} cells`, `as many as the header has, ${header.length}`));
  const fields: Fields = {};
  for (const column of COLUMNS) readCell(column, kind, cellOf(column.name), number, fields, errors);
  return { kind, number, fields };
}

function readCell(
  column: Column,
  kind: RowKind,
  cell: string,
  number: number,
  fields: Fields,
  errors: CellError[],
): void {
  const field = column.fields[kind];
  if (field === undefined) {
    if (cell.trim() !== '') errors.push(wrong(number, column.name, cell, `nothing in a row of the kind “${kind}”`));
    return;
  }
  // The name of an operation is written for the reader; the program knows it.
  if (field === 'row' || field === 'title') return;
  const value = column.form.read(cell);
  if (Number.isNaN(value)) errors.push(wrong(number, column.name, cell, column.form.allowed));
  else if (value !== undefined) fields[field] = value;
}

/** Rows as the book they make, and the way back from a field of the book to its cell. */
function assemble(rows: readonly Row[], notice: CostBook['notice'], errors: CellError[]) {
  const of = (kind: RowKind) => rows.filter((each) => each.kind === kind);
  const [settings] = of('settings');
  const [trades, items, fees, burdens] = [of('trade'), of('item'), of('fee'), of('burden')];
  for (const { number, fields } of burdens)
    if (!trades.some((trade) => trade.fields.id === fields.trade))
      errors.push(wrong(number, 'id', String(fields.trade ?? ''), 'the id of a trade of this table'));
  const partsOf = (trade: Row) => burdens.filter(({ fields }) => fields.trade === trade.fields.id);
  const raw = {
    currency: 'USD',
    ...settings?.fields,
    placeholder: settings?.fields.placeholder === true,
    notice,
    trades: trades.map((trade) => {
      const burdenParts = partsOf(trade).map(({ fields: { name, pct } }) => ({ name, pct }));
      return { ...trade.fields, ...(burdenParts.length > 0 && { burdenParts }) };
    }),
    items: items.map(({ fields }) => itemOf(fields)),
    fees: fees.map(({ fields }) => fields),
  };
  const lists: Record<string, readonly Row[]> = { trades, items, fees };
  return { raw, rowAt: (path: readonly PropertyKey[]) => cellAt(path, lists, partsOf, settings) };
}

function itemOf(fields: Fields) {
  const { 'hoursPerUnit.low': low, 'hoursPerUnit.likely': likely, 'hoursPerUnit.high': high, fee, ...rest } = fields;
  const none = low === null && likely === null && high === null;
  return { ...rest, ...(fee !== undefined && { fee }), hoursPerUnit: none ? null : { low, likely, high } };
}

function cellAt(
  path: readonly PropertyKey[],
  lists: Record<string, readonly Row[]>,
  partsOf: (trade: Row) => Row[],
  settings: Row | undefined,
): { row: number; column: string } | undefined {
  const [list, at, ...field] = path;
  const listed = typeof at === 'number' ? lists[String(list)]?.[at] : undefined;
  if (!listed) return settings && { row: settings.number, column: columnOf('settings', String(list)) };
  const [name, partAt, partField] = field;
  const part = name === 'burdenParts' && typeof partAt === 'number' ? partsOf(listed)[partAt] : undefined;
  if (part) return { row: part.number, column: columnOf('burden', String(partField)) };
  return { row: listed.number, column: columnOf(listed.kind, field.map(String).join('.')) };
}

/** Where a field stands; hours that do not rise are marked at the first of them, and what has no column at the row. */
const columnOf = (kind: RowKind, field: string): string =>
  COLUMNS.find(({ fields }) => fields[kind] === field || fields[kind] === `${field}.low`)?.name ?? 'row';
