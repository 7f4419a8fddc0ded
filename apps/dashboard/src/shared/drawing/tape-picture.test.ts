import type { Fields } from '@underlath/rules';
import { checks } from '@underlath/rules/all-checks';
import { expect, test } from 'vitest';
import { drawnTapeIds } from './tape-picture.tsx';

function picturesOf(fields: Fields): string[] {
  return Object.values(fields).flatMap((field) => [
    ...(field.picture ? [field.picture] : []),
    ...(field.kind === 'group' ? picturesOf(field.fields) : []),
    ...(field.kind === 'list' ? picturesOf(field.item) : []),
  ]);
}

const named = new Set(checks.flatMap((check) => picturesOf(check.inputs)));

test('a field that names a moving drawing gets one; a field that names none uses the drawing of its check', () => {
  expect([...named].filter((id) => !drawnTapeIds.includes(id))).toEqual([]);
});

test('no moving drawing is left without a field', () => {
  expect(drawnTapeIds.filter((id) => !named.has(id))).toEqual([]);
});
