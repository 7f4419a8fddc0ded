import { defineConfig } from 'vitest/config';

/** Tests against a real PostgreSQL, one for the run. */
const server = {
  globalSetup: ['tests/support/database.ts'],
  testTimeout: 30_000,
  hookTimeout: 60_000,
  maxWorkers: 2,
};

export default defineConfig({
  test: {
    projects: [
      {
        test: {
          name: 'unit',
          include: ['packages/**/*.test.{ts,tsx}', 'apps/**/*.test.{ts,tsx}', 'tests/architecture/**/*.test.ts'],
          exclude: ['**/node_modules/**', '**/dist/**'],
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
