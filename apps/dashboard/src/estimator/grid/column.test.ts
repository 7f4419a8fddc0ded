import { expect, test } from 'vitest';
import { type GridColumn, shownIn, valueFor } from './column.ts';

const column: GridColumn = {
  id: 'trade',
  head: 'Trade',
  options: [
    { value: 'trade-4', label: 'Carpenter' },
    { value: '', label: 'none' },
  ],
};

test('a choice is taken by its value or by its words, and anything else stays as it was typed', () => {
  expect(valueFor(column, 'trade-4')).toBe('trade-4');
  expect(valueFor(column, ' carpenter ')).toBe('trade-4');
  expect(valueFor(column, 'None')).toBe('');
  expect(valueFor(column, 'mason')).toBe('mason');
  expect(valueFor({ id: 'wage', head: 'Wage' }, ' 38 ')).toBe(' 38 ');
});

test('a choice is shown by its words, and what is none of them as it is', () => {
  expect(shownIn(column, { key: 'k', trade: 'trade-4' })).toBe('Carpenter');
  expect(shownIn(column, { key: 'k', trade: 'mason' })).toBe('mason');
  expect(shownIn({ ...column, show: () => 'worked out' }, { key: 'k' })).toBe('worked out');
});
