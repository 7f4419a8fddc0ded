const DAY_MS = 86_400_000;
const SATURDAY = 6;
const SUNDAY = 0;

const isoOf = (time: number): string => new Date(time).toISOString().slice(0, 10);

/** The date so many calendar days after a date, both `YYYY-MM-DD`, days 0 or more. */
export const addCalendarDays = (start: string, days: number): string =>
  isoOf(Date.parse(`${start}T00:00:00Z`) + days * DAY_MS);

const WEEK_DAYS = 7;
const WEEK_WORKING_DAYS = 5;

/** Calendar days that so many working days take, weekends between them counted in; rounded up (common practice, no source). */
export const calendarDaysOf = (workingDays: number): number => Math.ceil((workingDays * WEEK_DAYS) / WEEK_WORKING_DAYS);

/** The date so many Mondays to Fridays after a date that are not among the holidays; days 0 or more. */
export function addWorkingDays(start: string, days: number, holidays: readonly string[] = []): string {
  const closed = new Set(holidays);
  let time = Date.parse(`${start}T00:00:00Z`);
  for (let left = days; left > 0; ) {
    time += DAY_MS;
    const weekday = new Date(time).getUTCDay();
    if (weekday !== SATURDAY && weekday !== SUNDAY && !closed.has(isoOf(time))) left -= 1;
  }
  return isoOf(time);
}
