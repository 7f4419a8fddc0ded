import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { runCheck } from '../../judging/run-check.ts';
import type { Check } from '../../kernel/index.ts';
import { finiteLot } from './finite-lot.check.ts';
import { likeParts } from './like-parts.check.ts';
import { proportion } from './proportion.check.ts';

const valuesOf = (check: Check, inputs: unknown) => runCheck(check, { inputs }).values;
const numberOf = (check: Check, inputs: unknown, name: string): number => Number(valuesOf(check, inputs)[name]?.value);

const confidencePct = fc.constantFrom(50, 80, 90, 95, 99, 99.9);
/** A sample with room for one more part and one more bad one. */
const sample = fc
  .integer({ min: 2, max: 300 })
  .chain((inspected) => fc.record({ inspected: fc.constant(inspected), bad: fc.nat(inspected - 1), confidencePct }));

/** Bounds come from halving, fine to the last digit of a double. */
const LAST_DIGITS = 1e-12;

describe('a share of like parts', () => {
  test('lies inside its Wilson interval, and that inside 0..1', () => {
    fc.assert(
      fc.property(sample, (given) => {
        const { share, wilsonLow, wilsonHigh } = valuesOf(proportion, given);
        expect(wilsonLow?.value).toBeGreaterThanOrEqual(0);
        expect(wilsonHigh?.value).toBeLessThanOrEqual(1);
        expect(Number(wilsonLow?.value)).toBeLessThanOrEqual(Number(share?.value) + LAST_DIGITS);
        expect(Number(wilsonHigh?.value)).toBeGreaterThanOrEqual(Number(share?.value) - LAST_DIGITS);
      }),
    );
  });

  test('one more bad one never lowers a bound', () => {
    fc.assert(
      fc.property(sample, (given) => {
        const worse = { ...given, bad: given.bad + 1 };
        for (const name of ['wilsonLow', 'wilsonHigh', 'exactLow', 'exactHigh', 'upperShare'])
          expect(numberOf(proportion, worse, name)).toBeGreaterThanOrEqual(
            numberOf(proportion, given, name) - LAST_DIGITS,
          );
      }),
    );
  });

  test('one more good one never raises a bound', () => {
    fc.assert(
      fc.property(sample, (given) => {
        const more = { ...given, inspected: given.inspected + 1 };
        for (const name of ['wilsonHigh', 'exactHigh', 'upperShare'])
          expect(numberOf(proportion, more, name)).toBeLessThanOrEqual(numberOf(proportion, given, name) + LAST_DIGITS);
      }),
    );
  });

  test('more confidence never narrows the exact interval', () => {
    fc.assert(
      fc.property(sample, ({ inspected, bad }) => {
        const at = (pct: number) => valuesOf(proportion, { inspected, bad, confidencePct: pct });
        expect(Number(at(99).exactHigh?.value)).toBeGreaterThanOrEqual(Number(at(90).exactHigh?.value));
        expect(Number(at(99).exactLow?.value)).toBeLessThanOrEqual(Number(at(90).exactLow?.value));
      }),
    );
  });

  test('looking at as many more as it says, all good, is enough, and one fewer is not', () => {
    fc.assert(
      fc.property(sample, fc.constantFrom(1, 5, 20), (given, tolerablePct) => {
        const more = valuesOf(proportion, { ...given, tolerablePct }).openMore?.value;
        if (typeof more !== 'number' || given.inspected + more > 10_000) return;
        const after = (further: number) =>
          runCheck(proportion, { inputs: { ...given, tolerablePct, inspected: given.inspected + further } }).verdict;
        expect(after(more)).toBe('meets');
        if (more > 0) expect(after(more - 1)).toBe('fails');
      }),
    );
  });
});

const lot = fc
  .integer({ min: 2, max: 200 })
  .chain((total) => fc.record({ total: fc.constant(total), opened: fc.integer({ min: 1, max: total - 1 }) }))
  .chain((given) =>
    fc.record({
      total: fc.constant(given.total),
      opened: fc.constant(given.opened),
      bad: fc.nat(given.opened - 1),
      tolerableBad: fc.nat(given.total),
      confidencePct,
    }),
  );

