/** Integer cents as dollars. `trim` leaves out ".00" in running text; columns keep it so that they line up. */
export function formatMoney(cents: number, tag: string, options: { trim?: boolean; sign?: boolean } = {}): string {
  return new Intl.NumberFormat(tag, {
    style: 'currency',
    currency: 'USD',
    signDisplay: options.sign ? 'exceptZero' : 'auto',
    minimumFractionDigits: options.trim && cents % 100 === 0 ? 0 : 2,
  }).format(cents / 100);
}

/** A number for reading, at most `digits` decimals (2). */
export function formatNumber(value: number, tag: string, digits = 2): string {
  return new Intl.NumberFormat(tag, { maximumFractionDigits: digits }).format(value);
}

/** A share 0..1 as a whole percent. */
export function formatShare(share: number, tag: string): string {
  return new Intl.NumberFormat(tag, { style: 'percent', maximumFractionDigits: 0 }).format(share);
}

export type DateStyle = 'day' | 'day-time' | 'long-day';

const dateStyles: Record<DateStyle, Intl.DateTimeFormatOptions> = {
  day: { month: 'short', day: 'numeric', year: 'numeric' },
  'day-time': { month: 'short', day: 'numeric', hour: 'numeric', minute: '2-digit' },
  'long-day': { month: 'long', day: 'numeric', year: 'numeric' },
};

/**
 * An RFC 3339 instant, or a plain day (`2026-03-06`), in the reader's words. A plain day has no hour and is never moved
 * by a time zone. In a given zone an hour is told with the zone's name, and a day in UTC says that it is. Anything that is
 * not a date is given back as it came, so that nothing is hidden.
 */
export function formatDate(value: string, tag: string, style: DateStyle = 'day', timeZone?: string): string {
  const plainDay = /^\d{4}-\d{2}-\d{2}$/.test(value);
  const date = new Date(plainDay ? `${value}T00:00:00Z` : value);
  if (Number.isNaN(date.getTime())) return value;
  if (plainDay) return new Intl.DateTimeFormat(tag, { ...dateStyles[plainStyle(style)], timeZone: 'UTC' }).format(date);
  if (!timeZone) return new Intl.DateTimeFormat(tag, dateStyles[style]).format(date);
  const named = style === 'day-time' ? ({ timeZoneName: 'short' } as const) : {};
  const words = new Intl.DateTimeFormat(tag, { ...dateStyles[style], ...named, timeZone }).format(date);
  return timeZone === 'UTC' && style !== 'day-time' ? `${words} (UTC)` : words;
}

const plainStyle = (style: DateStyle): DateStyle => (style === 'day-time' ? 'day' : style);
