import { realpathSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { reportStartFailure } from '../platform/startup-error.ts';

/** Runs a command when its own file was started, and not when it was imported. A failure ends with exit code 1. */
export async function runCommand(moduleUrl: string, work: () => Promise<void>): Promise<void> {
  const started = process.argv[1];
  if (!started || realpathSync(started) !== realpathSync(fileURLToPath(moduleUrl))) return;
  try {
    await work();
  } catch (error) {
    reportStartFailure(error);
    process.exitCode = 1;
  }
}
