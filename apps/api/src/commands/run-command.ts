import { reportStartFailure, StartupError } from '../platform/startup-error.ts';

const oldestMajor = 24;

/**
 * Runs what a command does; a failure ends with exit code 1. A file that calls this is an entry: it runs when it is loaded,
 * and no other file imports it, or a bundler would move its body to where nobody starts it.
 */
export async function runCommand(work: () => Promise<void>): Promise<void> {
  try {
    assertRuntime(process.versions.node);
    await work();
  } catch (error) {
    reportStartFailure(error);
    process.exitCode = 1;
  }
}

/** npm brings the right Node.js along; a plain `node` of the machine, or an install without scripts, may be an older one. */
function assertRuntime(version: string): void {
  if (Number.parseInt(version, 10) >= oldestMajor) return;
  throw new StartupError(
    `Underlath needs Node.js ${oldestMajor} or newer, and this is ${version}. Start it by npm (npm start), which uses the one that npm install brings; if npm was told to run no install scripts, install Node.js ${oldestMajor}.`,
  );
}
