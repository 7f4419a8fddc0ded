// Runs every kind of test in order and ends with one line: N passed, N failed.
//   npm test                     all
//   npm run check                format, lint, types, unit
//   npm test -- --only api,e2e   some
import { spawn } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { ensureChromium } from './chromium.ts';

interface Tally {
  passed: number;
  failed: number;
}
type Step = { name: string; run: (report: string) => Promise<Tally> };

const root = resolve(import.meta.dirname, '../..');
const typed = ['packages/rules', 'packages/contract', 'apps/api', 'apps/dashboard', 'tests'];

const steps: Step[] = [
  { name: 'format', run: () => one('biome', ['format', '.']) },
  { name: 'lint', run: () => one('biome', ['lint', '--error-on-warnings', '.']) },
  { name: 'types', run: async () => sum(await inOrder(typed, (folder) => one('tsc', ['-p', folder]))) },
  { name: 'unit', run: (report) => vitest('unit', report) },
  { name: 'api', run: (report) => vitest('api', report) },
  { name: 'e2e', run: browser },
];

const only = process.argv.includes('--only') ? process.argv[process.argv.indexOf('--only') + 1]?.split(',') : null;
const unknown = only?.filter((name) => !steps.some((step) => step.name === name)) ?? [];
if (unknown.length > 0) {
  console.error(`--only knows ${steps.map((step) => step.name).join(', ')}; not ${unknown.join(', ')}.`);
  process.exit(2);
}

const reports = mkdtempSync(join(tmpdir(), 'underlath-tests-'));
const total: Tally = { passed: 0, failed: 0 };
await shell('tsx', ['apps/api/src/commands/generate.ts']);
for (const step of steps.filter(({ name }) => !only || only.includes(name))) {
  const started = Date.now();
  console.log(`\n== ${step.name}`);
  const tally = await step.run(join(reports, `${step.name}.json`)).catch((error: Error): Tally => {
    console.error(error.message);
    return { passed: 0, failed: 1 };
  });
  total.passed += tally.passed;
  total.failed += tally.failed;
  const seconds = Math.round((Date.now() - started) / 1000);
  console.log(`== ${step.name}: ${tally.passed} good, ${tally.failed} bad, ${seconds} s`);
}
rmSync(reports, { recursive: true, force: true });
console.log(`\n${total.passed} passed, ${total.failed} failed`);
process.exit(total.failed > 0 || total.passed === 0 ? 1 : 0);

/** Runs a tool of node_modules/.bin; its exit code is the answer. */
function shell(tool: string, args: string[], env: NodeJS.ProcessEnv = {}): Promise<number> {
  return new Promise((done, fail) => {
    const child = spawn(process.execPath, [binary(tool), ...args], {
      cwd: root,
      stdio: 'inherit',
      env: { ...process.env, ...env },
    });
    child.on('error', fail);
    child.on('exit', (code) => done(code ?? 1));
  });
}

/** The script behind a tool, run with this very node: works the same on every system. */
function binary(tool: string): string {
  const names: Record<string, [string, string]> = {
    biome: ['@biomejs/biome', 'bin/biome'],
    tsc: ['typescript', 'bin/tsc'],
    tsx: ['tsx', 'dist/cli.mjs'],
    vitest: ['vitest', 'vitest.mjs'],
    playwright: ['@playwright/test', 'cli.js'],
  };
  const [name, path] = names[tool] ?? [tool, ''];
  return join(root, 'node_modules', name, path);
}

async function one(tool: string, args: string[]): Promise<Tally> {
  return (await shell(tool, args)) === 0 ? { passed: 1, failed: 0 } : { passed: 0, failed: 1 };
}

async function inOrder<T, R>(items: T[], work: (item: T) => Promise<R>): Promise<R[]> {
  const results: R[] = [];
  for (const item of items) results.push(await work(item));
  return results;
}

function sum(tallies: Tally[]): Tally {
  return {
    passed: tallies.reduce((count, tally) => count + tally.passed, 0),
    failed: tallies.reduce((count, tally) => count + tally.failed, 0),
  };
}

/** A run that ends badly without a failed test (a crash, a file that can't load) counts as one failure; a skipped test too. */
async function vitest(project: string, report: string): Promise<Tally> {
  const code = await shell('vitest', [
    'run',
    '--project',
    project,
    '--reporter=default',
    '--reporter=json',
    `--outputFile.json=${report}`,
  ]);
  const result = JSON.parse(readFileSync(report, 'utf8')) as {
    numPassedTests: number;
    numFailedTests: number;
    numPendingTests: number;
  };
  return settle(code, result.numPassedTests, result.numFailedTests + result.numPendingTests);
}

async function browser(report: string): Promise<Tally> {
  const executable = ensureChromium();
  const built = await shell('tsx', ['apps/api/src/commands/build.ts']);
  if (built !== 0) throw new Error('The build failed, so the browser tests could not start.');
  const code = await shell('playwright', ['test', '--config', 'playwright.config.ts'], {
    CHROMIUM_PATH: executable,
    PLAYWRIGHT_JSON_OUTPUT_FILE: report,
  });
  const { stats } = JSON.parse(readFileSync(report, 'utf8')) as {
    stats: { expected: number; unexpected: number; flaky: number; skipped: number };
  };
  return settle(code, stats.expected, stats.unexpected + stats.flaky + stats.skipped);
}

function settle(code: number, passed: number, failed: number): Tally {
  return { passed, failed: code !== 0 && failed === 0 ? 1 : failed };
}
