import { checks } from '@underlath/rules/all-checks';
import { expect, test } from 'vitest';
import { findChecks } from './find-checks.ts';

const idsOf = (typed: string) => findChecks(checks, typed).map(({ id }) => id);

test('a check is found by its name in either language, by what is measured, by its id and by its document', () => {
  expect(idsOf('rod nut')).toContain('anchor.thread-engagement');
  expect(idsOf('varilla')).toContain('anchor.thread-engagement');
  expect(idsOf('diametro')).toContain('anchor.thread-engagement');
  expect(idsOf('Rod DIAMETER')).toContain('anchor.thread-engagement');
  expect(idsOf('cut.top-plate')).toEqual(['cut.top-plate']);
  expect(idsOf('b18.2.2')).toContain('anchor.thread-engagement');
});

test('every typed word must be there', () => {
  expect(idsOf('rod zeppelin')).toEqual([]);
  expect(idsOf('  ')).toEqual(checks.map(({ id }) => id));
});
