import * as z from 'zod';

/** A value of a JSON column that no reader here knows: written by a newer version of this program, or by another hand. */
export class StoredValueError extends Error {
  override readonly name = 'StoredValueError';
  /** The column, `finding.estimate`. */
  readonly column: string;
  /** Which row it is of. */
  readonly row: string;
  constructor(column: string, row: string, why: string) {
    super(`${column} of ${row} ${why}`);
    this.column = column;
    this.row = row;
  }
}

/** What a column holds in each of its formats, by number. */
type Formats<T> = Readonly<Record<number, (value: unknown) => T>>;

/**
 * A reader of one JSON column. A value says its format by a number under `format`; one without a number is of format 1,
 * as all were before there was another. What is stored is never rewritten: an older format is read as it is.
 * @param column table and column, `finding.estimate`
 * @returns the value as it is read now; throws StoredValueError that names the row, for a format not known here or a value that does not fit its own
 */
export const readerOf =
  <T>(column: string, formats: Formats<T>) =>
  (row: string, value: unknown): T => {
    const number = formatOf(value);
    const read = typeof number === 'number' ? formats[number] : undefined;
    if (!read)
      throw new StoredValueError(
        column,
        row,
        `is of format ${JSON.stringify(number)}; known here is ${Object.keys(formats).join(', ')}.`,
      );
    try {
      return read(value);
    } catch (error) {
      if (!(error instanceof z.ZodError)) throw error;
      throw new StoredValueError(column, row, `does not fit format ${number}: ${z.prettifyError(error)}`);
    }
  };

function formatOf(value: unknown): unknown {
  if (typeof value !== 'object' || value === null || Array.isArray(value) || !('format' in value)) return 1;
  return value.format;
}

/**
 * Reads by the parts that everything hangs on, and keeps the rest as it was stored: limits on what may be typed have grown
 * tighter since some of it was kept, and what was kept is shown as it is.
 */
export const shaped =
  <T>(shape: z.ZodType<object>) =>
  (value: unknown): T =>
    shape.parse(value) as T;
