import { toLoggedError } from './logged-error.ts';

/** A reason the program cannot start (or a command cannot run), in one sentence for the person at the terminal. */
export class StartupError extends Error {
  override readonly name = 'StartupError';
}

/** Prints why a program stopped: one sentence for a known reason, the stack for an unknown one. */
export function reportStartFailure(error: unknown): void {
  // By name: the built server carries its own copy of the class.
  if (error instanceof Error && error.name === 'StartupError') console.error(`\n${error.message}\n`);
  else console.error(toLoggedError(error));
}
