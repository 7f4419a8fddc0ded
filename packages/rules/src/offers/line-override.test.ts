import fc from 'fast-check';
import { expect, test } from 'vitest';
import { sumCents } from '../kernel/index.ts';
import type { CostBook } from '../pricing/book/cost-book.ts';
import { workLine } from '../pricing/book/price-by-book.setup.ts';
import { starterCostBook } from '../pricing/book/starter-cost-book.data.ts';
import { evaluateEstimate } from '../pricing/estimate/estimate.ts';
import { evaluateRange } from '../pricing/range/range.ts';
import type { WorkLine } from '../repairs/drawn.ts';
import { mergeRates, RATE_FIELDS, type TypedRates } from '../repairs/overrides.ts';
import type { ManualLine } from './document/estimate-content.ts';
import { estimateOf, priceWork } from './price-work.ts';

const why = 'Measured again on site';
const work = (operation: string, quantity: number, typed?: TypedRates): WorkLine => {
  const item = starterCostBook.items.find((one) => one.operation === operation);
  return workLine({ operation, quantity, unit: item?.unit ?? 'each', place: 'wall', ...(typed && { typed }) });
};
const price = (lines: readonly WorkLine[], book: CostBook = starterCostBook, manual: readonly ManualLine[] = []) =>
  priceWork({ work: lines, manual: manual.map((line) => ({ findingId: 'finding', line })) }, { version: 1, book });
const lineOf = (one: WorkLine, book?: CostBook) => {
  const [line] = price([one], book).lines;
  if (!line) throw new Error('no line was priced');
  return line;
};

const anyTyped = fc.dictionary(
  fc.constantFrom(...RATE_FIELDS),
  fc.record({ value: fc.nat(2000), why: fc.constant(why) }),
) as fc.Arbitrary<TypedRates>;
const anyWork = fc.uniqueArray(
  fc.record({
    at: fc.nat(starterCostBook.items.length - 1),
    quantity: fc.double({ min: 0, max: 10, noNaN: true }),
    typed: anyTyped,
  }),
  { selector: ({ at }) => at, minLength: 1, maxLength: 8 },
);
const worked = (all: readonly { at: number; quantity: number; typed: TypedRates }[]) =>
  all.map(({ at, quantity, typed }) => work(starterCostBook.items[at]?.operation ?? '', quantity, typed));

test('a rate typed by hand is the one that is counted, and says what it was, what it is and why', () => {
  const line = lineOf(
    work('plate-tie', 2, { hoursPerUnit: { value: 1.5, why }, materialCentsPerUnit: { value: 2000, why } }),
  );
  expect(line).toMatchObject({ laborCents: 15_732, materialCents: 4000 });
  expect(line.overrides).toEqual([
    { field: 'hoursPerUnit', was: 0.75, is: 1.5, why },
    { field: 'materialCentsPerUnit', was: expect.any(Number), is: 2000, why },
  ]);
  expect(line.steps[1]?.en).toBe('Hours a unit set by the estimator: was 0.75, is 1.5.');
  expect(line.steps[2]).toEqual({ en: why, es: '' });
  expect(line.rates).toMatchObject({ hoursPerUnit: 1.5, materialCentsPerUnit: 2000 });
});

test('taking what was typed away leaves the price of the book', () => {
  fc.assert(
    fc.property(anyWork, (all) => {
      const restored = worked(all).map(({ typed: _typed, ...line }) => line);
      const never = worked(all.map((one) => ({ ...one, typed: {} })));
      expect(price(restored)).toEqual(price(never));
    }),
  );
});

test('with rates typed by hand every line still foots, the parts make the whole, and no order changes a sum', () => {
  fc.assert(
    fc.property(anyWork, (all) => {
      const scope = price(worked(all));
      expect(scope.gaps).toEqual([]);
      for (const line of scope.lines) {
        const { laborCents, materialCents, taxCents, subcontractCents, equipmentCents, otherCents } = line;
        const parts = [laborCents, materialCents, taxCents, subcontractCents, equipmentCents, otherCents];
        expect(sumCents(parts)).toBe(line.totalCents);
      }
      expect(sumCents(scope.lines.map(({ totalCents }) => totalCents))).toBe(scope.subtotalCents);
      expect(scope.subtotalCents + scope.overheadCents + scope.profitCents).toBe(scope.totalCents);
      expect(price(worked(all).reverse()).totalCents).toBe(scope.totalCents);
    }),
  );
});

test('a credit typed by hand gives back exactly what the same charge costs, overhead and profit included', () => {
  const anyManual = fc.record({
    title: fc.constant('Old tile'),
    quantity: fc.double({ min: 0.01, max: 100, noNaN: true }),
    unit: fc.constant('sf'),
    unitCents: fc.integer({ min: 1, max: 100_000 }),
    why: fc.constant(why),
  });
  fc.assert(
    fc.property(fc.array(anyManual, { minLength: 1, maxLength: 8 }), (charges) => {
      const credits = charges.map((line) => ({ ...line, kind: 'credit' as const }));
      expect(price([], starterCostBook, credits).totalCents).toBe(0 - price([], starterCostBook, charges).totalCents);
      expect(price([], starterCostBook, [...charges, ...credits]).totalCents).toBe(0);
    }),
  );
});

