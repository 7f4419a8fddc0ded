import { checks, type Fields } from '@underlath/rules';
import { expect, test } from 'vitest';
import { drawnCheckIds } from './check-picture.tsx';
import { drawnTapeIds } from './tape-picture.tsx';

function picturesOf(fields: Fields): string[] {
  return Object.values(fields).flatMap((field) => [
    ...(field.picture ? [field.picture] : []),
    ...(field.kind === 'group' ? picturesOf(field.fields) : []),
    ...(field.kind === 'list' ? picturesOf(field.item) : []),
  ]);
}

test('every picture a field of a check names is drawn, and none is drawn for nothing', () => {
  const named = new Set(checks.flatMap((check) => picturesOf(check.inputs)));
  expect([...named].toSorted()).toEqual(drawnTapeIds.toSorted());
});

test('every check has its own picture in the picker', () => {
  expect(checks.map((check) => check.id).filter((id) => !drawnCheckIds.includes(id))).toEqual([]);
});
