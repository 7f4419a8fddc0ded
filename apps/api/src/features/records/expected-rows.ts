import type { TableName } from './record-tables.data.ts';

/** A moment taken by the program's clock in the transaction that recorded it at `at`, just before. */
export class JustBefore {
  constructor(readonly at: Date) {}
}

/** One of several values, where an event does not tell which. */
export class OneOf {
  constructor(readonly values: readonly unknown[]) {}
}

export interface ToldValue {
  value: unknown;
  /** The event that told it last. */
  seq: number;
}

export interface ExpectedRow {
  /** The event that made it. */
  seq: number;
  columns: Map<string, ToldValue>;
}

type Values = Record<string, unknown>;

/** The rows that a project must have, as far as its events tell. */
export class ExpectedRows {
  private readonly tables = new Map<TableName, Map<string, ExpectedRow>>();
  private seq = 0;

  /** What is written next was told by this event. */
  at(seq: number): void {
    this.seq = seq;
  }

  of(table: TableName): Map<string, ExpectedRow> {
    const rows = this.tables.get(table) ?? new Map<string, ExpectedRow>();
    this.tables.set(table, rows);
    return rows;
  }

  put(table: TableName, key: string, values: Values): void {
    this.of(table).set(key, { seq: this.seq, columns: new Map() });
    this.change(table, key, values);
  }

  /** Of a row that no event made, too: then it is known from here on. What is undefined was not told. */
  change(table: TableName, key: string, values: Values): void {
    const row = this.of(table).get(key) ?? { seq: this.seq, columns: new Map<string, ToldValue>() };
    this.of(table).set(key, row);
    for (const [column, value] of Object.entries(values)) {
      if (value !== undefined) row.columns.set(column, { value, seq: this.seq });
    }
  }

  remove(table: TableName, key: string): void {
    this.of(table).delete(key);
  }

  value(table: TableName, key: string, column: string): unknown {
    return this.of(table).get(key)?.columns.get(column)?.value;
  }
}
