import { runCheck } from '../judging/run-check.ts';
import type { Check, CheckCase, Outcome } from '../kernel/index.ts';

/** Cases without a stated tolerance agree up to binary arithmetic. */
const EXACT = 1e-9;

type Given = number | string | boolean | null | readonly string[] | undefined;

/** What a worked case gives when it is run, and every way in which that is not what the case says; none when it passes. */
export function runCase(check: Check, one: CheckCase): { outcome: Outcome; differences: string[] } {
  const outcome = runCheck(check, { edition: one.edition, inputs: one.inputs, context: one.situation });
  const { values = {}, ...wanted } = one.expect;
  const within = one.tolerance?.within ?? EXACT;
  const pairs: [what: string, got: Given, wanted: Given][] = [
    ...Object.entries(wanted).map(([what, value]): [string, Given, Given] => [
      what,
      outcome[what as keyof typeof wanted],
      value,
    ]),
    ...Object.entries(values).map(([name, value]): [string, Given, Given] => [
      name,
      outcome.values[name]?.value,
      value,
    ]),
  ];
  const differences = pairs
    .filter(([, got, value]) => value !== undefined && !agree(got, value, within))
    .map(([what, got, value]) => `${what}: ${JSON.stringify(got)} for ${JSON.stringify(value)}`);
  return { outcome, differences };
}

function agree(got: Given, wanted: Given, within: number): boolean {
  if (typeof wanted === 'number') return typeof got === 'number' && Math.abs(got - wanted) <= within;
  if (Array.isArray(wanted)) return JSON.stringify(got) === JSON.stringify(wanted);
  return got === wanted;
}
