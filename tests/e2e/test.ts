import { test as base } from '@playwright/test';
import { startDemoServer } from '../support/demo-server.ts';

/**
 * Browser tests with a demo server of their worker's own: a copy of the folder that the global setup has seeded, so that
 * two workers never see what the other one changed.
 */
export const test = base.extend<object, { demoServer: undefined }>({
  demoServer: [
    // biome-ignore lint/correctness/noEmptyPattern: the runner reads the fixtures a fixture uses from this pattern
    async ({}, use) => {
      const server = await startDemoServer({ copyOf: process.env.SEEDED_DEMO });
      process.env.DEMO = JSON.stringify({ ...server, stop: undefined });
      await use(undefined);
      await server.stop();
    },
    { scope: 'worker', auto: true, timeout: 240_000 },
  ],
});
