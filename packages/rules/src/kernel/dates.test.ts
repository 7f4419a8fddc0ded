import fc from 'fast-check';
import { expect, test } from 'vitest';
import { contractSchema } from '../pricing/contract/contract-input.ts';
import { addCalendarDays, addWorkingDays } from './dates.ts';

/** Day by day, as a person counts on a wall calendar. */
function walk(start: string, days: number, holidays: readonly string[]): string {
  let date = start;
  for (let left = days; left > 0; ) {
    date = addCalendarDays(date, 1);
    const weekday = new Date(`${date}T00:00:00Z`).getUTCDay();
    if (weekday !== 0 && weekday !== 6 && !holidays.includes(date)) left -= 1;
  }
  return date;
}

test('working days counted by weeks and holidays end where a walk day by day ends', () => {
  const anyStart = fc.integer({ min: -25_000, max: 80_000 }).map((day) => addCalendarDays('1970-01-01', day));
  const anyHolidays = fc.array(fc.integer({ min: -5, max: 60 }), { maxLength: 30 });
  fc.assert(
    fc.property(anyStart, fc.nat(60), anyHolidays, (start, days, offsets) => {
      const holidays = offsets.map((offset) => addCalendarDays(start, offset));
      expect(addWorkingDays(start, days, holidays)).toBe(walk(start, days, holidays));
    }),
  );
});

test('weeks go on before 1970, and over the longest time that is counted', () => {
  // 2026-03-02 is a Monday; 100,000 working days are 20,000 weeks.
  expect(addWorkingDays('2026-03-02', 100_000)).toBe(addCalendarDays('2026-03-02', 140_000));
  expect(addWorkingDays('1900-01-05', 1)).toBe('1900-01-08');
});

const contract = {
  originalCents: 0,
  originalDays: 0,
  retainagePct: 0,
  netDecreaseReturnsOverheadAndProfit: false,
  events: [],
};
const change = (days: number, on = '2026-05-04') => ({ kind: 'change', state: 'pending', cents: 0, days, on });
const issueOf = (input: object) => {
  const [issue] = contractSchema.safeParse({ ...contract, ...input }).error?.issues ?? [];
  return issue && { path: issue.path.join('.'), message: issue.message };
};

test('days of all events together are counted up to 100,000, whichever way each goes', () => {
  const most = Array.from({ length: 10 }, (_, at) => change(at % 2 ? 10_000 : -10_000));
  expect(issueOf({ events: most })).toBeUndefined();
  expect(issueOf({ events: most, originalDays: 1 })).toMatchObject({ path: 'events' });
  expect(issueOf({ events: most, thisChange: { cents: 0, days: -1 } })?.message).toContain('100000');
});

test.each([
  ['1899-12-31', false],
  ['1900-01-01', true],
  ['2200-12-31', true],
  ['2201-01-01', false],
])('%s as a day of a contract: allowed is %s', (day, allowed) => {
  expect(issueOf({ start: day }) === undefined).toBe(allowed);
  expect(issueOf({ events: [change(0, day)] }) === undefined).toBe(allowed);
});
