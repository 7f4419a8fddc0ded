import { ProblemError } from '../problem-error.ts';

/** Runs at most `most` pieces of work at once and lets at most `waiting` wait; more are refused. */
export interface BoundedWork {
  /** @throws ProblemError `busy` with Retry-After when too many wait already */
  run<Result>(work: () => Promise<Result>): Promise<Result>;
}

export function boundWork({ most, waiting }: { most: number; waiting: number }): BoundedWork {
  let running = 0;
  const queue: (() => void)[] = [];
  const begin = async () => {
    if (running < most) {
      running += 1;
      return;
    }
    if (queue.length >= waiting) {
      throw new ProblemError('busy', 'Too many people are signing in just now; try again in a few seconds.', {
        headers: { 'retry-after': '3' },
      });
    }
    // Whoever ends hands its place over, so the count stays as it is.
    await new Promise<void>((go) => queue.push(go));
  };
  const end = () => {
    const next = queue.shift();
    if (next) next();
    else running -= 1;
  };
  return {
    run: async (work) => {
      await begin();
      try {
        return await work();
      } finally {
        end();
      }
    },
  };
}
