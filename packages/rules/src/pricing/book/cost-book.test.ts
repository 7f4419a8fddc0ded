import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { OPERATIONS } from '../../repairs/operations.data.ts';
import { evaluateEstimate } from '../estimate/estimate.ts';
import { bookArbitrary } from './any-cost-book.setup.ts';
import { burdenedRateCents, type CostBook, costBookSchema, crewOf, restsOnInvented } from './cost-book.ts';
import { compareBooks, missingOperations, withMissingOperations } from './cost-book-changes.ts';
import { readBookTable } from './cost-book-read-table.ts';
import { HEADER, tableOfBook } from './cost-book-table.ts';
import { priceByBook, workLine } from './price-by-book.setup.ts';
import { starterCostBook } from './starter-cost-book.data.ts';

const changed = (change: (book: CostBook) => void): CostBook => {
  const book = structuredClone(starterCostBook);
  change(book);
  return book;
};
const itemOf = (book: CostBook, operation: string) => {
  const item = book.items.find((one) => one.operation === operation);
  if (!item) throw new Error(`no ${operation}`);
  return item;
};
const refusals = (change: (book: CostBook) => void): string[] =>
  (costBookSchema.safeParse(changed(change)).error?.issues ?? []).map(
    ({ path, message }) => `/${path.join('/')} ${message}`,
  );
// biome-ignore lint/suspicious/noExplicitAny: wrong on purpose
const any = (value: unknown): any => value;
const table = (book: CostBook): string[][] => [[...HEADER], ...tableOfBook(book).map(({ cells }) => [...cells])];

describe('a wrong book is refused row by row', () => {
  const at = starterCostBook.items.findIndex(({ operation }) => operation === 'panel-new');
  test.each<[string, (book: CostBook) => void, string]>([
    [
      'a missing wage',
      ({ trades: [trade] }) => delete any(trade).wageCentsPerHour,
      '/trades/0/wageCentsPerHour is missing; allowed is whole cents from 0 up to 2,000,000,000',
    ],
    [
      'negative hours',
      ({ items }) => {
        any(items[at]).hoursPerUnit.low = -1;
      },
      `/items/${at}/hoursPerUnit/low came as -1; allowed is hours from 0 up to 10,000`,
    ],
    [
      'hours that fall',
      ({ items }) => {
        any(items[at]).hoursPerUnit = { low: 3, likely: 2, high: 4 };
      },
      `/items/${at}/hoursPerUnit hours came as 3, 2, 4; allowed is low up to likely up to high`,
    ],
    [
      'a percent over 100',
      ({ items }) => {
        any(items[at]).wastePct = 101;
      },
      `/items/${at}/wastePct came as 101; allowed is 0 up to 100`,
    ],
    [
      'another currency',
      ({ fees }) => {
        any(fees[1]).currency = 'EUR';
      },
      '/fees/1/currency came as “EUR”; allowed is USD, the currency of the whole book',
    ],
    [
      'a unit the work is not counted in',
      ({ items }) => {
        any(items[at]).unit = 'each';
      },
      `/items/${at}/unit came as “each”; panel-new is counted in sf`,
    ],
    [
      'a trade that is not there',
      ({ items }) => {
        any(items[at]).trade = 'mason';
      },
      `/items/${at}/trade came as “mason”; allowed is a trade of the book`,
    ],
    [
      'a fee that is not there',
      ({ items }) => {
        any(items[at]).fee = 'toll';
      },
      `/items/${at}/fee came as “toll”; allowed is a fee of the book, or nothing`,
    ],
    [
      'burden parts that do not add up',
      ({ trades: [trade] }) => {
        any(trade).burdenPct = 40;
      },
      '/trades/0/burdenPct came as 40; its parts add up to 38, which is what is allowed',
    ],
    [
      'a trade twice',
      ({ trades }) => {
        trades.push(any(trades[0]));
      },
      '/trades/3/id carpenter is in the book twice; allowed is once',
    ],
  ])('%s', (_name, change, refusal) => expect(refusals(change)).toEqual([refusal]));

  test('two wrong rows are both named', () => {
    const both = refusals(({ items: [first, second] }) => {
      any(first).wastePct = 101;
      any(second).minimumCents = -1;
    });
    expect(both.map((one) => one.split(' ')[0])).toEqual(['/items/0/wastePct', '/items/1/minimumCents']);
  });
});

test('a book saved before there were burden parts, fees by kind or marks is read as it was', () => {
  const old = changed((book) => {
    for (const trade of book.trades) delete any(trade).burdenParts;
    for (const fee of book.fees) delete any(fee).kind;
    for (const item of book.items) delete any(item).fee;
  });
  expect(costBookSchema.parse(old)).toEqual(old);
});

test('a wage of $30 with a burden of 40% is $42 an hour', () => {
  expect(burdenedRateCents({ wageCentsPerHour: 3000, burdenPct: 40 })).toBe(4200);
});

