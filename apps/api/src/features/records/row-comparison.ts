import { canonicalJson } from '../../platform/hash.ts';
import { type ExpectedRow, type ExpectedRows, JustBefore, OneOf, type ToldValue } from './expected-rows.ts';
import type { StoredRow, StoredRows } from './record-rows.repository.ts';
import { type TableName, tableNames, tableOf } from './record-tables.data.ts';

interface Found {
  faults: { seq: number | null; what: string }[];
  /** Rows compared, by table. */
  counts: Map<TableName, number>;
  /** Columns of which no event told, with the number of rows: events written before they were told. */
  untold: Map<string, number>;
}

/** Longest time between a moment that a service takes and the event it records: a transaction ends after 15 s. */
const transactionMs = 15_000;
/** Longer values are named and not shown. */
const shownLength = 60;

/** Holds the rows that are there against those that must be there. */
export function compareRows(expected: ExpectedRows, rows: StoredRows): Found {
  const found: Found = { faults: [], counts: new Map(), untold: new Map() };
  for (const table of tableNames) compareTable(table, expected.of(table), rows.get(table) ?? new Map(), found);
  return found;
}

function compareTable(
  table: TableName,
  expected: ReadonlyMap<string, ExpectedRow>,
  rows: ReadonlyMap<string, StoredRow>,
  { faults, counts, untold }: Found,
): void {
  const { title, compared } = tableOf(table);
  counts.set(table, rows.size);
  for (const [key, row] of rows) {
    const wanted = expected.get(key);
    if (!wanted) {
      faults.push({ seq: null, what: `The record does not know ${title} ${key}.` });
      continue;
    }
    for (const column of compared.filter((name) => name in row)) {
      const told = wanted.columns.get(column);
      if (!told) untold.set(`${column} of a ${title}`, (untold.get(`${column} of a ${title}`) ?? 0) + 1);
      else if (!isAsTold(told.value, row[column]))
        faults.push({ seq: told.seq, what: changed(title, key, column, row, told) });
    }
  }
  for (const [key, { seq }] of expected) {
    if (!rows.has(key)) faults.push({ seq, what: `${capital(title)} ${key} is gone.` });
  }
}

function isAsTold(told: unknown, found: unknown): boolean {
  if (told instanceof OneOf) return told.values.includes(found);
  if (told instanceof JustBefore) {
    const laterMs = told.at.getTime() - timeOf(found);
    return laterMs >= 0 && laterMs <= transactionMs;
  }
  if (canonicalJson(told) === canonicalJson(found ?? null)) return true;
  // The same moment has more than one way to be written.
  return typeof told === 'string' && told.includes('T') && timeOf(told) === timeOf(found);
}

const timeOf = (value: unknown): number => (typeof value === 'string' ? new Date(value).getTime() : Number.NaN);

function changed(title: string, key: string, column: string, row: StoredRow, { value }: ToldValue): string {
  const start = `${capital(title)} ${key} was changed: its ${column} is not the recorded one`;
  const [found, told] = [say(row[column]), say(value)];
  return found.length + told.length > shownLength ? `${start}.` : `${start} (${found}, recorded ${told}).`;
}

function say(value: unknown): string {
  if (value instanceof JustBefore) return value.at.toISOString();
  if (value instanceof OneOf) return value.values.join(' or ');
  return canonicalJson(value ?? null);
}

const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);