test('a line typed by hand needs no cost book, and is told in its own unit', () => {
  const line = { title: 'Haul the old tile', quantity: 12, unit: 'bags', unitCents: 900, why: 'No room in the bin' };
  const empty: CostBook = { ...starterCostBook, trades: [], items: [], fees: [] };
  const [told] = price([], empty, [line]).lines;
  expect(told).toMatchObject({
    operation: 'manual',
    unit: 'bags',
    otherCents: 10_800,
    totalCents: 10_800,
    kind: 'charge',
  });
  expect(told?.steps.map(({ en }) => en)).toEqual([
    'No room in the bin.',
    'Typed by the estimator: 12 bags x $9.00 = $108.00.',
  ]);
});

test('a rate the book lacks is no gap once it is typed by hand', () => {
  const without: CostBook = {
    ...starterCostBook,
    items: starterCostBook.items.map((item) =>
      item.operation === 'plate-tie' ? { ...item, hoursPerUnit: null, materialCentsPerUnit: null } : item,
    ),
  };
  expect(price([work('plate-tie', 2)], without).gaps[0]?.lacks).toEqual(['hours', 'material']);
  const typed = { hoursPerUnit: { value: 1, why }, materialCentsPerUnit: { value: 500, why } };
  const line = lineOf(work('plate-tie', 2, typed), without);
  expect(line.overrides?.map(({ was }) => was)).toEqual([null, null]);
  expect(line.steps[1]?.en).toBe('Hours a unit set by the estimator: not in the cost book, is 1.');
  expect(line.steps[1]?.es).toContain('no está en el libro de costos');
});

test('other cost typed by hand holds the fee of the item, which is not counted twice', () => {
  const item = starterCostBook.items.find(({ fee }) => fee !== undefined);
  if (!item) throw new Error('the starter book names no fee');
  const fee = starterCostBook.fees.find(({ id }) => id === item.fee);
  const line = lineOf(work(item.operation, 1, { otherCentsPerUnit: { value: 12_345, why } }));
  expect(line.otherCents).toBe(12_345);
  expect(line.overrides?.[0]?.was).toBe(item.otherCentsPerUnit + (fee?.cents ?? Number.NaN));
});

test('hours typed by hand keep the spread of the book around them, and the range follows', () => {
  const input = (typed?: TypedRates) => {
    const made = estimateOf(
      { work: [work('plate-tie', 40, typed)], manual: [] },
      { version: 1, book: starterCostBook },
    );
    if (!made) throw new Error('no estimate was made');
    return made;
  };
  const [book, twice] = [input(), input({ hoursPerUnit: { value: 1.5, why } })];
  const [before, after] = [book.lines[0]?.hoursPerUnit, twice.lines[0]?.hoursPerUnit];
  expect(after?.low).toBeCloseTo(2 * (before?.low ?? Number.NaN), 10);
  expect(after?.high).toBeCloseTo(2 * (before?.high ?? Number.NaN), 10);
  const range = { trials: 2000, seed: 1, correlation: 0.3, shape: 'pert-beta' as const };
  const spread = (one: typeof book) => evaluateRange(one, range, evaluateEstimate(one)).analyticSdCents ?? Number.NaN;
  // Twice the hours spread twice as far; each deviation is rounded to a cent.
  expect(Math.abs(spread(twice) - 2 * spread(book))).toBeLessThanOrEqual(2);
  expect(evaluateEstimate(twice).totalCents).toBeGreaterThan(evaluateEstimate(book).totalCents);
});

test('hours typed where the book has none do not vary', () => {
  const [item] = starterCostBook.items.filter(({ operation }) => operation === 'plate-tie');
  if (!item) throw new Error('the starter book lacks the tie');
  const book = { ...starterCostBook, items: [{ ...item, hoursPerUnit: null }] };
  const typed = work('plate-tie', 1, { hoursPerUnit: { value: 3, why } });
  const input = estimateOf({ work: [typed], manual: [] }, { version: 1, book });
  expect(input?.lines[0]?.hoursPerUnit).toEqual({ low: 3, likely: 3, high: 3 });
});

test('work of which nothing is left costs nothing, reaches for no minimum charge and lacks no rate', () => {
  const visit = starterCostBook.items.find(({ minimumCents }) => minimumCents > 0);
  if (!visit) throw new Error('the starter book has no minimum charge');
  expect(lineOf(work(visit.operation, 0)).totalCents).toBe(0);
  expect(lineOf(work(visit.operation, 0), { ...starterCostBook, items: [] }).totalCents).toBe(0);
});

test('of two findings that typed a rate of their shared line the larger counts, in whatever order they come', () => {
  const [one, two] = [
    { operation: 'open-finish', hoursPerUnit: 0.2, otherCentsPerUnit: 5, why: 'Tile' },
    { operation: 'open-finish', hoursPerUnit: 0.3, why: 'Plaster on lath' },
  ];
  const merged = {
    hoursPerUnit: { value: 0.3, why: 'Plaster on lath' },
    otherCentsPerUnit: { value: 5, why: 'Tile' },
  };
  expect(mergeRates([one, two])).toEqual(merged);
  expect(mergeRates([two, one])).toEqual(merged);
  const alike = [
    { operation: 'x', hoursPerUnit: 1, why: 'b' },
    { operation: 'x', hoursPerUnit: 1, why: 'a' },
  ];
  expect(mergeRates(alike)).toEqual(mergeRates(alike.toReversed()));
});
