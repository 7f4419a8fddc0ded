import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { FULL_VOICE, hoursHistory } from './history.ts';

const book = { low: 0.5, likely: 1, high: 2 };
const job = fc.record({
  quantity: fc.double({ min: 0.1, max: 1000, noNaN: true }),
  hours: fc.double({ min: 0, max: 1000, noNaN: true }),
});
const jobs = fc.array(job, { minLength: 1, maxLength: 40 });
/** Sums of up to forty quotients differ in the last places. */
const rounding = 1e-6;

describe('what jobs say about hours', () => {
  test('two jobs of 30 h for 20 ft and 10 h for 20 ft took 1 h a foot, and move a book of 1 h nowhere', () => {
    const history = hoursHistory(book, [
      { quantity: 20, hours: 30 },
      { quantity: 20, hours: 10 },
    ]);
    expect(history).toMatchObject({ jobs: 2, seenPerUnit: 1, lowestPerUnit: 0.5, highestPerUnit: 1.5 });
    expect(history?.suggested?.likely).toBe(1);
    // 2 of 12 voices: 2 + (1.5 - 2) / 6.
    expect(history?.suggested?.high).toBeCloseTo(1.9167, 4);
  });

  test('ten jobs count as much as the book', () => {
    const ten = Array.from({ length: FULL_VOICE }, () => ({ quantity: 1, hours: 3 }));
    expect(hoursHistory(book, ten)).toMatchObject({ weight: 0.5, suggested: { likely: 2 } });
  });

  test('no job says nothing, and without a book fewer than ten say no figure', () => {
    expect(hoursHistory(book, [])).toBeNull();
    const nine = Array.from({ length: FULL_VOICE - 1 }, () => ({ quantity: 2, hours: 3 }));
    expect(hoursHistory(null, nine)).toMatchObject({ seenPerUnit: 1.5, suggested: null });
    expect(hoursHistory(null, [...nine, { quantity: 2, hours: 3 }])?.suggested).toEqual({
      low: 1.5,
      likely: 1.5,
      high: 1.5,
    });
  });

  test('a job without a quantity, or with hours below zero, is refused', () => {
    expect(() => hoursHistory(book, [{ quantity: 0, hours: 1 }])).toThrow('1 h for 0 units');
    expect(() => hoursHistory(book, [{ quantity: 1, hours: -1 }])).toThrow('-1 h for 1 units');
    expect(() => hoursHistory(book, [{ quantity: Number.NaN, hours: 1 }])).toThrow(RangeError);
  });

  test('the figure lies between the book and the jobs, and stays low up to likely up to high', () => {
    fc.assert(
      fc.property(jobs, (list) => {
        const { suggested, seenPerUnit } = hoursHistory(book, list) ?? {};
        if (!suggested || seenPerUnit === undefined) throw new Error('nothing was suggested');
        const { low, likely, high } = suggested;
        expect(low).toBeLessThanOrEqual(likely + rounding);
        expect(likely).toBeLessThanOrEqual(high + rounding);
        expect(likely).toBeGreaterThanOrEqual(Math.min(book.likely, seenPerUnit) - rounding);
        expect(likely).toBeLessThanOrEqual(Math.max(book.likely, seenPerUnit) + rounding);
      }),
    );
  });

  test('the order of the jobs changes nothing, and a job that took longer never suggests less', () => {
    fc.assert(
      fc.property(jobs, (list) => {
        expect(hoursHistory(book, [...list].reverse())).toEqual(hoursHistory(book, list));
        const [first, ...others] = list;
        if (!first) throw new Error('no job was made');
        const longer = [{ ...first, hours: first.hours + 5 }, ...others];
        const [before, after] = [hoursHistory(book, list)?.suggested, hoursHistory(book, longer)?.suggested];
        for (const name of ['low', 'likely', 'high'] as const)
          expect(after?.[name]).toBeGreaterThanOrEqual((before?.[name] ?? Number.NaN) - rounding);
      }),
    );
  });
});
