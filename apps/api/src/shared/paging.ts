import * as z from 'zod';
import { invalidInput } from '../platform/problem-error.ts';

/** Where a list goes on: the sort values of the last row shown. Callers pass it back unread. */
export function writeCursor(position: Record<string, unknown>): string {
  return Buffer.from(JSON.stringify(position), 'utf8').toString('base64url');
}

/** @throws ProblemError `invalid-input` at `query/cursor` */
export function readCursor<S extends z.ZodType>(schema: S, cursor: string | undefined): z.output<S> | undefined {
  if (cursor === undefined) return undefined;
  try {
    return schema.parse(JSON.parse(Buffer.from(cursor, 'base64url').toString('utf8')));
  } catch (error) {
    if (!(error instanceof SyntaxError || error instanceof z.ZodError)) throw error;
    throw invalidInput('query/cursor', 'The cursor is not one this list gave; start again without it.');
  }
}

/** The position in a list sorted newest first; it names the list, so that one of another list is refused. */
export const newestFirst = <const List extends string>(list: List) =>
  z.object({ list: z.literal(list), at: z.iso.datetime(), id: z.uuid() });
export type NewestFirst = Pick<z.infer<ReturnType<typeof newestFirst>>, 'at' | 'id'>;

export interface ListPage<Item> {
  items: Item[];
  next: string | null;
}

/** Cuts the one row that was read beyond the page and turns the last shown one into the cursor. */
export function cutPage<Row, Item>(
  rows: Row[],
  limit: number,
  toItem: (row: Row) => Item,
  position: (row: Row) => Record<string, unknown>,
): ListPage<Item> {
  const shown = rows.slice(0, limit);
  const last = shown.at(-1);
  const next = rows.length > limit && last ? writeCursor(position(last)) : null;
  return { items: shown.map(toItem), next };
}
