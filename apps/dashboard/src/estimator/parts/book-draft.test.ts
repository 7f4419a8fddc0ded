import { costBookSchema, starterCostBook } from '@underlath/rules/pricing';
import { expect, test } from 'vitest';
import { draftOfBook, readBook } from './book-draft.ts';

test('a cost book that nobody touched is read back as it was', () => {
  const { book, reader } = readBook(draftOfBook(starterCostBook));
  expect(reader.problem).toBeNull();
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
  const { reader } = readBook({ ...draft, items });
  expect(reader.problem?.errors?.[0]?.pointer).toBe('/book/items/3/hoursPerUnit');
});

test('a cell that is no number is refused with what was typed', () => {
  const draft = draftOfBook(starterCostBook);
  const trades = draft.trades.map((trade, at) => (at === 0 ? { ...trade, burden: 'lots' } : trade));
  const error = readBook({ ...draft, trades }).reader.problem?.errors?.[0];
  expect(error).toMatchObject({ pointer: '/book/trades/0/burdenPct', detail: expect.stringContaining('lots') });
});
