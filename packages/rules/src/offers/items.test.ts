import { expect, test } from 'vitest';
import { findCheck } from '../all-checks.ts';
import { measuredFields } from './items.ts';

const fields = findCheck('anchor.thread-engagement')?.inputs ?? {};

test('a rod end below the nut face is told by how much it stops short, without a sign', () => {
  expect(measuredFields(fields, { projectionIn: -0.125 })).toEqual([
    {
      label: {
        en: 'Rod stops short of the nut face by',
        es: 'La varilla no llega a la cara de la tuerca por',
      },
      value: '1/8"',
    },
  ]);
});

test('one past it keeps its name', () => {
  expect(measuredFields(fields, { projectionIn: 0.25 })).toMatchObject([
    { label: { en: 'Rod end past the nut face' }, value: '1/4"' },
  ]);
});
