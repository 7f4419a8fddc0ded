import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { contingencyOf } from './contingency.ts';
import type { ContractEvent, ContractInput } from './contract-input.ts';
import { effectOnPayments, planPayments } from './payments.ts';

// Figures are invented and worked by hand.
const on = (date: number) => `2025-05-${String(date).padStart(2, '0')}`;
const change = (
  cents: number,
  date: number,
  state: 'approved' | 'pending' | 'declined' = 'approved',
): ContractEvent => ({
  kind: 'change',
  state,
  cents,
  days: 0,
  on: on(date),
});
const allowance = (allowedCents: number, spentCents: number, date: number): ContractEvent => ({
  kind: 'allowance',
  allowedCents,
  spentCents,
  overheadProfitPct: 20,
  on: on(date),
});
const payment = (date: number): ContractEvent => ({ kind: 'payment', cents: 100_000, on: on(date) });
const contract = (events: ContractEvent[]): ContractInput => ({
  originalCents: 1_000_000,
  originalDays: 20,
  retainagePct: 10,
  netDecreaseReturnsOverheadAndProfit: false,
  events,
});
const agreed = [
  { id: 'start', cents: 200_000 },
  { id: 'rough', cents: 400_000 },
  { id: 'close', cents: 400_000 },
];
const none = new Map<number, string>();

describe('payments', () => {
  test('a change goes to the payments that were not settled when it came, by their agreed cents', () => {
    const events = [change(50_000, 1), payment(2), change(10_001, 3)];
    expect(planPayments(contract(events), agreed, new Map([[1, 'start']]))).toEqual([
      { id: 'start', agreedCents: 200_000, addedCents: 10_000, settledOn: on(2) },
      { id: 'rough', agreedCents: 400_000, addedCents: 25_001, settledOn: null },
      { id: 'close', agreedCents: 400_000, addedCents: 25_000, settledOn: null },
    ]);
  });

  test('events count in the order of their days, however they are listed', () => {
    const events = [change(10_000, 9), payment(2)];
    expect(planPayments(contract(events), agreed, new Map([[1, 'start']])).map((one) => one.addedCents)).toEqual([
      0, 5000, 5000,
    ]);
  });

  test('what changes after the last payment was settled is one final payment', () => {
    const settled = new Map([
      [0, 'start'],
      [1, 'rough'],
      [2, 'close'],
    ]);
    const events = [payment(1), payment(2), payment(3), change(7000, 4), change(-2000, 5)];
    const plan = planPayments(contract(events), agreed, settled);
    expect(plan.at(-1)).toEqual({ id: null, agreedCents: 0, addedCents: 5000, settledOn: null });
    expect(effectOnPayments(plan, 900)).toEqual([{ id: null, cents: 900 }]);
  });

  test('pending and declined changes are in no payment; a settled allowance is', () => {
    const events = [change(5000, 1, 'pending'), change(5000, 1, 'declined'), allowance(10_000, 20_000, 2)];
    // 10,000 over and 20% on it.
    expect(planPayments(contract(events), agreed, none).map((one) => one.addedCents)).toEqual([2400, 4800, 4800]);
  });

  test('without agreed payments there is no plan, and a change is one final payment', () => {
    expect(planPayments(contract([change(100, 1)]), [], none)).toEqual([]);
    expect(effectOnPayments([], -100)).toEqual([{ id: null, cents: -100 }]);
  });

  test('the shares of all changes add up to what changed the sum, whatever was settled when', () => {
    const any = fc.array(
      fc.record({
        cents: fc.integer({ min: -90_000, max: 90_000 }),
        date: fc.integer({ min: 1, max: 28 }),
        settles: fc.option(fc.constantFrom('start', 'rough', 'close')),
      }),
      { maxLength: 12 },
    );
    fc.assert(
      fc.property(any, (rows) => {
        const events = rows.map(({ cents, date, settles }) => (settles ? payment(date) : change(cents, date)));
        const settledBy = new Map(rows.flatMap(({ settles }, at) => (settles ? [[at, settles] as const] : [])));
        const added = planPayments(contract(events), agreed, settledBy).reduce((sum, one) => sum + one.addedCents, 0);
        expect(added).toBe(rows.reduce((sum, { cents, settles }) => sum + (settles ? 0 : cents), 0));
      }),
    );
  });
});

describe('contingency', () => {
  test('approved changes and overspent allowances draw on it in order; pending ones and payments do not', () => {
    const events = [change(30_000, 3), allowance(10_000, 20_000, 1), change(90_000, 2, 'pending'), payment(2)];
    expect(contingencyOf(contract(events), 100_000)).toEqual({
      setAsideCents: 100_000,
      usedCents: 42_000,
      leftCents: 58_000,
      overrunCents: 0,
      draws: [
        { event: 1, on: on(1), drawnCents: 12_000, leftCents: 88_000 },
        { event: 0, on: on(3), drawnCents: 30_000, leftCents: 58_000 },
      ],
    });
  });

  test('one cent beyond it is an overrun of one cent, and the draw that did it shows it', () => {
    expect(contingencyOf(contract([change(100_000, 1)]), 100_000)).toMatchObject({ leftCents: 0, overrunCents: 0 });
    const over = contingencyOf(contract([change(60_000, 1), change(40_001, 2)]), 100_000);
    expect(over).toMatchObject({ usedCents: 100_001, leftCents: 0, overrunCents: 1 });
    expect(over.draws.map(({ leftCents }) => leftCents)).toEqual([40_000, -1]);
  });

  test('a saving gives back what was drawn before it, and no more', () => {
    const after = (...events: ContractEvent[]) => contingencyOf(contract(events), 100_000).usedCents;
    expect(after(change(30_000, 1), change(-50_000, 2))).toBe(0);
    expect(after(change(-50_000, 1), change(30_000, 2))).toBe(30_000);
    expect(contingencyOf(contract([change(-50_000, 1)]), 100_000).draws).toEqual([]);
  });
});
