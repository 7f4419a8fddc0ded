/**
 * A project's clock is the one of its time zone. Until its zone is said, it is the one of a phone that took photos there;
 * where no photo tells it, the westernmost of the states is assumed: no state's working day is then put on the day after,
 * so that a last day is never told too late.
 */
const ASSUMED_OFFSET = '-10:00';

export interface SiteClock {
  /** An IANA name, or `+HH:MM` ahead of UTC where the project's zone is not said. */
  readonly zone: string;
  readonly from: 'project' | 'photo' | 'assumed';
}

/** Hawaii and the eastern states in summer; a camera that says more or less was never set to the place. */
const WESTERNMOST_HOURS = -10;
const EASTERNMOST_HOURS = -4;

/**
 * @param timeZone the project's, an IANA name, or null
 * @param photoOffset what the newest photo with a known zone says, `+HH:MM`, or null
 */
export function siteClock(timeZone: string | null, photoOffset: string | null): SiteClock {
  if (timeZone !== null) return { zone: timeZone, from: 'project' };
  const hours = photoOffset === null ? Number.NaN : minutesOf(photoOffset) / 60;
  return hours >= WESTERNMOST_HOURS && hours <= EASTERNMOST_HOURS && photoOffset !== null
    ? { zone: photoOffset, from: 'photo' }
    : { zone: ASSUMED_OFFSET, from: 'assumed' };
}

function minutesOf(utcOffset: string): number {
  const [hours = 0, minutes = 0] = utcOffset.slice(1).split(':').map(Number);
  return (utcOffset.startsWith('-') ? -1 : 1) * (hours * 60 + minutes);
}

const isOffset = (zone: string): boolean => /^[+-]\d/.test(zone);

/** The date (`YYYY-MM-DD`) and time (`HH:MM`) that a clock at the site showed at an instant. */
export function atSite(instant: Date, { zone }: SiteClock): { day: string; time: string } {
  const shown = isOffset(zone)
    ? new Date(instant.getTime() + minutesOf(zone) * 60_000).toISOString()
    : partsOf(instant, zone);
  return { day: shown.slice(0, 10), time: shown.slice(11, 16) };
}

/** The latest day that can have begun at the site. UTC is ahead of every state, so its date is the latest where the zone is not said. */
export const latestDay = (now: Date, clock: SiteClock): string =>
  clock.from === 'project' ? atSite(now, clock).day : now.toISOString().slice(0, 10);

/** Building a formatter takes far longer than using it, and a ledger asks for the same zone many times. */
const formats = new Map<string, Intl.DateTimeFormat>();

/** `2026-03-04 17:30`: the Swedish order of a date is the one of ISO 8601. */
function partsOf(instant: Date, zone: string): string {
  const format =
    formats.get(zone) ??
    new Intl.DateTimeFormat('sv-SE', { dateStyle: 'short', timeStyle: 'short', timeZone: zone, hourCycle: 'h23' });
  formats.set(zone, format);
  return format.format(instant);
}

/** `+HH:MM` ahead of UTC at an instant. */
export function offsetAt(instant: Date, clock: SiteClock): string {
  if (isOffset(clock.zone)) return clock.zone;
  const { day, time } = atSite(instant, clock);
  const minutes = Date.parse(`${day}T${time}:00Z`) / 60_000 - Math.floor(instant.getTime() / 60_000);
  const two = (value: number) => String(value).padStart(2, '0');
  return `${minutes < 0 ? '-' : '+'}${two(Math.floor(Math.abs(minutes) / 60))}:${two(Math.abs(minutes) % 60)}`;
}
