import { expect, test } from 'vitest';
import { fieldWords, plainWords } from './problem-words.ts';

test('words of the rules are shown in place of what the caller of the API is told', () => {
  const detail = 'notchIn: got 5 in; allowed is at most 3 in, the wood that is there.';
  const words = 'Notch: 5" is more than the wood that is there, 3".';
  expect(fieldWords({ detail, words })).toBe(words);
});

test('a detail without words is read without the name of its field, and without got and allowed', () => {
  expect(plainWords('opened: got 7; allowed is at most 5, all there are.')).toBe(
    'Has to be at most 5, all there are; it was 7.',
  );
  expect(plainWords('came as “x”; allowed is a number from 0')).toBe('Has to be a number from 0; it was “x”');
  expect(plainWords('seenAt: got 2026-12-02, which has not come yet; it is 2026-11-30.')).toBe(
    'It was 2026-12-02, which has not come yet; it is 2026-11-30.',
  );
  expect(plainWords('The name is missing.')).toBe('The name is missing.');
});
