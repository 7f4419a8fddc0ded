import type { LedgerEntry } from '@underlath/contract';
import { expect, test } from 'vitest';
import { dayShare, labelsWithRoom, sumPlotOf } from './sum-over-time-layout.ts';

const entry = (
  on: string | null,
  changeCents: number,
  sumCents: number,
  more: Partial<LedgerEntry> = {},
): LedgerEntry => ({
  on,
  kind: 'change',
  what: '2. Plate',
  changeOrderId: 'order',
  entryId: null,
  state: 'approved',
  cents: changeCents,
  changeCents,
  changeDays: 0,
  sumCents,
  days: 60,
  finishOn: null,
  pendingCents: 0,
  completedCents: 0,
  retainageCents: 0,
  earnedLessRetainageCents: 0,
  paidCents: 0,
  dueCents: 0,
  balanceToFinishCents: 0,
  ...more,
});
const signed = (on: string | null) => entry(on, 0, 1000, { kind: 'original', changeOrderId: null });

test('every change of the sum is a step from what it was to what it became; a payment is none', () => {
  const tile = { kind: 'allowance', what: 'Tile', changeOrderId: null, entryId: 'tile' } as const;
  const entries = [
    signed('2026-03-01'),
    entry('2026-03-05', 0, 1000, { kind: 'payment' }),
    entry('2026-03-09', 200, 1200),
    entry('2026-03-12', -50, 1150, tile),
  ];
  const plot = sumPlotOf(entries, { today: '2026-03-20', finishOn: '2026-05-01', pendingCents: 400 });
  expect(plot).toMatchObject({
    from: '2026-03-01',
    to: '2026-05-01',
    steps: [
      { on: '2026-03-09', name: 'No. 2', fromCents: 1000, toCents: 1200 },
      { on: '2026-03-12', name: 'Tile', fromCents: 1200, toCents: 1150 },
    ],
    nowCents: 1150,
    waitingCents: 1550,
    lowCents: 1000,
    highCents: 1550,
  });
});

test('a contract without a start begins at its first happening, one without any day has no plot', () => {
  const days = { today: '2026-03-20', finishOn: null, pendingCents: 0 };
  expect(sumPlotOf([signed(null), entry('2026-03-09', 1, 1001)], days)).toMatchObject({
    from: '2026-03-09',
    to: '2026-03-20',
    waitingCents: null,
  });
  expect(sumPlotOf([signed(null)], days)).toBeNull();
});

test('a day lies between two by its share of the days', () => {
  expect(dayShare('2026-03-06', '2026-03-01', '2026-03-11')).toBe(0.5);
  expect(dayShare('2026-03-01', '2026-03-01', '2026-03-11')).toBe(0);
  expect(dayShare('2026-03-01', '2026-03-01', '2026-03-01')).toBe(0.5);
});

test('of labels that would run into each other the newest is written', () => {
  const at = (xPx: number) => ({ xPx, widthPx: 50 });
  expect(labelsWithRoom([at(0), at(60), at(70)])).toEqual([true, false, true]);
  expect(labelsWithRoom([at(0), at(50)])).toEqual([true, true]);
  expect(labelsWithRoom([])).toEqual([]);
});
