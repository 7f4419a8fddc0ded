import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { formatExact, formatLength, formatRequired, lengthParts, parseLength } from './measure.ts';

const inches = (typed: string, defaultUnit?: 'in' | 'ft') => {
  const parsed = parseLength(typed, defaultUnit ? { defaultUnit } : {});
  return parsed.ok ? parsed.inches : parsed.failure.code;
};

describe('lengths are read as the trade types them', () => {
  test.each([
    ['7 3/8', 7.375],
    ['7-3/8', 7.375],
    ['7 3/8"', 7.375],
    ['4\'-6 1/2"', 54.5],
    ["4' 6 1/2", 54.5],
    ["4'6", 54],
    ['4’-6½”', 54.5],
    ['6 ft 2 in', 74],
    ['6ft', 72],
    ['5 1/2 ft', 66],
    ['.5', 0.5],
    ['1/4', 0.25],
    ['0', 0],
    ['-1/8', -0.125],
    ['− 3/16', -0.1875],
    ['11.25 in', 11.25],
    ['2 pies 3 pulgadas', 27],
    ['⅝', 0.625],
    ['190 mm', 190 / 25.4],
    ['19 cm', 190 / 25.4],
    ['1 m', 1000 / 25.4],
  ])('%s', (typed, expected) => {
    expect(inches(typed)).toBeCloseTo(Number(expected), 9);
  });

  test('a bare number takes the unit asked for', () => {
    expect(inches('8', 'ft')).toBe(96);
    expect(inches('8 in', 'ft')).toBe(8);
  });

  test.each([
    ['', 'empty'],
    ['   ', 'empty'],
    ['two', 'not-a-length'],
    ['3/7', 'bad-fraction'],
    ['1/0', 'bad-fraction'],
    ['7 3/8 3', 'not-a-length'],
    ['4\' 14"', 'inches-over-12'],
    ['7,5', 'not-a-length'],
    ['1e3', 'not-a-length'],
    ['Infinity', 'not-a-length'],
    ['--2', 'not-a-length'],
  ])('%s is refused as %s', (typed, code) => {
    expect(inches(typed)).toBe(code);
  });

  test('a refusal says what was typed and what is allowed, in both languages', () => {
    const parsed = parseLength('about 3');
    if (parsed.ok) throw new Error('"about 3" was read as a length');
    expect(parsed.failure.typed).toBe('about 3');
    expect(parsed.failure.message.en).toContain('"about 3" is not a length. Type it like 7 3/8');
    expect(parsed.failure.message.es).toContain('no es una medida');
  });
});

describe('lengths are shown as feet, inches and fractions', () => {
  test.each([
    [7.375, '7 3/8"'],
    [54.5, '4\'-6 1/2"'],
    [48, '4\'-0"'],
    [48.25, '4\'-0 1/4"'],
    [0, '0"'],
    [0.25, '1/4"'],
    [-0.125, '-1/8"'],
    [11.99, '1\'-0"'],
    [0.41, '7/16"'],
  ])('%s in is %s', (value, shown) => {
    expect(formatLength(value)).toBe(shown);
  });

  test('the parts set a real fraction and tell when they were rounded', () => {
    expect(lengthParts(54.5)).toEqual({
      negative: false,
      feet: 4,
      whole: 6,
      numerator: 1,
      denominator: 2,
      exact: true,
    });
    expect(lengthParts(0.41).exact).toBe(false);
    expect(formatLength(30.5, { style: 'inches' })).toBe('30 1/2"');
    expect(formatLength(0.41, { denominator: 32 })).toBe('13/32"');
  });

  test('any length on a tape survives being written and read again', () => {
    const styles = fc.constantFrom('feet-inches' as const, 'inches' as const);
    fc.assert(
      fc.property(fc.integer({ min: -500_000, max: 500_000 }), styles, (sixtyFourths, style) => {
        const value = sixtyFourths / 64;
        expect(inches(formatLength(value, { denominator: 64, style }))).toBe(value === 0 ? 0 : value);
      }),
    );
  });
});

test('a required length is rounded up, never down, to the sixteenth', () => {
  expect(formatRequired(1.92)).toBe('1 15/16"');
  expect(formatRequired(1.5)).toBe('1 1/2"');
  expect(formatRequired(1.5001)).toBe('1 9/16"');
});

test('a fraction as large as one is refused: nine and four fourths is a slip of the finger', () => {
  for (const typed of ['9 4/4', '9 5/4', '4/4', '3\' 2 16/16"']) {
    const read = parseLength(typed);
    expect(read.ok ? undefined : read.failure.code).toBe('bad-fraction');
  }
  expect(parseLength('9 3/4')).toEqual({ ok: true, inches: 9.75 });
});

test('an exact length reads back as what it was', () => {
  expect([0.75, 0.015625, 0.244, 0.06, 54.5, -1.25].map((value) => formatExact(value))).toEqual([
    '3/4"',
    '1/64"',
    '0.244 in',
    '0.06 in',
    '4\'-6 1/2"',
    '-1 1/4"',
  ]);
});
