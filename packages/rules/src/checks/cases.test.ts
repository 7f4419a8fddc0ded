import { describe, expect, test } from 'vitest';
import { runCheck } from '../evaluate.ts';
import type { CheckCase, Outcome } from '../kernel/index.ts';
import { checks } from '../registry.ts';

/** Cases without a stated tolerance agree up to binary arithmetic. */
const EXACT = 1e-9;

function expectNumber(actual: unknown, wanted: number | string | boolean | null, within: number, what: string) {
  if (typeof wanted !== 'number') return expect(actual, what).toBe(wanted);
  expect(typeof actual, what).toBe('number');
  expect(Math.abs((actual as number) - wanted), `${what}: ${actual} for ${wanted}`).toBeLessThanOrEqual(within);
}

function expectCase(outcome: Outcome, { expect: wanted, tolerance }: CheckCase) {
  const within = tolerance?.within ?? EXACT;
  expect(outcome.verdict).toBe(wanted.verdict);
  if (wanted.ratio !== undefined) expectNumber(outcome.ratio, wanted.ratio, within, 'ratio');
  if (wanted.remaining !== undefined) expectNumber(outcome.remaining, wanted.remaining, within, 'remaining');
  if (wanted.severity !== undefined) expect(outcome.severity).toBe(wanted.severity);
  for (const [name, value] of Object.entries(wanted.values ?? {}))
    expectNumber(outcome.values[name]?.value, value, within, name);
  if (wanted.missing) expect(outcome.missing).toEqual(wanted.missing);
  if (wanted.referrals) expect(outcome.referrals).toEqual(wanted.referrals);
  if (wanted.repairs) expect(outcome.repairs).toEqual(wanted.repairs);
}

for (const check of checks) {
  const { cases } = await check.cases();
  describe(check.id, () => {
    for (const one of cases) {
      test(one.name, () => {
        expectCase(runCheck(check, { edition: one.edition, inputs: one.inputs, context: one.situation }), one);
      });
    }
  });
}
