import { expect, test } from 'vitest';
import { fillMessage } from './define.ts';

test('a place in a message takes its value', () => {
  expect(fillMessage('Saved {name}', 'en-US', { name: 'East wall' })).toBe('Saved East wall');
});

test('a place with no value stays visible', () => {
  expect(fillMessage('Saved {name}', 'en-US')).toBe('Saved {name}');
});

test('one photo is not called photos, in either language', () => {
  const message = { one: '{count} photo', other: '{count} photos' };
  expect(fillMessage(message, 'en-US', { count: 1 })).toBe('1 photo');
  expect(fillMessage(message, 'en-US', { count: 0 })).toBe('0 photos');
  expect(fillMessage(message, 'es-US', { count: 1200 })).toBe('1,200 photos');
});
