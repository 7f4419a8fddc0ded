import { expect, test } from 'vitest';
import { emptyPad, fromPad, isFull, padParts, pressDigit, toPad } from './pad.ts';

test('7 3/8 in is seven whole inches and six sixteenths', () => {
  expect(toPad(7.375, 16, false, false)).toEqual({ negative: false, feet: 0, whole: 7, ticks: 6 });
});

test('every sixteenth up to ten feet comes back as it went in', () => {
  for (let ticks = -1920; ticks <= 1920; ticks += 1) {
    expect(fromPad(toPad(ticks / 16, 16, true, false), 16)).toBe(ticks / 16);
  }
});

test('below the nut stays below at zero, so that the next fraction is below too', () => {
  const pad = toPad(0, 16, false, true);
  expect(fromPad({ ...pad, ticks: 4 }, 16)).toBe(-0.25);
});

test('beside feet, inches never reach twelve: 1 then 4 becomes 4', () => {
  const one = pressDigit(emptyPad, 'whole', 1, true);
  expect(pressDigit(one, 'whole', 1, true).whole).toBe(11);
  expect(pressDigit(one, 'whole', 4, true).whole).toBe(4);
  expect(pressDigit(one, 'whole', 4, false).whole).toBe(14);
});

test('a rod end asks for the fraction first, a wall for feet first', () => {
  expect(padParts(-4, 24).first).toBe('ticks');
  expect(padParts(0, 14)).toEqual({ parts: ['whole', 'ticks'], first: 'whole' });
  expect(padParts(0, 480).first).toBe('feet');
});

test('after a 7 of at most 14 in there is no second digit to wait for', () => {
  expect(isFull({ ...emptyPad, whole: 7 }, 'whole', false, 14)).toBe(true);
  expect(isFull({ ...emptyPad, whole: 1 }, 'whole', false, 14)).toBe(false);
});
