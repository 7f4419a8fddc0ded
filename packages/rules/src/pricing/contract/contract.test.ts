import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { calendarDaysOf } from '../../kernel/dates.ts';
import { evaluateContract, priceNetChange } from './contract.ts';
import { type ContractEvent, type ContractInput, contractSchema } from './contract-input.ts';
import { ledgerOf, spreadOverPayments } from './ledger.ts';

describe('contract (invented figures, worked by hand)', () => {
  const on = '2025-05-01';
  const change = (cents: number, days: number, state: 'approved' | 'pending' | 'declined' | 'replaced' = 'approved') =>
    ({ kind: 'change', state, cents, days, on }) as const;
  const base: ContractInput = {
    originalCents: 8_400_000,
    originalDays: 60,
    retainagePct: 10,
    netDecreaseReturnsOverheadAndProfit: false,
    events: [change(324_000, 4), change(-115_000, 0)],
    thisChange: { cents: 249_156, days: 3 },
  };
  const standing = (more: Partial<ContractInput> = {}) => evaluateContract(contractSchema.parse({ ...base, ...more }));

  test('worked example A: 84,000.00 with +3,240.00 and -1,150.00 is 86,090.00, with this change 88,581.56 and 67 days', () => {
    expect(standing()).toMatchObject({
      previousChangesCents: 209_000,
      beforeCents: 8_609_000,
      afterCents: 8_858_156,
      daysBefore: 64,
      daysAfter: 67,
    });
  });

  test('worked example B: 52,300.00 done with 10% retained and 33,600.00 paid leaves 13,470.00 due and 41,511.56 to finish', () => {
    const events = [
      ...base.events,
      { kind: 'completed', cents: 5_230_000, on } as const,
      { kind: 'payment', cents: 3_360_000, on } as const,
    ];
    expect(standing({ events })).toMatchObject({
      retainageCents: 523_000,
      earnedLessRetainageCents: 4_707_000,
      dueCents: 1_347_000,
      balanceToFinishCents: 4_151_156,
    });
  });

  test('pending changes stand apart, declined and replaced ones count nowhere', () => {
    const events = [
      ...base.events,
      change(50_000, 2, 'pending'),
      change(70_000, 9, 'declined'),
      change(1, 1, 'replaced'),
    ];
    expect(standing({ events })).toMatchObject({
      pendingCents: 50_000,
      pendingDays: 2,
      beforeCents: 8_609_000,
      daysBefore: 64,
    });
  });

  test('an allowance of 100 with 80 spent is -20, with 120 spent and 25% is +25 (published: PBI Construction)', () => {
    const allowance = (spentCents: number) =>
      standing({
        events: [{ kind: 'allowance', allowedCents: 10_000, spentCents, overheadProfitPct: 25, on }],
      }).previousChangesCents;
    expect(allowance(8000)).toBe(-2000);
    expect(allowance(12_000)).toBe(2500);
  });

  test('worked example E: adding 900 and crediting 1,300 gives back 400, or 480 where 20% is given back too', () => {
    const net = (returned: boolean) =>
      priceNetChange({
        addCents: 90_000,
        creditCents: 130_000,
        overheadProfitPct: 20,
        netDecreaseReturnsOverheadAndProfit: returned,
      });
    expect(net(false)).toBe(-40_000);
    expect(net(true)).toBe(-48_000);
  });

  test('67 days from Monday 2 June 2025 end on 8 August, 5 working days on 9 June', () => {
    expect(standing({ start: '2025-06-02' }).finish).toBe('2025-08-08');
    const five = { originalDays: 5, events: [], dayKind: 'working' as const };
    const { thisChange: _none, ...plain } = base;
    expect(evaluateContract({ ...plain, ...five, start: '2025-06-02' }).finish).toBe('2025-06-09');
    expect(standing().finish).toBeUndefined();
  });

  test('five working days are a week of the calendar, and a day over the week is not lost', () => {
    expect([0, 1, 5, 6, 10].map(calendarDaysOf)).toEqual([0, 2, 7, 9, 14]);
  });

  test('a holiday among the working days moves the finish on', () => {
    const { thisChange: _none, ...plain } = base;
    const five = { ...plain, originalDays: 5, events: [], dayKind: 'working' as const, start: '2025-07-01' };
    expect(evaluateContract(five).finish).toBe('2025-07-08');
    expect(evaluateContract({ ...five, holidays: ['2025-07-04'] }).finish).toBe('2025-07-09');
  });

  test('worked example D: half of this change at rough inspection and half at close are 1,245.78 each', () => {
    expect(spreadOverPayments(249_156, [50, 50])).toEqual([124_578, 124_578]);
    expect(spreadOverPayments(-100, [1, 1, 1])).toEqual([-34, -33, -33]);
  });

  test.each<[string, object, string]>([
    ['retainage over 100%', { retainagePct: 101 }, 'retainagePct'],
    ['a negative original sum', { originalCents: -1 }, 'originalCents'],
    ['half a cent', { originalCents: 0.5 }, 'originalCents'],
    ['a payment below nothing', { events: [{ kind: 'payment', cents: -1, on }] }, 'events.0.cents'],
    ['a day there is not', { events: [{ kind: 'payment', cents: 1, on: '2025-02-30' }] }, 'events.0.on'],
    ['an unknown kind of event', { events: [{ kind: 'gift', cents: 1, on }] }, 'events.0.kind'],
    ['an unknown state', { events: [{ kind: 'change', state: 'maybe', cents: 1, days: 0, on }] }, 'events.0.state'],
    ['holidays among calendar days', { holidays: [on] }, 'holidays'],
  ])('%s is refused, naming it', (_name, change, path) => {
    const { error } = contractSchema.safeParse({ ...base, ...change });
    expect(error?.issues.map((issue) => issue.path.join('.'))).toEqual([path]);
  });

  const anyDay = fc.integer({ min: 1, max: 28 }).map((date) => `2025-05-${String(date).padStart(2, '0')}`);
  const anyCents = fc.integer({ min: -1_000_000, max: 1_000_000 });
  const anyEvent: fc.Arbitrary<ContractEvent> = fc.oneof(
    fc.record({
      kind: fc.constant('change' as const),
      state: fc.constantFrom('approved' as const, 'pending' as const, 'declined' as const, 'replaced' as const),
      cents: anyCents,
      days: fc.integer({ min: -5, max: 20 }),
      on: anyDay,
    }),
    fc.record({
      kind: fc.constant('allowance' as const),
      allowedCents: fc.nat(100_000),
      spentCents: fc.nat(100_000),
      overheadProfitPct: fc.constantFrom(0, 12.5, 25),
      on: anyDay,
    }),
    fc.record({ kind: fc.constantFrom('payment' as const, 'completed' as const), cents: fc.nat(500_000), on: anyDay }),
  );
  const { thisChange: _this, ...plain } = base;

  test('the order of events changes nothing', () => {
    fc.assert(
      fc.property(fc.array(anyEvent), (events) => {
        expect(standing({ events: [...events].reverse() })).toEqual(standing({ events }));
      }),
    );
  });

  test('a change given back takes the sum, the days and the balance where they were', () => {
    fc.assert(
      fc.property(fc.array(anyEvent), anyCents, fc.integer({ min: 0, max: 20 }), (events, cents, days) => {
        const both = [...events, change(cents, days), change(0 - cents, 0 - days)];
        expect(evaluateContract({ ...plain, events: both })).toEqual(evaluateContract({ ...plain, events }));
      }),
    );
  });

  test('the ledger starts with the original, then takes events by their day, those of one day as given', () => {
    const may = (date: string, cents: number) => ({ kind: 'completed', cents, on: `2025-05-${date}` }) as const;
    const events = [may('20', 1), may('10', 2), may('20', 3), change(500, 2), may('10', 4), may('20', 5), may('02', 6)];
    const entries = ledgerOf({ ...plain, start: '2025-04-30', events });
    expect(entries.map(({ event }) => event)).toEqual([null, 3, 6, 1, 4, 0, 2, 5]);
    expect(entries[0]).toMatchObject({ on: '2025-04-30', kind: 'original', sumCents: 8_400_000, days: 60 });
    expect(entries[1]).toMatchObject({ on, kind: 'change', changeCents: 500, changeDays: 2, sumCents: 8_400_500 });
    expect(ledgerOf({ ...plain, events })[0]?.on).toBeNull();
  });

  test('the ledger is at every entry what the contract was by replay', () => {
    fc.assert(
      fc.property(fc.array(anyEvent, { maxLength: 30 }), fc.boolean(), (given, returned) => {
        const input = { ...plain, start: '2025-05-01', netDecreaseReturnsOverheadAndProfit: returned, events: given };
        const entries = ledgerOf(input);
        expect(entries).toHaveLength(given.length + 1);
        for (const [count, entry] of entries.entries()) {
          const events = entries.slice(1, count + 1).flatMap(({ event }) => given[event ?? -1] ?? []);
          const replayed = evaluateContract({ ...input, events });
          const { afterCents, daysAfter, finish, pendingCents, completedCents, paidCents, dueCents } = replayed;
          expect(entry).toMatchObject({ sumCents: afterCents, days: daysAfter, finish, pendingCents });
          expect(entry).toMatchObject({ completedCents, paidCents, dueCents });
          expect(entry.balanceToFinishCents).toBe(replayed.balanceToFinishCents);
        }
        const days = entries.slice(1).map(({ on: day }) => day);
        expect(days).toEqual([...days].sort());
      }),
    );
  });
});
