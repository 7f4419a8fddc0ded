import { STATE_ZONES, zoneOfSite } from '@underlath/contract';
import { describe, expect, test } from 'vitest';
import { atSite, offsetAt, siteClock } from './site-clock.ts';

const shown = (instant: string, timeZone: string | null, photoOffset: string | null = null) =>
  atSite(new Date(instant), siteClock(timeZone, photoOffset));

describe('the clock at the site', () => {
  test('is the project’s own, whatever a photo says', () => {
    expect(siteClock('America/Los_Angeles', '-05:00')).toEqual({ zone: 'America/Los_Angeles', from: 'project' });
    expect(shown('2026-11-30T08:25:00Z', 'America/Los_Angeles')).toEqual({ day: '2026-11-30', time: '00:25' });
    expect(shown('2026-07-01T06:25:00Z', 'America/Los_Angeles')).toEqual({ day: '2026-06-30', time: '23:25' });
  });

  test('half past eleven at night on the Pacific is the same day, an hour later the next', () => {
    expect(shown('2026-11-30T07:30:00Z', 'America/Los_Angeles')).toEqual({ day: '2026-11-29', time: '23:30' });
    expect(shown('2026-11-30T08:30:00Z', 'America/Los_Angeles')).toEqual({ day: '2026-11-30', time: '00:30' });
    expect(shown('2026-11-30T07:30:00Z', 'America/New_York').day).toBe('2026-11-30');
  });

  test('follows daylight saving on the days it begins and ends', () => {
    // 2026-03-08 has 23 hours in the Pacific zone, 2026-11-01 has 25.
    expect(shown('2026-03-08T07:59:00Z', 'America/Los_Angeles')).toEqual({ day: '2026-03-07', time: '23:59' });
    expect(shown('2026-03-08T10:00:00Z', 'America/Los_Angeles')).toEqual({ day: '2026-03-08', time: '03:00' });
    expect(shown('2026-03-09T06:59:00Z', 'America/Los_Angeles')).toEqual({ day: '2026-03-08', time: '23:59' });
    expect(shown('2026-11-01T06:59:00Z', 'America/Los_Angeles')).toEqual({ day: '2026-10-31', time: '23:59' });
    expect(shown('2026-11-02T07:59:00Z', 'America/Los_Angeles')).toEqual({ day: '2026-11-01', time: '23:59' });
    expect(shown('2026-03-08T10:00:00Z', 'America/Phoenix').time).toBe('03:00');
    expect(shown('2026-07-08T10:00:00Z', 'America/Phoenix').time).toBe('03:00');
  });

  test('tells its distance from UTC at a moment', () => {
    const clock = siteClock('America/New_York', null);
    expect(offsetAt(new Date('2026-01-15T12:00:00.500Z'), clock)).toBe('-05:00');
    expect(offsetAt(new Date('2026-07-15T12:00:59.999Z'), clock)).toBe('-04:00');
    expect(offsetAt(new Date('2026-07-15T12:00:00Z'), siteClock(null, null))).toBe('-10:00');
  });
});

describe('where the project has no zone', () => {
  test('the photo’s clock counts: an evening in the west is still the day before it is in UTC', () => {
    expect(shown('2026-03-04T01:30:00Z', null, '-08:00')).toEqual({ day: '2026-03-03', time: '17:30' });
    expect(shown('2026-03-04T01:30:00Z', null, '-04:00')).toEqual({ day: '2026-03-03', time: '21:30' });
  });

  test('and no photo tells one, no working day of any state is put on the day after', () => {
    expect(siteClock(null, null)).toEqual({ zone: '-10:00', from: 'assumed' });
    // 5:30 in the morning in the east, 19:30 the evening before in the west.
    expect(shown('2026-03-03T10:30:00Z', null).day).toBe('2026-03-03');
    expect(shown('2026-03-04T03:30:00Z', null).day).toBe('2026-03-03');
  });

  test.each(['+00:00', '+99:99', '-11:00', '-03:30'])('a camera set to %s was not set to a state', (offset) => {
    expect(siteClock(null, offset).from).toBe('assumed');
  });

  test.each(['-10:00', '-04:00', '-05:00'])('one set to %s was', (offset) => {
    expect(siteClock(null, offset)).toEqual({ zone: offset, from: 'photo' });
  });
});

describe('the zones of the states', () => {
  test('are zones that the runtime knows', () => {
    const known = new Set(Intl.supportedValuesOf('timeZone'));
    const listed = Object.values(STATE_ZONES).flatMap((zones) => zones.map(({ timeZone }) => timeZone));
    // The runtime lists Indianapolis and Louisville under their older names, and reads the ones of the tz database too.
    const canonical = (zone: string) => new Intl.DateTimeFormat('en-US', { timeZone: zone }).resolvedOptions().timeZone;
    expect(listed.filter((zone) => !known.has(canonical(zone)))).toEqual([]);
  });

  test('of one state tell different times, at least in one season', () => {
    for (const [state, zones] of Object.entries(STATE_ZONES)) {
      const seasons = zones.map(({ timeZone }) =>
        ['2026-01-15T12:00:00Z', '2026-07-15T12:00:00Z'].map((at) => shown(at, timeZone).time).join(' '),
      );
      expect(new Set(seasons).size, state).toBe(zones.length);
    }
  });

  test('are known where a state has one, and asked for where it has two', () => {
    expect(zoneOfSite('CA', null)).toBe('America/Los_Angeles');
    expect(zoneOfSite('TN', null)).toBeNull();
    expect(zoneOfSite('TN', 'America/New_York')).toBe('America/New_York');
    expect(zoneOfSite('TN', 'America/Los_Angeles')).toBeNull();
    expect(zoneOfSite('CA', 'America/New_York')).toBe('America/Los_Angeles');
    expect(zoneOfSite(null, 'America/New_York')).toBeNull();
  });
});
