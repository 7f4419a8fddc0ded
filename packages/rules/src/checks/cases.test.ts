import { describe, expect, test } from 'vitest';
import { checks } from '../all-checks.ts';
import { runCase } from '../handbook/run-case.ts';
import type { CheckCase } from '../kernel/index.ts';

for (const check of checks) {
  const { cases } = await check.cases();
  describe(check.id, () => {
    for (const one of cases) {
      test(one.name, () => {
        expect(runCase(check, one).differences).toEqual([]);
      });
    }
  });
}

describe('a case', () => {
  const [check] = checks;
  if (!check) throw new Error('The registry is empty');
  const base = { name: '', origin: 'hand-worked', source: '', inputs: {} } as const;
  const differences = (expected: CheckCase['expect'], tolerance?: CheckCase['tolerance']) =>
    runCase(check, { ...base, expect: expected, ...(tolerance && { tolerance }) }).differences;

  test('that expects another verdict, value or list than the check gives is told apart from one that passes', () => {
    expect(differences({ verdict: 'undetermined' })).toEqual([]);
    expect(differences({ verdict: 'meets' })).toEqual(['verdict: "undetermined" for "meets"']);
    expect(differences({ verdict: 'undetermined', ratio: 1 })).toEqual(['ratio: null for 1']);
    expect(differences({ verdict: 'undetermined', missing: [] })).toHaveLength(1);
    expect(differences({ verdict: 'undetermined', values: { nothing: 4 } })).toEqual(['nothing: undefined for 4']);
  });

  test('agrees within its tolerance and no further', async () => {
    const decided = (await check.cases()).cases.find(({ expect: { ratio } }) => typeof ratio === 'number');
    if (!decided) throw new Error(`${check.id} has no case with a ratio`);
    const { outcome } = runCase(check, decided);
    const near = (by: number) =>
      runCase(check, {
        ...decided,
        expect: { verdict: outcome.verdict, ratio: Number(outcome.ratio) + by },
        tolerance: { within: 0.01, reason: 'tries the tolerance' },
      }).differences.length;
    expect([near(0.009), near(0.011)]).toEqual([0, 1]);
  });
});
