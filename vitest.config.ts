import { defineConfig } from 'vitest/config';

// Files of one worker share what they import: what a module keeps (a pool of threads, a hash of nobody's password) is
// good for all of them, and loading it all again for each of 180 files is most of the work.
const isolate = false;

/** Tests against a real PostgreSQL, one for the run. */
const server = {
  globalSetup: ['tests/support/database.ts'],
  setupFiles: ['tests/support/cheap-passwords.ts'],
  testTimeout: 30_000,
  hookTimeout: 60_000,
  maxWorkers: 2,
  isolate,
};

export default defineConfig({
  test: {
    projects: [
      {
        test: {
          name: 'unit',
          include: ['packages/**/*.test.{ts,tsx}', 'apps/**/*.test.{ts,tsx}', 'tests/architecture/**/*.test.ts'],
          exclude: ['**/node_modules/**', '**/dist/**'],
          isolate,
        },
      },
      { test: { name: 'api', include: ['tests/{api,faults,published}/**/*.test.ts'], ...server } },
      {
        test: {
          name: 'long',
          include: ['tests/long/**/*.test.ts', 'tests/faults/decision-race.test.ts', 'tests/api/rights.test.ts'],
          env: { ROUNDS: 'long' },
          ...server,
        },
      },
    ],
  },
});
