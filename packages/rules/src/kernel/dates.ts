const DAY_MS = 86_400_000;
const WEEK_DAYS = 7;
const WEEK_WORKING_DAYS = 5;
/** Day 0 of the calendar, 1970-01-01, was a Thursday; weeks are counted from Monday, 0. */
const FIRST_WEEKDAY = 3;

/** Years that a date may be of; what is outside them is a slip of the pen. */
export const FIRST_YEAR = 1900;
export const LAST_YEAR = 2200;

/** Whether a day `YYYY-MM-DD`, or an instant that begins with one, is of the years 1900 to 2200. */
export function isInYears(date: string): boolean {
  const year = Number(date.slice(0, 4));
  return year >= FIRST_YEAR && year <= LAST_YEAR;
}

const dayNumber = (date: string): number => Date.parse(`${date}T00:00:00Z`) / DAY_MS;
const isoOf = (day: number): string => new Date(day * DAY_MS).toISOString().slice(0, 10);
/** Monday 0 up to Sunday 6. */
const weekdayOf = (day: number): number => (((day + FIRST_WEEKDAY) % WEEK_DAYS) + WEEK_DAYS) % WEEK_DAYS;

/** The date so many calendar days after a date, both `YYYY-MM-DD`, days 0 or more. */
export const addCalendarDays = (start: string, days: number): string => isoOf(dayNumber(start) + days);

/** Calendar days that so many working days take, weekends between them counted in; rounded up (common practice, no source). */
export const calendarDaysOf = (workingDays: number): number => Math.ceil((workingDays * WEEK_DAYS) / WEEK_WORKING_DAYS);

/** The day so many Mondays to Fridays after a day, by whole weeks: from a weekend they are counted as from its Friday. */
function addWeekdays(start: number, days: number): number {
  if (days === 0) return start;
  const weekday = Math.min(weekdayOf(start), WEEK_WORKING_DAYS - 1);
  const monday = start - weekdayOf(start);
  const total = weekday + days;
  return monday + Math.floor(total / WEEK_WORKING_DAYS) * WEEK_DAYS + (total % WEEK_WORKING_DAYS);
}

/** The date so many Mondays to Fridays after a date that are not among the holidays; days 0 or more. */
export function addWorkingDays(start: string, days: number, holidays: readonly string[] = []): string {
  const first = dayNumber(start);
  const closed = [...new Set(holidays)]
    .map(dayNumber)
    .filter((day) => day > first && weekdayOf(day) < WEEK_WORKING_DAYS)
    .sort((one, other) => one - other);
  let counted = days;
  // Each holiday on the way puts the end off by a working day, and the next holiday may then be on the way too.
  for (const day of closed) {
    if (day > addWeekdays(first, counted) || days === 0) break;
    counted += 1;
  }
  return isoOf(addWeekdays(first, counted));
}