describe('what a row costs', () => {
  const work = workLine({ operation: 'panel-new', quantity: 10, unit: 'sf' });
  const price = (change: (book: CostBook) => void, one = work) => priceByBook([one], changed(change));
  const line = (change: (book: CostBook) => void) => {
    const { lines } = price(change);
    if (!lines[0]) throw new Error('no line');
    return lines[0];
  };

  test('tax on a purchase is a cost that carries overhead and profit', () => {
    // 11 sf at $1.45 is $15.95, of which 8% is $1.28.
    expect(line(() => {})).toMatchObject({ materialCents: 1595, taxCents: 128 });
  });
  test('tax on a sale is taken on the selling price and carries no overhead or profit', () => {
    const sale = price((book) => {
      itemOf(book, 'panel-new').taxOn = 'sale';
    });
    const none = price((book) => {
      itemOf(book, 'panel-new').taxOn = 'none';
    });
    // $15.95 x 1.18 x 1.10 is $20.70, of which 8% is $1.66.
    expect(sale.lines[0]).toMatchObject({ materialCents: 1595, taxCents: 166 });
    expect(none.lines[0]).toMatchObject({ materialCents: 1595, taxCents: 0 });
    expect(sale.estimate?.overheadCents).toBe(none.estimate?.overheadCents);
    expect((sale.estimate?.totalCents ?? 0) - (none.estimate?.totalCents ?? 0)).toBe(166);
  });
  test('tax on a sale that is given back is given back whole', () => {
    const one = {
      name: 'Panel',
      quantity: 10,
      unit: 'sf',
      hoursPerUnit: { low: 1, likely: 1, high: 1 },
      rateCents: 5000,
      materialCentsPerUnit: 145,
      wastePct: 10,
      materialTaxPct: 8,
      taxOn: 'sale',
      equipmentCents: 0,
      subcontractCents: 0,
      otherCents: 0,
    } as const;
    const both = evaluateEstimate({
      lines: [one, { ...one, credit: true }],
      overheadPct: 18,
      profitPct: 10,
      stacking: 'added',
    });
    expect(both.totalCents).toBe(0);
  });
  test('a fee that the work names is charged for each unit', () => {
    const letter = workLine({ operation: 'engineer-letter', quantity: 2, unit: 'each' });
    expect(price(() => {}, letter).lines[0]?.otherCents).toBe(130_000);
  });
  test('a fee that is not there is a gap, never zero', () => {
    const letter = workLine({ operation: 'engineer-letter', quantity: 10, unit: 'each' });
    const without = price((book) => {
      book.fees = [];
    }, letter);
    expect(without.gaps.map(({ kind }) => kind)).toEqual(['no-fee']);
    expect(without.estimate).toBeNull();
  });
});

describe('operations that came after a book was saved', () => {
  const late = new Set(['panel-blocking', 'hold-down-new', 'lead-safe-setup']);
  const old = changed((book) => {
    book.placeholder = false;
    book.items = book.items.filter(({ operation }) => !late.has(operation));
    book.trades = book.trades.filter(({ id }) => id !== 'lead-certified');
    book.items = book.items.filter(({ trade }) => trade !== 'lead-certified');
  });
  test('are named, and are gaps in a price', () => {
    const names = missingOperations(old).map(({ id }) => id);
    expect(names).toEqual(expect.arrayContaining([...late]));
    const blocking = workLine({ operation: 'panel-blocking', quantity: 4, unit: 'lf' });
    expect(priceByBook([blocking], old).gaps.map(({ kind }) => kind)).toEqual(['no-item']);
  });
  test('are added with their trade, each marked invented, and nothing else is touched', () => {
    const full = withMissingOperations(old);
    expect(missingOperations(full)).toEqual([]);
    expect(costBookSchema.parse(full)).toEqual(full);
    expect(full.items.slice(0, old.items.length)).toEqual(old.items);
    expect(full.items.slice(old.items.length).every(({ invented }) => invented)).toBe(true);
    expect(full.trades.at(-1)).toMatchObject({ id: 'lead-certified', invented: true });
    expect(full.fees).toEqual(old.fees);
  });
  test('make a price invented only where it uses them', () => {
    const full = withMissingOperations(old);
    expect(restsOnInvented(old)).toBe(false);
    expect(restsOnInvented(full)).toBe(true);
    expect(restsOnInvented(full, new Set(['panel-new']))).toBe(false);
    expect(restsOnInvented(full, new Set(['panel-new', 'panel-blocking']))).toBe(true);
  });
  test('are none for the starter book, which has each operation once', () => {
    expect(missingOperations(starterCostBook)).toEqual([]);
    expect(starterCostBook.items).toHaveLength(OPERATIONS.length);
  });
});

