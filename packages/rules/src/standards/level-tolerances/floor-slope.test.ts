import { expect, test } from 'vitest';
import { SLOPE_RULES } from './floor-slope.data.ts';

test.each([
  ['half-in-20-ft', 480, 'second-hand'],
  ['half-in-12-ft', 288, 'common-practice'],
  ['three-sixteenths-in-4-ft', 256, 'common-practice'],
  ['noticeable', 250, 'second-hand'],
  ['trigger-1-240', 240, 'common-practice'],
  ['quarter-in-32-in', 128, 'second-hand'],
  ['remedial', 100, 'second-hand'],
  ['three-eighths-in-32-in', 85.333, 'second-hand'],
  ['wall-plumb', 480, 'common-practice'],
  ['wall-plumb-8-ft', 384, 'common-practice'],
])('%s is a slope of 1 in %s (%s)', (id, oneIn, basis) => {
  const rule = SLOPE_RULES.find((row) => row.id === id);
  if (!rule) throw new Error(`There is no rule ${id}`);
  expect(rule.runIn / rule.riseIn).toBeCloseTo(oneIn, 3);
  expect(rule.source.basis).toBe(basis);
});

test('the first, which decides when nobody chooses, is the strictest', () => {
  const [first] = SLOPE_RULES;
  for (const rule of SLOPE_RULES) expect(first.riseIn / first.runIn).toBeLessThanOrEqual(rule.riseIn / rule.runIn);
});
