import { describe, expect, test } from 'vitest';
import { atSite, siteClock } from './site-clock.ts';

const shown = (instant: string, photoOffset: string | null) => atSite(new Date(instant), siteClock(photoOffset));

describe('the clock at the site', () => {
  test('an evening in the west is still the day before it is in UTC', () => {
    expect(shown('2026-03-04T01:30:00Z', '-08:00')).toEqual({ day: '2026-03-03', time: '17:30' });
    expect(shown('2026-03-04T01:30:00Z', '-04:00')).toEqual({ day: '2026-03-03', time: '21:30' });
  });

  test('where no photo tells a zone, no working day of any state is put on the day after', () => {
    expect(siteClock(null)).toEqual({ utcOffset: '-10:00', from: 'assumed' });
    // 5:30 in the morning in the east, 19:30 the evening before in the west.
    expect(shown('2026-03-03T10:30:00Z', null).day).toBe('2026-03-03');
    expect(shown('2026-03-04T03:30:00Z', null).day).toBe('2026-03-03');
  });

  test.each(['+00:00', '+99:99', '-11:00', '-03:30'])('a camera set to %s was not set to a state', (offset) => {
    expect(siteClock(offset).from).toBe('assumed');
  });

  test.each(['-10:00', '-04:00', '-05:00'])('one set to %s was', (offset) => {
    expect(siteClock(offset)).toEqual({ utcOffset: offset, from: 'photo' });
  });
});
