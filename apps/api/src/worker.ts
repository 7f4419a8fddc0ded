import { type Config, readConfig } from './config.ts';
import { createDeps, jobs } from './deps.ts';
import { toLoggedError } from './platform/logged-error.ts';
import { openPlatform } from './platform/platform.ts';

/** Works on background jobs without serving anyone. Run as many as you like. */
export async function startWorker(config: Config = readConfig()): Promise<{ close(): Promise<void> }> {
  const platform = await openPlatform(config, { jobs, onError: (error) => console.error(toLoggedError(error)) });
  try {
    await platform.queue.work(createDeps(platform).handlers);
    return { close: () => platform.close() };
  } catch (error) {
    await platform.close();
    throw error;
  }
}
