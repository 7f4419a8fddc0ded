/**
 * A project has no time zone of its own. Its clock is the one of a phone that took photos there; where no photo tells it,
 * the westernmost of the states is assumed: no state's working day is then put on the day after, so that a last day is
 * never told too late.
 */
const ASSUMED_OFFSET = '-10:00';

export interface SiteClock {
  /** `+HH:MM` ahead of UTC. */
  readonly utcOffset: string;
  readonly from: 'photo' | 'assumed';
}

/** Hawaii and the eastern states in summer; a camera that says more or less was never set to the place. */
const WESTERNMOST_HOURS = -10;
const EASTERNMOST_HOURS = -4;

/** @param photoOffset what the newest photo with a known zone says, `+HH:MM`, or null */
export function siteClock(photoOffset: string | null): SiteClock {
  const hours = photoOffset === null ? Number.NaN : minutesOf(photoOffset) / 60;
  return hours >= WESTERNMOST_HOURS && hours <= EASTERNMOST_HOURS && photoOffset !== null
    ? { utcOffset: photoOffset, from: 'photo' }
    : { utcOffset: ASSUMED_OFFSET, from: 'assumed' };
}

function minutesOf(utcOffset: string): number {
  const [hours = 0, minutes = 0] = utcOffset.slice(1).split(':').map(Number);
  return (utcOffset.startsWith('-') ? -1 : 1) * (hours * 60 + minutes);
}

/** The date (`YYYY-MM-DD`) and time (`HH:MM`) that a clock at the site showed at an instant. */
export function atSite(instant: Date, { utcOffset }: SiteClock): { day: string; time: string } {
  const shown = new Date(instant.getTime() + minutesOf(utcOffset) * 60_000).toISOString();
  return { day: shown.slice(0, 10), time: shown.slice(11, 16) };
}
