import type { ScopeStep } from '@underlath/contract';
import { spanHours } from '@underlath/rules';
import { expect, test } from 'vitest';
import { stepTimes, waitingFor } from './step-times.ts';

const step = (id: string, likely: number, after: string[] = []): ScopeStep => ({
  id,
  operation: id,
  title: id,
  quantity: { value: 1, unit: 'each' },
  how: '',
  assumed: false,
  for: [],
  after,
  holdPoint: false,
  hours: { low: likely, likely, high: likely },
});

test('a step begins when the last of what it waits for has ended; side by side where nothing waits', () => {
  const steps = [
    step('open', 2),
    step('rod', 4, ['open']),
    step('panel', 2, ['open']),
    step('close', 1, ['rod', 'panel']),
  ];
  expect(stepTimes(steps, 1)).toEqual([
    { id: 'open', from: 0, to: 2 },
    { id: 'rod', from: 2, to: 6 },
    { id: 'panel', from: 2, to: 4 },
    { id: 'close', from: 6, to: 7 },
  ]);
});

test('the bars let as many people work at one step as the days of the server do', () => {
  const one = [{ id: 'open', hours: 4, after: [] }];
  for (const crewSize of [1, 2, 3, 6]) {
    const longest = stepTimes([step('open', 4)], crewSize)[0]?.to;
    expect(spanHours(one, crewSize)).toBe(longest);
  }
});

test('a second person halves a step, a third does not', () => {
  expect(stepTimes([step('open', 4)], 2)).toEqual([{ id: 'open', from: 0, to: 2 }]);
  expect(stepTimes([step('open', 4)], 3)).toEqual(stepTimes([step('open', 4)], 2));
});

test('all that comes after a hold point waits for it, what stands beside it does not', () => {
  const steps = [
    step('open', 1),
    step('letter', 1),
    step('rod', 1, ['open', 'letter']),
    step('haul', 1, ['open']),
    step('close', 1, ['rod']),
  ];
  expect(waitingFor(steps, 'letter')).toEqual(['rod', 'close']);
  expect(waitingFor(steps, 'close')).toEqual([]);
});
