import { expect, test } from 'vitest';
import { formatDate, formatMoney, formatShare } from './format.ts';

test('cents print as dollars with both decimals', () => {
  expect(formatMoney(648000, 'en-US')).toBe('$6,480.00');
  expect(formatMoney(-5, 'en-US')).toBe('-$0.05');
});

test('running text leaves out empty cents but never real ones', () => {
  expect(formatMoney(648000, 'en-US', { trim: true })).toBe('$6,480');
  expect(formatMoney(648001, 'en-US', { trim: true })).toBe('$6,480.01');
});

test('a change carries its sign', () => {
  expect(formatMoney(1200, 'en-US', { sign: true })).toBe('+$12.00');
});

test('a plain day stays that day in every time zone', () => {
  expect(formatDate('2026-03-06', 'en-US')).toBe('Mar 6, 2026');
  expect(formatDate('2026-03-06', 'es-US', 'long-day')).toBe('6 de marzo de 2026');
});

test('an instant is shown in the zone it is asked for', () => {
  const evening = '2026-03-06T02:05:00Z';
  expect(formatDate(evening, 'en-US', 'day-time', 'America/Los_Angeles').replace(/\s/g, ' ')).toBe(
    'Mar 5, 6:05 PM PST',
  );
  expect(formatDate(evening, 'en-US', 'long-day', 'America/Los_Angeles')).toBe('March 5, 2026');
});

test('a day of an instant in UTC says that it is one of UTC; a plain day says nothing', () => {
  expect(formatDate('2026-03-06T02:05:00Z', 'es-US', 'long-day', 'UTC')).toBe('6 de marzo de 2026 (UTC)');
  expect(formatDate('2026-03-06', 'en-US', 'day', 'UTC')).toBe('Mar 6, 2026');
});

test('what is not a date is shown as it came', () => {
  expect(formatDate('last week', 'en-US')).toBe('last week');
});

test('a share is a whole percent', () => {
  expect(formatShare(0.405, 'en-US')).toBe('41%');
});
