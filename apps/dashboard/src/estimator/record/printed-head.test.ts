import { describe, expect, test } from 'vitest';
import { readPrinted } from './printed-head.ts';

const hash = '3f9a'.repeat(16);

describe('where a record stood, as a letter prints it', () => {
  test.each([`12: ${hash}`, ` 12:${hash.toUpperCase()} `, `12: ${hash.replace(/(.{8})/g, '$1 ')}`])(
    '%s is read',
    (text) => {
      expect(readPrinted(text)).toEqual({ seq: 12, hash });
    },
  );

  test('nothing typed asks for nothing', () => {
    expect(readPrinted('  ')).toEqual({});
  });

  test.each([hash, '12:', `12: ${hash.slice(1)}`, `12: ${hash}0`, `x: ${hash}`])('%s is not whole', (text) => {
    expect(readPrinted(text)).toBeUndefined();
  });
});
