import { defineConfig } from '@playwright/test';
import { chromiumArgs, findChromium } from './tests/support/chromium.ts';

export default defineConfig({
  testDir: 'tests/e2e',
  outputDir: 'test-results',
  globalSetup: './tests/e2e/global-setup.ts',
  // Each with a demo server of its own: half the time of a browser test is waiting.
  workers: 2,
  // A machine that does other work beside is several times slower; nothing here measures time.
  timeout: 240_000,
  expect: { timeout: 45_000 },
  reporter: [['list'], ['json']],
  projects: [
    { name: 'gate', grepInvert: /@long/ },
    { name: 'long', grep: /@long/ },
  ],
  use: {
    browserName: 'chromium',
    launchOptions: { executablePath: findChromium() ?? '', args: chromiumArgs },
    actionTimeout: 45_000,
    trace: 'retain-on-failure',
  },
});
