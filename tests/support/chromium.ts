import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { delimiter, join } from 'node:path';
import { chromium } from 'playwright-core';

/** How the browser is started everywhere: without a sandbox (tests may run as root) and without its own traffic to the outside. */
export const chromiumArgs = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

const usualPlaces = [
  // Without the window that nobody sees: half the time of a start, and the same pages.
  '/usr/bin/chromium-headless-shell',
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/bin/google-chrome',
  '/snap/bin/chromium',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  'C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe',
];

/** The path of a Chromium: CHROMIUM_PATH, the usual places, a Playwright install; null when there is none. @throws Error when CHROMIUM_PATH names nothing */
export function findChromium(): string | null {
  const named = process.env.CHROMIUM_PATH;
  if (named) {
    if (!existsSync(named)) throw new Error(`CHROMIUM_PATH is ${named}, and there is no file; set it to a Chromium.`);
    return named;
  }
  return [...usualPlaces, chromium.executablePath()].find((path) => existsSync(path)) ?? null;
}

/** Finds a Chromium, or installs one with the system's packages (as root) or with Playwright. @throws Error that says which command to run */
export function ensureChromium(): string {
  const found = findChromium();
  if (found) return found;
  const attempts = isRootWithApt()
    ? [
        ['apt-get', 'update', '-qq'],
        ['apt-get', 'install', '-y', '-qq', 'chromium-headless-shell'],
        ['apt-get', 'install', '-y', '-qq', 'chromium'],
      ]
    : [['npx', 'playwright', 'install', 'chromium']];
  for (const [command = '', ...args] of attempts) {
    if (findChromium()) break;
    console.log(`No Chromium found; running: ${[command, ...args].join(' ')}`);
    const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' };
    spawnSync(command, args, { stdio: 'inherit', env, shell: process.platform === 'win32' });
  }
  const installed = findChromium();
  if (installed) return installed;
  throw new Error(
    'The browser tests need Chromium and could not install it. Run "apt-get install chromium" or "npx playwright install chromium", or set CHROMIUM_PATH.',
  );
}

function isRootWithApt(): boolean {
  return (
    process.getuid?.() === 0 &&
    (process.env.PATH ?? '').split(delimiter).some((folder) => existsSync(join(folder, 'apt-get')))
  );
}
