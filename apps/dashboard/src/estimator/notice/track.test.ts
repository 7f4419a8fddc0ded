import type { NoticeClock } from '@underlath/contract';
import { describe, expect, test } from 'vitest';
import { daysBetween, trackOf } from './track.ts';

const clock = (more: Partial<NoticeClock>) =>
  ({ firstSeenOn: '2026-06-01', today: '2026-06-08', dueOn: '2026-06-15', sentOn: null, ...more }) as NoticeClock;
const told = (more: Partial<NoticeClock>) => trackOf(clock(more)).map(({ kind, at }) => [kind, at]);

describe('the days of a notice on a line', () => {
  test('halfway to the last day is half of the line', () => {
    expect(told({})).toEqual([
      ['seen', 0],
      ['today', 0.5],
      ['due', 1],
    ]);
  });

  test('past the last day, today ends the line', () => {
    expect(told({ today: '2026-06-29' })).toEqual([
      ['seen', 0],
      ['due', 0.5],
      ['today', 1],
    ]);
  });

  test('on one day all stand at its start, in the order they happen', () => {
    expect(told({ today: '2026-06-01', sentOn: '2026-06-01', dueOn: null })).toEqual([
      ['seen', 0],
      ['sent', 0],
      ['today', 0],
    ]);
  });

  test('a notice dated before the day it was seen comes first', () => {
    expect(told({ sentOn: '2026-05-31' })[0]).toEqual(['sent', 0]);
  });

  test('days are counted over a change of the clocks', () => {
    expect(daysBetween('2026-03-07', '2026-03-09')).toBe(2);
    expect(daysBetween('2026-03-09', '2026-03-07')).toBe(-2);
  });
});
