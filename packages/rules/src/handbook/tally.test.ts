import { expect, test } from 'vitest';
import { checks, findCheck } from '../all-checks.ts';
import { countBases, sumOf, tallyCheck } from './tally.ts';

test('what a check counts adds up to its sources and its cases', async () => {
  for (const check of checks) {
    const evidence = await check.cases();
    const { bases, origins, severities } = tallyCheck(check, evidence);
    expect(sumOf(bases)).toBe(new Set(check.sources.map(({ id }) => id)).size);
    expect([sumOf(origins), sumOf(severities)]).toEqual([evidence.cases.length, evidence.cases.length]);
  }
});

test('the sill bolts are known second-hand only', async () => {
  const check = findCheck('anchor.sill-bolts');
  if (!check) throw new Error('There is no check of sill bolts');
  const { bases, origins } = tallyCheck(check, await check.cases());
  expect(bases).toEqual({ published: 0, 'second-hand': 2, memory: 0, 'common-practice': 0 });
  expect(origins.published).toBe(0);
});

test('a source is counted once, however often it is named', () => {
  const [check] = checks;
  const sources = check?.sources ?? [];
  expect(countBases([...sources, ...sources])).toEqual(countBases(sources));
});
