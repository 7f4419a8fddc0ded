import { expect, test } from 'vitest';
import { findNormalQuantile } from './normal-quantile.ts';

// Upper critical values of the standard normal distribution: NIST/SEMATECH e-Handbook 1.3.6.7.1 gives them to three digits,
// the further digits are from memory of any table of the inverse.
test.each([
  [0.5, 0],
  [0.75, 0.674489750196082],
  [0.9, 1.2815515655446],
  [0.95, 1.64485362695147],
  [0.975, 1.95996398454005],
  [0.99, 2.32634787404084],
  [0.995, 2.5758293035489],
  [0.999, 3.09023230616781],
  [0.9995, 3.29052673149193],
])('below the quantile of %f lies that share', (share, z) => {
  expect(findNormalQuantile(share)).toBeCloseTo(z, 11);
  expect(findNormalQuantile(1 - share)).toBeCloseTo(-z, 11);
});

test('a share so near to none or all that the series is not good is refused', () => {
  expect(() => findNormalQuantile(0.99995)).toThrow(RangeError);
  expect(() => findNormalQuantile(Number.NaN)).toThrow(RangeError);
});
