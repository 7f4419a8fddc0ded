import { describe, expect, test } from 'vitest';
import { readCostBook, readEstimate, readMarks, readOutcome, readSegments, readWording } from './stored-columns.ts';
import { StoredValueError } from './stored-value.ts';

const words = { en: 'A plate', es: 'Una solera' };
const wording = { headline: words, found: words, why: words, ifNot: words, note: words };

const refusal = (read: () => unknown): StoredValueError => {
  try {
    read();
  } catch (error) {
    if (error instanceof StoredValueError) return error;
    throw error;
  }
  throw new Error('it was read');
};

test('a value without a format number is of format 1, as all were before there was another', () => {
  expect(readWording('order 7', wording)).toEqual(wording);
  expect(readWording('order 7', { ...wording, format: 1 })).toMatchObject(wording);
});

describe('a value of a format that is not known here', () => {
  test.each([2, '2', null])('%j is an error that names column, row and formats', (format) => {
    const error = refusal(() => readWording('order 7', { ...wording, format }));
    expect(error).toMatchObject({ column: 'change_order.wording', row: 'order 7' });
    expect(error.message).toBe(
      `change_order.wording of order 7 is of format ${JSON.stringify(format)}; known here is 1.`,
    );
  });

  test('is one too where lists were kept before', () => {
    expect(refusal(() => readMarks('order 7', { format: 2, marks: [] })).column).toBe('change_order.marks');
    expect(refusal(() => readSegments('line 3', { format: 2, segments: [] })).row).toBe('line 3');
  });
});

test('a value that does not fit its format is an error that says what does not', () => {
  const error = refusal(() => readOutcome('judgment 5', { verdict: 'maybe' }));
  expect(error.message).toContain('judgment.outcome of judgment 5 does not fit format 1');
  expect(error.message).toContain('verdict');
  expect(refusal(() => readCostBook('version 3', { trades: [] })).row).toBe('version 3');
});

test('an estimate kept before there were alternates and exclusions has none, and keeps all that it had', () => {
  const old = { choices: [{ repairId: 'plate-tie', quantities: {} }], costBookVersion: 2, linesCents: 12_300 };
  expect(readEstimate('finding 4', old)).toEqual({
    ...old,
    manualLines: [],
    overrides: [],
    exclusions: [],
    alternates: [],
  });
  expect(readEstimate('finding 4', null)).toBeNull();
});

test('names that would be refused today are read as they were kept', () => {
  const [line] = readEstimate('finding 4', {
    choices: [],
    manualLines: [{ title: ' \u0007 ', quantity: 1, unitCents: 5 }],
  })?.manualLines ?? [{ title: '' }];
  expect(line?.title).toBe(' \u0007 ');
});
