import type { Row } from './row.ts';

export type GridColumn = {
  readonly id: string;
  readonly head: string;
  /** Figures stand at the right and bring up a number pad. */
  readonly figure?: boolean;
  /** Holds sentences, which may run over several lines. */
  readonly words?: boolean;
  /** Only these values; what is shown for each. */
  readonly options?: readonly { readonly value: string; readonly label: string }[];
  /** Worked out, or named by the program: it can be read and copied. */
  readonly fixed?: (row: Row) => boolean;
  /** What is shown, where that is not what is typed. */
  readonly show?: (row: Row) => string;
};

export const shownIn = (column: GridColumn, row: Row): string => {
  const value = row[column.id] ?? '';
  return column.show?.(row) ?? column.options?.find((option) => option.value === value)?.label ?? value;
};

/** A choice may be typed or pasted as its value or as its words. */
export function valueFor(column: GridColumn, typed: string): string {
  const plain = typed.trim().toLowerCase();
  const option = column.options?.find(({ value, label }) =>
    [value, label].some((each) => each.toLowerCase() === plain),
  );
  return option?.value ?? typed;
}
