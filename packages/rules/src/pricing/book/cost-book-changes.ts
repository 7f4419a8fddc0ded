import { OPERATIONS } from '../../repairs/operations.data.ts';
import type { CostBook } from './cost-book.ts';
import { COLUMNS, type RowKind } from './cost-book-columns.ts';
import { type BookRow, tableOfBook } from './cost-book-table.ts';
import { starterCostBook } from './starter-cost-book.data.ts';

/** One row of a cost book that is there no more, is new, or says something else. Cells as they stand in the table. */
export interface BookChange {
  readonly kind: 'added' | 'changed' | 'removed';
  readonly row: RowKind;
  readonly id: string;
  readonly name: string;
  readonly cells: readonly { readonly column: string; readonly was: string; readonly is: string }[];
}

const [KIND, ID, NAME, UNIT] = ['row', 'id', 'name', 'unit'].map((name) =>
  COLUMNS.findIndex((column) => column.name === name),
) as [number, number, number, number];

/** What makes a row the same one in both books: a part of a burden by its name, an item by its unit too. */
const keyOf = ({ kind, cells }: BookRow): string =>
  JSON.stringify([kind, cells[ID], kind === 'burden' ? cells[NAME] : '', cells[UNIT]]);

/** What changed from one book to another, row by row in the order of the newer one, what was removed last. */
export function compareBooks(was: CostBook, is: CostBook): BookChange[] {
  const before = new Map(tableOfBook(was).map((row) => [keyOf(row), row]));
  const after = new Map(tableOfBook(is).map((row) => [keyOf(row), row]));
  const changes = [...after].flatMap(([key, row]) => change(before.get(key), row) ?? []);
  const removed = [...before].flatMap(([key, row]) => (after.has(key) ? [] : (change(row, undefined) ?? [])));
  return [...changes, ...removed];
}

function change(was: BookRow | undefined, is: BookRow | undefined): BookChange | undefined {
  const row = is ?? was;
  if (!row) return undefined;
  const cells = COLUMNS.flatMap(({ name }, at) => {
    const [before, now] = [was?.cells[at] ?? '', is?.cells[at] ?? ''];
    return at === KIND || before === now ? [] : [{ column: name, was: before, is: now }];
  });
  if (was && is && cells.length === 0) return undefined;
  return {
    kind: was && is ? 'changed' : is ? 'added' : 'removed',
    row: row.kind,
    id: row.cells[ID] ?? '',
    name: row.cells[NAME] || row.kind,
    cells,
  };
}

/** Operations of the program that a book has no row for, as a book saved before they came. */
export const missingOperations = (book: CostBook) =>
  OPERATIONS.filter(({ id, unit }) => !book.items.some((item) => item.operation === id && item.unit === unit));

/**
 * The book with the starter's row for every operation it lacks, and the trade or fee such a row needs. What is added is
 * marked invented; nothing that was there is touched.
 */
export function withMissingOperations(book: CostBook): CostBook {
  const invented = { invented: true } as const;
  const lacking = new Set(missingOperations(book).map(({ id }) => id));
  const items = starterCostBook.items
    .filter(({ operation }) => lacking.has(operation))
    .map((item) => ({ ...item, ...invented }));
  const added = <T extends { id: string }>(
    have: readonly T[],
    starters: readonly T[],
    needed: Set<string | undefined>,
  ) =>
    starters
      .filter(({ id }) => needed.has(id) && !have.some((one) => one.id === id))
      .map((one) => ({ ...one, ...invented }));
  const trades = added(book.trades, starterCostBook.trades, new Set(items.map(({ trade }) => trade)));
  const fees = added(book.fees, starterCostBook.fees, new Set(items.map(({ fee }) => fee)));
  return {
    ...book,
    trades: [...book.trades, ...trades],
    items: [...book.items, ...items],
    fees: [...book.fees, ...fees],
  };
}
