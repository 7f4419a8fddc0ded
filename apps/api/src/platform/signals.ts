const patienceMs = 40_000;

/**
 * Runs `stop` once on SIGTERM, SIGINT or SIGHUP and ends the process with it. A second signal, or a stop that takes too
 * long, ends it at once: nothing acknowledged is lost by that, it is only slower to start next time.
 */
export function stopOnSignal(stop: () => Promise<void>): void {
  let stopping = false;
  const onSignal = (signal: NodeJS.Signals) => {
    if (stopping) process.exit(1);
    stopping = true;
    console.log(`Stopping (${signal}).`);
    setTimeout(() => process.exit(1), patienceMs).unref();
    stop().then(
      () => process.exit(0),
      (error) => {
        console.error(error);
        process.exit(1);
      },
    );
  };
  for (const signal of ['SIGTERM', 'SIGINT', 'SIGHUP'] as const) process.on(signal, onSignal);
}
