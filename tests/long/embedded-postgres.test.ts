import { mkdirSync, mkdtempSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import pg from 'pg';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { startEmbeddedPostgres } from '../../apps/api/src/platform/embedded-postgres/embedded-postgres.ts';
import { isAlive } from '../../apps/api/src/platform/embedded-postgres/process-state.ts';

let parent: string;
let dataDir: string;
const start = (mustOwn = false) => startEmbeddedPostgres({ dataDir, mustOwn, log: () => {} });

beforeAll(() => {
  parent = mkdtempSync(join(tmpdir(), 'underlath-pg-'));
  dataDir = join(parent, 'data');
});
afterAll(() => rmSync(parent, { recursive: true, force: true }));

async function query(databaseUrl: string, sql: string): Promise<Record<string, unknown>[]> {
  const client = new pg.Client({ connectionString: databaseUrl });
  // A server killed under the client is what some of these tests are about.
  client.on('error', () => {});
  await client.connect();
  try {
    return (await client.query(sql)).rows;
  } finally {
    await client.end().catch(() => {});
  }
}

describe('the built-in PostgreSQL', () => {
  test('starts on a loopback port of its own, keeps its password to itself, and stops', async () => {
    const server = await start();
    expect(server.origin).toBe('started');
    expect(await query(server.databaseUrl, 'show listen_addresses')).toEqual([{ listen_addresses: '127.0.0.1' }]);
    expect(await query(server.databaseUrl, 'show fsync')).toEqual([{ fsync: 'on' }]);
    expect(statSync(join(dataDir, 'postgres-password')).mode & 0o777).toBe(0o600);
    const wrong = server.databaseUrl.replace(/:[^:@]+@/, ':wrong@');
    await expect(query(wrong, 'select 1')).rejects.toThrow(/password authentication failed/);
    await server.stop();
    expect(isAlive(server.pid)).toBe(false);
  });

  test('starts again on the same port with its rows', async () => {
    const first = await start();
    await query(first.databaseUrl, 'create table kept (n int); insert into kept values (7)');
    await first.stop();
    const second = await start();
    expect(second.databaseUrl).toBe(first.databaseUrl);
    expect(await query(second.databaseUrl, 'select n from kept')).toEqual([{ n: 7 }]);
    await second.stop();
  });

  test('loses no acknowledged row when it is killed', async () => {
    const server = await start();
    await query(server.databaseUrl, 'create table told (n int)');
    const client = new pg.Client({ connectionString: server.databaseUrl });
    client.on('error', () => {});
    await client.connect();
    let told = 0;
    const writing = (async () => {
      for (;;) {
        await client.query('insert into told values ($1)', [told + 1]);
        told += 1;
      }
    })();
    setTimeout(() => process.kill(server.pid, 'SIGKILL'), 300);
    await expect(writing).rejects.toThrow();
    await client.end().catch(() => {});
    const again = await start();
    const [row] = await query(again.databaseUrl, 'select count(*)::int as count, max(n) as last from told');
    expect(told).toBeGreaterThan(10);
    expect(row?.count).toBe(row?.last);
    // One more than was told may have been written before the answer was cut off.
    expect([told, told + 1]).toContain(row?.count);
    await again.stop();
  });

  test('a second process on the folder is a guest and leaves the server running', async () => {
    const owner = await start();
    const guest = await start();
    expect([guest.origin, guest.pid]).toEqual(['guest', owner.pid]);
    await guest.stop();
    expect(await query(owner.databaseUrl, 'select 1 as one')).toEqual([{ one: 1 }]);
    await owner.stop();
  });

  test('a server whose owner lets go while another waits for it is taken over', async () => {
    const owner = await start();
    const waiting = start(true);
    setTimeout(() => void owner.stop(), 500);
    const next = await waiting;
    expect(next.origin).not.toBe('guest');
    expect(await query(next.databaseUrl, 'select 1 as one')).toEqual([{ one: 1 }]);
    await next.stop();
  });

  test('takes another port when something else sits on the remembered one', async () => {
    const first = await start();
    const port = Number(new URL(first.databaseUrl).port);
    await first.stop();
    const { createServer } = await import('node:net');
    const squatter = createServer().listen(port, '127.0.0.1');
    await new Promise((done) => squatter.once('listening', done));
    const second = await start();
    expect(Number(new URL(second.databaseUrl).port)).not.toBe(port);
    await second.stop();
    await new Promise((done) => squatter.close(done));
  });

  test('a log that cannot be written is told in one sentence', async () => {
    const log = join(dataDir, 'postgres.log');
    rmSync(log, { force: true });
    mkdirSync(log);
    await expect(start()).rejects.toThrow(/^The built-in PostgreSQL in .* did not start .*EISDIR/);
    rmSync(log, { recursive: true });
  });

  test('a folder that cannot be made is told in one sentence', async () => {
    const file = join(parent, 'a-file');
    writeFileSync(file, '');
    await expect(startEmbeddedPostgres({ dataDir: join(file, 'data'), log: () => {} })).rejects.toMatchObject({
      name: 'StartupError',
    });
  });
});
