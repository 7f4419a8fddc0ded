import { expect, test } from 'vitest';
import { scaleEnds } from './scales.tsx';

test('the scale shows both the measurement and its limit with air around them', () => {
  const { from, to } = scaleEnds(-0.25, 0);
  expect(from).toBeLessThan(-0.25);
  expect(to).toBeGreaterThan(0);
});

test('a seat length has no scale below zero', () => {
  expect(scaleEnds(0.75, 1.5).from).toBe(0);
});

test('a measurement exactly on the limit still has a scale', () => {
  const { from, to, tick } = scaleEnds(1.5, 1.5);
  expect(to).toBeGreaterThan(from);
  expect(tick).toBeGreaterThan(0);
  expect(scaleEnds(0, 0).to).toBeGreaterThan(0);
});
