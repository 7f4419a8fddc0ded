import fc from 'fast-check';
import { OPERATIONS } from '../../repairs/operations.data.ts';
import { burdenPctOfParts, type CostBook, FEE_KINDS, STACKINGS, TAX_ON } from './cost-book.ts';

/** Any book that the schema takes, for tests of what must hold for all of them. */
const pct = fc.double({ min: 0, max: 100, noNaN: true }).map((value) => value + 0);
const hours = fc.double({ min: 0, max: 10_000, noNaN: true }).map((value) => value + 0);
const cents = fc.integer({ min: 0, max: 2_000_000_000 });
const words = fc
  .string({ minLength: 1, maxLength: 40, unit: 'grapheme' })
  .filter((value) => value.length <= 60 && value.trim() !== '');
const marks = { invented: fc.constant(true as const), currency: fc.constant('USD' as const) };
const maybe = <T>(one: fc.Arbitrary<T>) => fc.option(one, { nil: null });

const parts = fc
  .uniqueArray(fc.record({ name: words, pct: fc.integer({ min: 0, max: 1000 }).map((tenths) => tenths / 200) }), {
    minLength: 1,
    maxLength: 4,
    selector: ({ name }) => name,
  })
  .map((burdenParts) => ({ burdenParts, burdenPct: burdenPctOfParts(burdenParts) }));

const trade = fc
  .tuple(
    fc.record(
      { id: words, name: words, wageCentsPerHour: cents, ...marks },
      { requiredKeys: ['id', 'name', 'wageCentsPerHour'] },
    ),
    fc.oneof(
      parts,
      pct.map((burdenPct) => ({ burdenPct })),
    ),
  )
  .map(([one, burden]) => ({ ...one, ...burden }));

const fee = fc.record(
  { id: words, name: words, kind: fc.constantFrom(...FEE_KINDS), cents, ...marks },
  { requiredKeys: ['id', 'name', 'cents'] },
);

const rates = fc.record(
  {
    hoursPerUnit: maybe(
      fc.tuple(hours, hours, hours).map((three) => {
        const [low = 0, likely = 0, high = 0] = three.toSorted((a, b) => a - b);
        return { low, likely, high };
      }),
    ),
    materialCentsPerUnit: maybe(cents),
    wastePct: pct,
    wholeUnits: fc.boolean(),
    materialTaxPct: pct,
    taxOn: fc.constantFrom(...TAX_ON),
    equipmentCentsPerUnit: cents,
    subcontractCentsPerUnit: cents,
    otherCentsPerUnit: cents,
    minimumCents: cents,
    ...marks,
  },
  {
    requiredKeys: [
      'hoursPerUnit',
      'materialCentsPerUnit',
      'wastePct',
      'wholeUnits',
      'materialTaxPct',
      'equipmentCentsPerUnit',
      'subcontractCentsPerUnit',
      'otherCentsPerUnit',
      'minimumCents',
    ],
  },
);

export const bookArbitrary: fc.Arbitrary<CostBook> = fc
  .record(
    {
      currency: fc.constant('USD' as const),
      placeholder: fc.boolean(),
      notice: fc.record({ en: fc.string(), es: fc.string() }),
      trades: fc.uniqueArray(trade, { minLength: 1, maxLength: 4, selector: ({ id }) => id }),
      fees: fc.uniqueArray(fee, { maxLength: 3, selector: ({ id }) => id }),
      overheadPct: pct,
      profitPct: pct,
      stacking: fc.constantFrom(...STACKINGS),
      crewSize: fc.integer({ min: 1, max: 100 }),
      hoursPerDay: fc.double({ min: 1, max: 24, noNaN: true }),
    },
    {
      requiredKeys: ['currency', 'placeholder', 'notice', 'trades', 'fees', 'overheadPct', 'profitPct', 'stacking'],
    },
  )
  .chain((book) =>
    fc
      .array(fc.tuple(rates, fc.constantFrom(...book.trades), fc.constantFrom(undefined, ...book.fees)), {
        maxLength: 8,
      })
      .map((rows) => ({
        ...book,
        items: rows.map(([one, { id }, named], at) => ({
          operation: OPERATIONS[at]?.id ?? `own-${at}`,
          unit: OPERATIONS[at]?.unit ?? ('each' as const),
          trade: id,
          ...one,
          ...(named && { fee: named.id }),
        })),
      })),
  );
