import type { ChangeOrderDocument } from '@underlath/contract';
import type { Locale } from '@underlath/rules';

const tags: Record<Locale, string> = { en: 'en-US', es: 'es-US' };

/** An instant as a clock at the site shows it, `November 30, 2026 at 12:25 AM PST`; in UTC, said so, where no zone is known. */
export function sayInstant(instant: string, locale: Locale, timeZone: string | null): string {
  const format = new Intl.DateTimeFormat(tags[locale], {
    month: 'long',
    day: 'numeric',
    year: 'numeric',
    hour: 'numeric',
    minute: '2-digit',
    timeZone: timeZone ?? 'UTC',
    timeZoneName: 'short',
  });
  return format.format(new Date(instant));
}

/** The day of an instant at the site, `November 30, 2026`; in UTC, said so, where no zone is known. */
export function sayDayOf(instant: string, locale: Locale, timeZone: string | null): string {
  const format = new Intl.DateTimeFormat(tags[locale], { dateStyle: 'long', timeZone: timeZone ?? 'UTC' });
  return `${format.format(new Date(instant))}${timeZone === null ? ' (UTC)' : ''}`;
}

/** The zone that a letter tells its days by: the one it was sent with, else the project's own, which may be known since. */
export const letterZone = (
  { project }: Pick<ChangeOrderDocument, 'project'>,
  { timeZone }: { readonly timeZone: string | null },
): string | null => project.timeZone ?? timeZone;

/** A calendar day, `March 3, 2026`. */
export const sayDay = (day: string, locale: Locale): string =>
  new Intl.DateTimeFormat(tags[locale], { dateStyle: 'long', timeZone: 'UTC' }).format(new Date(`${day}T00:00:00Z`));
