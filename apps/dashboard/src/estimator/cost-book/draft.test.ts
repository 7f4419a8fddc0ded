import { costBookSchema, starterCostBook } from '@underlath/rules/pricing';
import { expect, test } from 'vitest';
import { type BookDraft, draftOfBook, editableBook, freeId, partPointer, readBook, withMissing } from './draft.ts';

test('a cost book that nobody touched is read back as it was', () => {
  const { book, problem } = readBook(draftOfBook(starterCostBook));
  expect(problem).toBeNull();
  expect(book).toEqual(costBookSchema.parse(starterCostBook));
});

test('hours left empty are a rate not known, never zero', () => {
  const draft = draftOfBook(starterCostBook);
  const items = draft.items.map((item, at) => (at === 0 ? { ...item, low: '', likely: '', high: '' } : item));
  expect(readBook({ ...draft, items }).book.items[0]?.hoursPerUnit).toBeNull();
});

test('hours that fall from low to high are refused at their row', () => {
  const draft = draftOfBook(starterCostBook);
  const items = draft.items.map((item, at) => (at === 3 ? { ...item, low: '9', likely: '1', high: '2' } : item));
  const { problem } = readBook({ ...draft, items });
  expect(problem?.errors?.[0]?.pointer).toBe('/book/items/3/hoursPerUnit');
});

test('a cell that is no number is refused with what was typed', () => {
  const draft = draftOfBook(starterCostBook);
  const trades = draft.trades.map((trade, at) => (at === 0 ? { ...trade, wage: 'lots' } : trade));
  const error = readBook({ ...draft, trades }).problem?.errors?.[0];
  expect(error).toMatchObject({ pointer: '/book/trades/0/wageCentsPerHour', detail: expect.stringContaining('lots') });
});

const pointers = (draft: BookDraft) => readBook(draft).problem?.errors?.map(({ pointer }) => pointer);
const put = (draft: BookDraft, table: 'items' | 'trades' | 'parts', at: number, cells: Record<string, string>) => ({
  ...draft,
  [table]: draft[table].map((row, index) => (index === at ? { ...row, ...cells } : row)),
});

test('a burden made of parts is their sum, and a wrong part is marked at its own cell', () => {
  const draft = draftOfBook(starterCostBook);
  const more = put(draft, 'parts', 1, { pct: '5.35' });
  expect(readBook(more).book.trades[0]?.burdenPct).toBe(40);
  const second = draft.parts.findIndex(({ trade }) => trade === 'laborer');
  expect(pointers(put(draft, 'parts', second, { pct: 'much' }))).toEqual(['/book/trades/1/burdenParts/0/pct']);
  expect(partPointer(draft, second)).toBe('/book/trades/1/burdenParts/0');
});

test('every wrong cell is marked, also what only the whole book shows', () => {
  let draft = put(draftOfBook(starterCostBook), 'items', 0, { waste: '120', wholeUnits: 'maybe' });
  draft = put(draft, 'items', 2, { trade: 'mason' });
  expect(pointers(draft)).toEqual(expect.arrayContaining(['/book/items/0/wastePct', '/book/items/0/wholeUnits']));
  expect(pointers(put(draftOfBook(starterCostBook), 'items', 2, { trade: 'mason' }))).toEqual(['/book/items/2/trade']);
});

test('hours of which one is missing are refused, not taken as zero', () => {
  const draft = put(draftOfBook(starterCostBook), 'items', 4, { likely: '' });
  expect(pointers(draft)).toEqual(['/book/items/4/hoursPerUnit']);
});

test('work that came later is added with invented rates that say so', () => {
  const old = draftOfBook({ ...starterCostBook, items: starterCostBook.items.slice(0, 5), fees: [] });
  const full = withMissing({ ...old, items: old.items.filter(({ fee }) => !fee) });
  expect(full.items.length).toBe(starterCostBook.items.length);
  expect(full.items.at(-1)?.invented).toBe('yes');
  expect(full.fees.length).toBeGreaterThan(0);
  expect(readBook(full).problem).toBeNull();
});

test('a new row has an id that no other row has', () => {
  const { trades } = draftOfBook(starterCostBook);
  const id = freeId(trades, 'trade');
  expect(id).toBe('trade-4');
  expect(freeId([...trades.slice(1), { key: 'k', id: 'trade-4' }], 'trade')).toBe('trade-5');
});

test('a book saved before a rule that it breaks is shown and marked, one of another shape is not', () => {
  const old = { ...starterCostBook, trades: starterCostBook.trades.slice(1) };
  const book = editableBook(old);
  expect(book).toEqual(old);
  const errors = book && readBook(draftOfBook(book)).problem?.errors;
  expect(errors?.[0]).toMatchObject({ pointer: '/book/items/0/trade', detail: expect.stringContaining('carpenter') });
  expect(editableBook({ ...starterCostBook, trades: 'many' })).toBeNull();
  expect(editableBook(null)).toBeNull();
});
