import { readConfig } from '../config.ts';
import { createDeps, type Deps, jobs } from '../deps.ts';
import { toLoggedError } from '../platform/logged-error.ts';
import { openPlatform, type Platform } from '../platform/platform.ts';

/** Opens everything for one command and closes it again; works beside a running server on the same data folder. */
export async function withPlatform(work: (platform: Platform, deps: Deps) => Promise<void>): Promise<void> {
  const platform = await openPlatform(readConfig(), {
    jobs,
    onError: (error) => console.error(toLoggedError(error)),
    maxConnections: 4,
  });
  try {
    await work(platform, createDeps(platform));
  } finally {
    await platform.close();
  }
}