describe('a lot of known size', () => {
  test('holds at least the bad ones found and at most those and the unopened', () => {
    fc.assert(
      fc.property(lot, (given) => {
        const most = numberOf(finiteLot, given, 'upperBad');
        expect(most).toBeGreaterThanOrEqual(given.bad);
        expect(most).toBeLessThanOrEqual(given.total - given.opened + given.bad);
      }),
    );
  });

  test('one more bad one found never lowers the bound', () => {
    fc.assert(
      fc.property(lot, (given) => {
        const worse = { ...given, bad: given.bad + 1 };
        expect(numberOf(finiteLot, worse, 'upperBad')).toBeGreaterThanOrEqual(numberOf(finiteLot, given, 'upperBad'));
      }),
    );
  });

  test('one more opened and good never raises the bound', () => {
    fc.assert(
      fc.property(lot, (given) => {
        const more = { ...given, opened: given.opened + 1 };
        expect(numberOf(finiteLot, more, 'upperBad')).toBeLessThanOrEqual(numberOf(finiteLot, given, 'upperBad'));
      }),
    );
  });

  test('meets exactly when the bound is within what is tolerable', () => {
    fc.assert(
      fc.property(lot, (given) => {
        const { verdict, values } = runCheck(finiteLot, { inputs: given });
        expect(verdict === 'meets').toBe(Number(values.upperBad?.value) <= given.tolerableBad);
      }),
    );
  });

  test('opening as many more as it says, all good, is enough, and one fewer is not', () => {
    fc.assert(
      fc.property(lot, (given) => {
        if (given.bad > given.tolerableBad) return;
        const more = numberOf(finiteLot, given, 'openMore');
        const after = (further: number) =>
          runCheck(finiteLot, { inputs: { ...given, opened: given.opened + further } }).verdict;
        expect(after(more)).toBe('meets');
        if (more > 0) expect(after(more - 1)).toBe('fails');
      }),
    );
  });
});

describe('like parts', () => {
  const groups = fc
    .uniqueArray(
      fc.record({ name: fc.string({ minLength: 1, maxLength: 6 }), count: fc.integer({ min: 1, max: 30 }) }),
      {
        minLength: 1,
        maxLength: 8,
        selector: ({ name }) => name.trim(),
      },
    )
    .map((named) => named.filter(({ name }) => name.trim() !== ''))
    .filter((named) => named.length > 0)
    .chain((named) =>
      fc.tuple(
        ...named.map(({ name, count }) =>
          fc.record({ name: fc.constant(name), count: fc.constant(count), withHardware: fc.nat(count) }),
        ),
      ),
    );

  test('the order of the groups does not matter', () => {
    const shuffled = groups.chain((given) =>
      fc.tuple(fc.constant(given), fc.shuffledSubarray(given, { minLength: given.length })),
    );
    fc.assert(
      fc.property(shuffled, ([given, other]) => {
        const one = runCheck(likeParts, { inputs: { groups: given } });
        const two = runCheck(likeParts, { inputs: { groups: other } });
        expect(two.verdict).toBe(one.verdict);
        expect(two.values).toEqual(one.values);
        expect(two.reasons).toEqual(one.reasons);
      }),
    );
  });

  test('the one to open next has the smallest share of all', () => {
    fc.assert(
      fc.property(groups, (given) => {
        const { verdict, values } = runCheck(likeParts, { inputs: { groups: given } });
        if (verdict !== 'fails') return;
        const least = Math.min(...given.map(({ count, withHardware }) => withHardware / count));
        expect(values[`shareWith.${values.openNext?.value}`]?.value).toBe(least);
      }),
    );
  });
});

describe('impossible counts are refused by name', () => {
  test.each([
    [proportion, { inspected: 5, bad: 7 }, 'bad: got 7; allowed is at most 5.'],
    [finiteLot, { total: 10, opened: 12, bad: 0 }, 'opened: got 12; allowed is at most 10.'],
    [finiteLot, { total: 10, opened: 5, bad: 6 }, 'bad: got 6; allowed is at most 5.'],
    [finiteLot, { total: 10, opened: 5, bad: 0, tolerableBad: 11 }, 'tolerableBad: got 11; allowed is at most 10.'],
    [
      likeParts,
      { groups: [{ name: 'A', count: 2, withHardware: 3 }] },
      'groups.0.withHardware: got 3; allowed is at most 2.',
    ],
    [
      likeParts,
      {
        groups: [
          { name: 'A', count: 2, withHardware: 2 },
          { name: 'A', count: 1, withHardware: 0 },
        ],
      },
      'groups.1.name: got "A" twice; allowed is each name once.',
    ],
  ])('%#', (check, inputs, message) => {
    expect(() => runCheck(check, { inputs })).toThrow(message);
  });
});
