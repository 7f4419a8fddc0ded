import { reportStartFailure } from '../platform/startup-error.ts';

/**
 * Runs what a command does; a failure ends with exit code 1. A file that calls this is an entry: it runs when it is loaded,
 * and no other file imports it, or a bundler would move its body to where nobody starts it.
 */
export async function runCommand(work: () => Promise<void>): Promise<void> {
  try {
    await work();
  } catch (error) {
    reportStartFailure(error);
    process.exitCode = 1;
  }
}
