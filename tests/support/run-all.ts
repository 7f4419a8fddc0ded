// Runs every kind of test and ends with one line: N passed, N failed.
//   npm test                     the gate: all of it but the sweeps
//   npm run test:long            the sweeps: every screen and size, fault rounds
//   npm run check                format, lint, types, unit
//   npm test -- --only api,e2e   some steps
// Steps of different lanes wait for different things (the processor, the database, the browser), so lanes run side by side.
import { type ChildProcess, spawn } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { ensureChromium } from './chromium.ts';

interface Tally {
  passed: number;
  failed: number;
}
/** Prints what a step has to say; what a tool prints is kept until the step ends, so that lanes don't mix. */
type Print = (text: string) => void;
type Step = { name: string; run: (report: string, print: Print) => Promise<Tally> };

const root = resolve(import.meta.dirname, '../..');
/** The server is read with its tests; the linter keeps it from the browser's globals, which those know. */
const typed = ['packages/rules', 'packages/contract', 'apps/dashboard', 'tests'];
const progressMs = 30_000;

const gate: Step[][] = [
  [
    { name: 'format', run: (_, print) => one(print, 'biome', ['format', '.']) },
    { name: 'lint', run: (_, print) => one(print, 'biome', ['lint', '--error-on-warnings', '.']) },
    {
      name: 'types',
      run: async (_, print) => sum(await inOrder(typed, (folder) => one(print, 'tsc', ['-p', folder]))),
    },
    { name: 'unit', run: (report, print) => vitest('unit', report, print) },
  ],
  [{ name: 'api', run: (report, print) => vitest('api', report, print) }],
  [{ name: 'e2e', run: (report, print) => browser('gate', report, print) }],
];
const sweeps: Step[][] = [
  [{ name: 'rounds', run: (report, print) => vitest('long', report, print) }],
  [{ name: 'screens', run: (report, print) => browser('long', report, print) }],
];

const lanes = process.argv.includes('--long') ? sweeps : gate;
const names = lanes.flat().map(({ name }) => name);
const only = process.argv.includes('--only')
  ? (process.argv[process.argv.indexOf('--only') + 1] ?? '').split(',')
  : names;
const unknown = only.filter((name) => !names.includes(name));
if (unknown.length > 0) {
  console.error(`--only knows ${names.join(', ')}; not ${unknown.join(', ')}.`);
  process.exit(2);
}

const reports = mkdtempSync(join(tmpdir(), 'underlath-tests-'));
const children = new Set<ChildProcess>();
for (const signal of ['SIGINT', 'SIGTERM'] as const)
  process.once(signal, () => {
    for (const child of children) child.kill(signal);
    process.exit(1);
  });

await shell((text) => process.stdout.write(text), 'tsx', ['apps/api/src/commands/generate.ts']);
const running = new Map<string, number>();
const progress = setInterval(() => {
  const steps = [...running].map(([name, started]) => `${name} ${seconds(started)} s`);
  console.log(`   still running: ${steps.join(', ')}`);
}, progressMs);
const tallies = await Promise.all(lanes.map(runLane));
clearInterval(progress);
rmSync(reports, { recursive: true, force: true });
const total = sum(tallies);
console.log(`\n${total.passed} passed, ${total.failed} failed`);
process.exit(total.failed > 0 || total.passed === 0 ? 1 : 0);

async function runLane(steps: Step[]): Promise<Tally> {
  const wanted = steps.filter(({ name }) => only.includes(name));
  return sum(await inOrder(wanted, runStep));
}

async function runStep({ name, run }: Step): Promise<Tally> {
  const started = Date.now();
  let printed = '';
  running.set(name, started);
  const tally = await run(join(reports, `${name}.json`), (text) => {
    printed += text;
  }).catch((error: Error): Tally => {
    printed += `${error.message}\n`;
    return { passed: 0, failed: 1 };
  });
  running.delete(name);
  console.log(`\n== ${name}\n${printed}== ${name}: ${tally.passed} good, ${tally.failed} bad, ${seconds(started)} s`);
  return tally;
}

function seconds(since: number): number {
  return Math.round((Date.now() - since) / 1000);
}

/** Runs a tool of node_modules/.bin; its exit code is the answer. */
function shell(print: Print, tool: string, args: string[], env: NodeJS.ProcessEnv = {}): Promise<number> {
  return new Promise((done, fail) => {
    const child = spawn(process.execPath, [findTool(tool), ...args], {
      cwd: root,
      stdio: ['ignore', 'pipe', 'pipe'],
      env: { ...process.env, ...env },
    });
    children.add(child);
    for (const stream of [child.stdout, child.stderr]) stream.setEncoding('utf8').on('data', print);
    child.on('error', fail);
    child.on('close', (code) => {
      children.delete(child);
      done(code ?? 1);
    });
  });
}

/** The script behind a tool, run with this very node: works the same on every system. */
function findTool(tool: string): string {
  const tools: Record<string, [string, string]> = {
    biome: ['@biomejs/biome', 'bin/biome'],
    tsc: ['typescript', 'bin/tsc'],
    tsx: ['tsx', 'dist/cli.mjs'],
    vitest: ['vitest', 'vitest.mjs'],
    playwright: ['@playwright/test', 'cli.js'],
  };
  const [name, path] = tools[tool] ?? [tool, ''];
  return join(root, 'node_modules', name, path);
}

async function one(print: Print, tool: string, args: string[]): Promise<Tally> {
  return (await shell(print, tool, args)) === 0 ? { passed: 1, failed: 0 } : { passed: 0, failed: 1 };
}

async function inOrder<T, R>(items: T[], work: (item: T) => Promise<R>): Promise<R[]> {
  const results: R[] = [];
  for (const item of items) results.push(await work(item));
  return results;
}

function sum(all: Tally[]): Tally {
  return {
    passed: all.reduce((count, tally) => count + tally.passed, 0),
    failed: all.reduce((count, tally) => count + tally.failed, 0),
  };
}

/** A run that ends badly without a failed test (a crash, a file that can't load) counts as one failure; a skipped test too. */
async function vitest(project: string, report: string, print: Print): Promise<Tally> {
  const code = await shell(print, 'vitest', [
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

async function browser(project: string, report: string, print: Print): Promise<Tally> {
  const executable = ensureChromium();
  const built = await shell(print, 'tsx', ['apps/api/src/commands/build.ts']);
  if (built !== 0) throw new Error('The build failed, so the browser tests could not start.');
  const code = await shell(print, 'playwright', ['test', '--config', 'playwright.config.ts', `--project=${project}`], {
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
