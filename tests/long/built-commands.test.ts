import { type ChildProcess, spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { afterAll, beforeAll, expect, inject, test } from 'vitest';
import { buildServer, entries } from '../../apps/api/src/commands/builder.ts';
import { cloneDatabase } from '../support/database.ts';

type Command = (typeof entries)[number];
interface Run {
  args?: string[];
  /** In which of the two places it works. */
  place: 'first' | 'second';
  lastLine: RegExp;
  /** It goes on until it is told to stop. */
  stays?: true;
}

const root = resolve(import.meta.dirname, '../..');
const dist = mkdtempSync(join(root, 'apps/api/dist-'));
const data = mkdtempSync(join(tmpdir(), 'underlath-built-'));
let databases: Record<Run['place'], { databaseUrl: string; drop(): Promise<void> }>;

/** Each command once, in an order in which the later ones find what the earlier ones made. */
const runs: Record<Command, Run> = {
  seed: { place: 'first', lastLine: /^ {2}client {5}http\S+$/ },
  'verify-record': {
    place: 'first',
    lastLine: /^Compared \d projects of 1 company, .* No fault in what was compared\.$/,
  },
  backup: {
    place: 'first',
    args: [join(data, 'backup')],
    lastLine: /^Backed up \d{3,} rows of \d+ tables and \d+ files into /,
  },
  restore: {
    place: 'second',
    args: [join(data, 'backup')],
    lastLine: /^Compared \d projects of 1 company, .* No fault in what was compared\.$/,
  },
  serve: { place: 'second', lastLine: /^Underlath is at http:\S+$/, stays: true },
  work: { place: 'second', lastLine: /^The worker is running\.$/, stays: true },
};

beforeAll(async () => {
  const [, first, second] = await Promise.all([
    buildServer(root, dist),
    cloneDatabase(inject('postgresUrl')),
    cloneDatabase(inject('postgresUrl')),
  ]);
  databases = { first, second };
}, 120_000);
afterAll(async () => {
  rmSync(dist, { recursive: true, force: true });
  rmSync(data, { recursive: true, force: true });
  await Promise.all(Object.values(databases).map(({ drop }) => drop()));
});

test('every program that is built is run here', () => {
  expect(Object.keys(runs).sort()).toEqual([...entries].sort());
});

test.each(Object.entries(runs))(
  '%s does its work when it is started from the built folder',
  async (name, run) => {
    const { place, args = [], lastLine, stays } = run;
    const child = spawn(process.execPath, [join(dist, `${name}.js`), ...args], {
      cwd: tmpdir(),
      env: {
        ...process.env,
        VITEST: undefined,
        PORT: '0',
        SEED: 'none',
        DATABASE_URL: databases[place].databaseUrl,
        DATA_DIR: join(data, place),
      },
      stdio: ['ignore', 'pipe', 'pipe'],
    });
    const printed = listen(child);
    if (stays) {
      await expect.poll(() => printed.lines().some((line) => lastLine.test(line)), { timeout: 60_000 }).toBe(true);
      child.kill('SIGTERM');
    }
    expect(await printed.ended, printed.errors()).toBe(0);
    if (!stays) expect(printed.lines().at(-1), printed.errors()).toMatch(lastLine);
  },
  90_000,
);

function listen(child: ChildProcess) {
  let out = '';
  let errors = '';
  child.stdout?.on('data', (chunk: Buffer) => {
    out += chunk.toString();
  });
  child.stderr?.on('data', (chunk: Buffer) => {
    errors += chunk.toString();
  });
  return {
    lines: () => out.split('\n').filter((line) => line !== ''),
    errors: () => errors,
    ended: new Promise<number | null>((done) => child.once('close', done)),
  };
}
