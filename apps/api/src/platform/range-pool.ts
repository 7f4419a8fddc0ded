import { createRequire } from 'node:module';
import { availableParallelism } from 'node:os';
import { fileURLToPath, pathToFileURL } from 'node:url';
import type { EstimateInput, PriceRange, RangeInput } from '@underlath/rules/pricing';
import { Piscina } from 'piscina';
import { ProblemError } from './problem-error.ts';

/** Draws price ranges in threads of their own, so that the server goes on answering meanwhile. */
export interface RangePool {
  /** Drops the work when the signal aborts, running or waiting. @throws ProblemError `busy` while too many wait, `malformed-request` when dropped */
  draw(input: EstimateInput, range: RangeInput, signal: AbortSignal): Promise<PriceRange>;
  close(): Promise<void>;
}

/** Each takes about a second of one core at most. */
const maxWaiting = 16;
const idleMs = 30_000;

/** Nothing is started before the first range is asked for. */
export function createRangePool(): RangePool {
  const pool = new Piscina<{ input: EstimateInput; range: RangeInput }, PriceRange>({
    ...workerFile(),
    minThreads: 0,
    maxThreads: Math.max(1, Math.min(2, availableParallelism() - 1)),
    maxQueue: maxWaiting,
    idleTimeout: idleMs,
    recordTiming: false,
  });
  return {
    async draw(input, range, signal) {
      if (pool.queueSize >= maxWaiting) throw tooMany();
      try {
        return await pool.run({ input, range }, { signal });
      } catch (error) {
        throw signal.aborted ? hungUp(error) : error;
      }
    },
    close: () => pool.destroy(),
  };
}

/** Beside the built server a bundle of its own; among the sources TypeScript, which the thread must learn to read first. */
function workerFile(): { filename: string; execArgv: string[] } {
  const built = !import.meta.url.endsWith('.ts');
  const filename = fileURLToPath(new URL(built ? './range-worker.js' : './range-worker.ts', import.meta.url));
  if (built) return { filename, execArgv: [] };
  const reader = createRequire(import.meta.url).resolve('tsx');
  return { filename, execArgv: ['--import', pathToFileURL(reader).href] };
}

const tooMany = (): ProblemError =>
  new ProblemError('busy', 'Too many price ranges are being drawn just now; try again in a few seconds.', {
    headers: { 'retry-after': '5' },
  });

/** Nobody reads this answer; it ends the request without a word about a fault of ours. */
const hungUp = (cause: unknown): ProblemError =>
  new ProblemError('malformed-request', 'The caller hung up before the range was drawn.', { cause });
