import { toLoggedError } from './logged-error.ts';

const patienceMs = 40_000;

/**
 * Runs `stop` once on SIGTERM, SIGINT or SIGHUP, or when the returned function is called, and ends the process with it.
 * A second signal after a moment, or a stop that takes too long, ends it at once: nothing acknowledged is lost by that,
 * it is only slower to start next time.
 */
export function stopOnSignal(stop: () => Promise<void>): (reason: string) => void {
  let since: number | undefined;
  const begin = (reason: string) => {
    if (since !== undefined) {
      // Ctrl-C reaches us from the terminal and once more from npm; only a later one is impatience.
      if (Date.now() - since > 1_000) process.exit(1);
      return;
    }
    since = Date.now();
    console.log(`Stopping (${reason}).`);
    setTimeout(() => process.exit(1), patienceMs).unref();
    stop().then(
      () => process.exit(0),
      (error) => {
        console.error(toLoggedError(error));
        process.exit(1);
      },
    );
  };
  for (const signal of ['SIGTERM', 'SIGINT', 'SIGHUP'] as const) process.on(signal, begin);
  return begin;
}
