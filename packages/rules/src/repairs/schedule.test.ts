import fc from 'fast-check';
import { expect, test } from 'vitest';
import { criticalPath, inOrder, OrderLoopError, type Step, workingDays } from './schedule.ts';

const step = (id: string, hours: number, ...after: string[]): Step => ({ id, hours, after });

// Worked by hand: A 3, then B 4 and C 2 side by side, D 5 after both, E 1 after C.
const network = [step('A', 3), step('B', 4, 'A'), step('C', 2, 'A'), step('D', 5, 'B', 'C'), step('E', 1, 'C')];

test('worked by hand: the longest chain of a network of five is A, B, D with 12 hours', () => {
  expect(criticalPath(network)).toEqual({ ids: ['A', 'B', 'D'], hours: 12 });
});

test('worked by hand: 15 hours of work on that chain take one person two days, two people one, and ten no less', () => {
  expect([1, 2, 10].map((crew) => workingDays(network, crew, 8))).toEqual([2, 1, 1]);
  expect(workingDays(network, 10, 5)).toBe(2);
});

test('exactly one day of work is one day', () => {
  expect(workingDays([step('A', 8)], 1, 8)).toBe(1);
  expect(workingDays([step('A', 8.01)], 1, 8)).toBe(2);
  expect(workingDays([], 1, 8)).toBe(0);
});

test('steps that wait for each other are named, and only they', () => {
  const circle = () => inOrder([step('A', 1), step('B', 1, 'A', 'D'), step('C', 1, 'B'), step('D', 1, 'C')]);
  expect(circle).toThrow(OrderLoopError);
  try {
    circle();
  } catch (error) {
    expect([...(error as OrderLoopError).ids].sort()).toEqual(['B', 'C', 'D']);
  }
});

test('every step comes after all it waits for, and a larger crew never takes longer', () => {
  const steps = fc
    .array(fc.tuple(fc.integer({ min: 0, max: 40 }), fc.array(fc.nat(11), { maxLength: 3 })), { maxLength: 12 })
    .map((list) =>
      list.map(([hours, before], at) =>
        step(`s${at}`, hours, ...before.filter((one) => one < at).map((one) => `s${one}`)),
      ),
    );
  fc.assert(
    fc.property(steps, fc.integer({ min: 1, max: 6 }), (list, crew) => {
      const order = inOrder([...list].reverse()).map((one) => one.id);
      for (const one of list) for (const id of one.after) expect(order.indexOf(id)).toBeLessThan(order.indexOf(one.id));
      expect(workingDays(list, crew + 1, 8)).toBeLessThanOrEqual(workingDays(list, crew, 8));
    }),
  );
});
