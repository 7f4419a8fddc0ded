import { describe, expect, test } from 'vitest';
import { Reader, readDollars, readNumber, writeDollars } from './numbers.ts';

describe('dollars as people type them', () => {
  test.each([
    ['184,200', 18_420_000],
    ['$184,200.50', 18_420_050],
    ['12.5', 1250],
    ['-40', -4000],
    ['', null],
  ])('%s is %s cents', (typed, cents) => {
    expect(readDollars(typed)).toBe(cents);
  });

  test.each(['12.345', 'twelve', '1.2.3'])('%s is no amount', (typed) => {
    expect(readDollars(typed)).toBeUndefined();
  });

  test('what is written is read back as the same cents', () => {
    for (const cents of [0, 1, 99, 100, 12_345, 18_420_000, -250]) expect(readDollars(writeDollars(cents))).toBe(cents);
  });
});

test('a number may carry thousands commas and begin with its point', () => {
  expect(readNumber('1,250')).toBe(1250);
  expect(readNumber('.5')).toBe(0.5);
  expect(readNumber('5 ft')).toBeUndefined();
});

test('a reader collects every wrong answer with its pointer', () => {
  const reader = new Reader();
  expect(reader.need('/name', '  ', 'The name')).toBe('');
  expect(reader.neededNumber('/stories', readNumber('two'), 'two', 'choose 1 to 4')).toBe(0);
  expect(reader.number('/yearBuilt', readNumber(''), '', 'type a year')).toBeNull();
  expect(reader.problem?.errors?.map((error) => error.pointer)).toEqual(['/name', '/stories']);
});
