import { expect, test } from 'vitest';
import { boundWork } from './bounded-work.ts';

test('no more run at once than allowed, those who wait get their turn, and the rest is refused', async () => {
  const bound = boundWork({ most: 2, waiting: 3 });
  let running = 0;
  let mostSeen = 0;
  const ends: (() => void)[] = [];
  const one = () =>
    bound.run(async () => {
      running += 1;
      mostSeen = Math.max(mostSeen, running);
      await new Promise<void>((end) => ends.push(end));
      running -= 1;
    });
  const all = Array.from({ length: 7 }, one);
  const outcomes = Promise.allSettled(all);
  do {
    await new Promise((done) => setImmediate(done));
    ends.shift()?.();
  } while (running > 0);
  const states = (await outcomes).map(({ status }) => status);
  expect(states.filter((state) => state === 'fulfilled')).toHaveLength(5);
  expect(states.filter((state) => state === 'rejected')).toHaveLength(2);
  expect(mostSeen).toBe(2);
});

test('a piece that fails gives its place back', async () => {
  const bound = boundWork({ most: 1, waiting: 0 });
  const broken = () => bound.run(async () => Promise.reject(new Error('no')));
  await expect(broken()).rejects.toThrow('no');
  await expect(broken()).rejects.toThrow('no');
  const held = bound.run(() => new Promise((done) => setTimeout(done, 20)));
  await expect(broken()).rejects.toMatchObject({ type: 'busy', headers: { 'retry-after': '3' } });
  await held;
});
