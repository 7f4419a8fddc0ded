import { expect, test } from 'vitest';
import { checks } from './all-checks.ts';
import { checksByElement } from './elements.ts';

test('every check is picked under exactly one element', () => {
  const picked = checksByElement(checks).flatMap((element) => element.checks.map((check) => check.id));
  expect(picked.toSorted()).toEqual(checks.map((check) => check.id).toSorted());
});

test('an element nobody named comes last, under the title of its first check', () => {
  const [first] = checks;
  if (!first) throw new Error('The registry is empty');
  const elements = checksByElement([{ ...first, id: 'chimney.lean' }, ...checks]);
  expect(elements.find(({ id }) => id === 'chimney')).toMatchObject({ name: first.title });
});

test('no element holds more than eight checks: a phone shows them without a long scroll', () => {
  for (const { checks: group } of checksByElement(checks)) expect(group.length).toBeLessThanOrEqual(8);
});