describe('a book as a table', () => {
  test('read back it is the same book', () => {
    fc.assert(
      fc.property(bookArbitrary, (book) => {
        expect(readBookTable(table(book), book.notice)).toEqual({ book, errors: [] });
      }),
    );
  });
  test('the columns may come in another order', () => {
    const turned = table(starterCostBook).map((cells) => cells.toReversed());
    expect(readBookTable(turned, starterCostBook.notice).book).toEqual(starterCostBook);
  });
  test('every wrong cell is named by row and column, with what came and what is allowed', () => {
    const cells = table(starterCostBook);
    const put = (row: number, column: string, value: string) => {
      any(cells[row - 1])[HEADER.indexOf(column)] = value;
    };
    put(2, 'overhead_percent_of_cost', '18,5');
    put(3, 'wage_usd_per_hour', '$38');
    put(4, 'burden_percent', '107.65');
    put(5, 'waste_percent', '5');
    put(20, 'unit', 'yard');
    put(21, 'hours_low_per_unit', '99');
    put(22, 'row', 'itme');
    const { book, errors } = readBookTable(cells, starterCostBook.notice);
    expect(book).toBeNull();
    expect(errors.map(({ row, column }) => [row, column])).toEqual([
      [2, 'overhead_percent_of_cost'],
      [3, 'wage_usd_per_hour'],
      [4, 'burden_percent'],
      [5, 'waste_percent'],
      [20, 'unit'],
      [21, 'hours_low_per_unit'],
      [22, 'row'],
    ]);
    expect(errors[0]?.detail).toBe(
      'came as “18,5”; allowed is a number with a decimal point and no thousands comma, like 0.75',
    );
    expect(errors[2]?.detail).toBe('came as 107.65; allowed is 0 up to 100');
  });
  test('a column that is missing or unknown is named, and nothing is read', () => {
    const cells = table(starterCostBook);
    any(cells[0])[HEADER.indexOf('waste_percent')] = 'waste';
    expect(readBookTable(cells, starterCostBook.notice).errors.map(({ row, column }) => [row, column])).toEqual([
      [1, 'waste_percent'],
      [1, 'waste'],
    ]);
    expect(readBookTable([], starterCostBook.notice).book).toBeNull();
  });
  test('a file from before the book told its crew is read, and the usual crew counts', () => {
    const at = HEADER.indexOf('crew_people');
    const older = table(starterCostBook).map((cells) => cells.toSpliced(at, 2));
    const { book } = readBookTable(older, starterCostBook.notice);
    expect(book).toEqual(starterCostBook);
    expect(crewOf(any(book))).toEqual({ crewSize: 2, hoursPerDay: 8 });
    const twice = table(starterCostBook).map((cells) => [...cells, cells[at] ?? '']);
    expect(readBookTable(twice, starterCostBook.notice).errors[0]?.detail).toContain('crew_people');
  });
  test('a name or an id of nothing but spaces is refused', () => {
    expect(refusals(({ fees: [fee] }) => Object.assign(any(fee), { id: ' ' }))[0]).toContain('not all spaces');
    expect(refusals(({ trades: [trade] }) => Object.assign(any(trade), { name: '  ' }))).toHaveLength(1);
  });
  test('a crew that is nobody, half a person or works round the clock and more is refused at its cell', () => {
    for (const [column, value] of [
      ['crew_people', '0'],
      ['crew_people', '2.5'],
      ['crew_hours_per_day', '25'],
    ] as const) {
      const cells = table(starterCostBook);
      any(cells[1])[HEADER.indexOf(column)] = value;
      expect(readBookTable(cells, starterCostBook.notice).errors).toMatchObject([{ row: 2, column }]);
    }
  });
  test('a book without its settings, or with two, is refused', () => {
    const [head, settings, ...rest] = table(starterCostBook) as [string[], string[], ...string[][]];
    const without = readBookTable([head, ...rest], starterCostBook.notice);
    expect(without.errors.some(({ detail }) => detail.includes('one row of the kind “settings”'))).toBe(true);
    expect(readBookTable([head, settings, settings, ...rest], starterCostBook.notice).book).toBeNull();
  });
});

describe('two books side by side', () => {
  test('say what was added, changed and removed, was and is', () => {
    const is = changed((book) => {
      book.overheadPct = 20;
      itemOf(book, 'panel-new').materialCentsPerUnit = 160;
      book.fees = book.fees.filter(({ id }) => id !== 'change-order-admin');
      book.trades.push({ id: 'mason', name: 'Mason', wageCentsPerHour: 4000, burdenPct: 38 });
    });
    const changes = compareBooks(starterCostBook, is);
    expect(changes.map(({ kind, row, id }) => [kind, row, id])).toEqual([
      ['changed', 'settings', ''],
      ['added', 'trade', 'mason'],
      ['changed', 'item', 'panel-new'],
      ['removed', 'fee', 'change-order-admin'],
    ]);
    expect(changes[2]?.cells).toEqual([{ column: 'material_usd_per_unit', was: '1.45', is: '1.60' }]);
  });
  test('are the same only when nothing differs', () => {
    fc.assert(
      fc.property(bookArbitrary, (book) => {
        expect(compareBooks(book, structuredClone(book))).toEqual([]);
      }),
    );
  });
});
