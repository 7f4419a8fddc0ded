/** A cell of a grid, counted from 0. */
export type At = { readonly row: number; readonly column: number };
export type GridSize = { readonly rows: number; readonly columns: number };

/** Rows that Page Up and Page Down pass. */
const pageRows = 10;

const within = (value: number, count: number) => Math.max(0, Math.min(count - 1, value));

const steps: Record<string, (at: At, size: GridSize) => At> = {
  ArrowUp: ({ row, column }) => ({ row: row - 1, column }),
  ArrowDown: ({ row, column }) => ({ row: row + 1, column }),
  ArrowLeft: ({ row, column }) => ({ row, column: column - 1 }),
  ArrowRight: ({ row, column }) => ({ row, column: column + 1 }),
  Home: ({ row }) => ({ row, column: 0 }),
  End: ({ row }, { columns }) => ({ row, column: columns - 1 }),
  PageUp: ({ row, column }) => ({ row: row - pageRows, column }),
  PageDown: ({ row, column }) => ({ row: row + pageRows, column }),
};
const farSteps: Record<string, (at: At, size: GridSize) => At> = {
  ArrowUp: ({ column }) => ({ row: 0, column }),
  ArrowDown: ({ column }, { rows }) => ({ row: rows - 1, column }),
  ArrowLeft: ({ row }) => ({ row, column: 0 }),
  ArrowRight: ({ row }, { columns }) => ({ row, column: columns - 1 }),
  Home: () => ({ row: 0, column: 0 }),
  End: (_at, { rows, columns }) => ({ row: rows - 1, column: columns - 1 }),
};

/** Where a key leads, or undefined for a key that moves nothing. `far` is Ctrl or Command. */
export function moved(at: At, key: string, far: boolean, size: GridSize): At | undefined {
  const to = (far ? farSteps : steps)[key]?.(at, size);
  return to && { row: within(to.row, size.rows), column: within(to.column, size.columns) };
}

/** The next cell in reading order, or the one before; it stops at the first and the last. */
export function stepped({ row, column }: At, by: 1 | -1, { rows, columns }: GridSize): At {
  const place = within(row * columns + column + by, rows * columns);
  return { row: Math.floor(place / columns), column: place % columns };
}

/** A block of cells as spreadsheets put it on the clipboard: tabs between cells, a line for each row. */
export const blockOf = (pasted: string): string[][] =>
  pasted
    .replace(/\r?\n$/, '')
    .split(/\r?\n/)
    .map((line) => line.split('\t').map((cell) => cell.trim()));
