import { join } from 'node:path';
import pg from 'pg';
import { afterAll, beforeAll, expect, inject, test } from 'vitest';
import { z } from 'zod';
import { ensureLogins } from '../../apps/api/src/platform/database/logins.ts';
import { migrate, readMigrations } from '../../apps/api/src/platform/database/migrations.ts';
import { findProjectRoot } from '../../apps/api/src/platform/project-root.ts';
import { createQueue, defineJob, handleJob } from '../../apps/api/src/platform/queue.ts';
import { emptyDatabase } from '../support/database.ts';

/** As the library's version 10 made them, without the columns and indexes that nothing here reads. */
const oldTables = `
  create schema pgboss;
  create type pgboss.job_state as enum ('created', 'retry', 'active', 'completed', 'cancelled', 'failed');
  create table pgboss.version (version int primary key);
  insert into pgboss.version values (24);
  create table pgboss.job (
    id uuid not null default gen_random_uuid(), name text not null, priority integer not null default 0, data jsonb,
    state pgboss.job_state not null default 'created', retry_limit integer not null default 5,
    retry_count integer not null default 0, retry_delay integer not null default 1, retry_backoff boolean not null default true,
    start_after timestamptz not null default now(), started_on timestamptz, singleton_key text, singleton_on timestamp,
    expire_in interval not null default interval '5 minutes', created_on timestamptz not null default now(),
    completed_on timestamptz, keep_until timestamptz not null default now() + interval '14 days', output jsonb,
    dead_letter text, policy text);
  insert into pgboss.job (name, data, state, output, completed_on) values
    ('count', '{"n": 1}', 'created', null, null), ('count', '{"n": 2}', 'active', null, null),
    ('count', '{"n": 3}', 'completed', null, now()), ('count', '{"n": 4}', 'failed', '{"message": "no ink"}', now())`;

let database: Awaited<ReturnType<typeof emptyDatabase>>;
let client: pg.Client;

beforeAll(async () => {
  database = await emptyDatabase(inject('postgresUrl'));
  await migrate(database.databaseUrl, readMigrations(join(findProjectRoot(), 'prisma/migrations')));
  await ensureLogins(database.databaseUrl);
  client = new pg.Client({ connectionString: database.databaseUrl });
  await client.connect();
  await client.query(oldTables);
});
afterAll(async () => {
  await client.end();
  await database.drop();
});

test('jobs in tables that the library no longer migrates are done once, and a dead one still says why', async () => {
  const job = defineJob({ name: 'count', data: z.object({ n: z.number() }) });
  const { databaseUrl } = database;
  const done: number[] = [];
  const queues = await Promise.all([1, 2].map(() => createQueue({ databaseUrl, jobs: [job] })));
  for (const queue of queues) await queue.work([handleJob(job, async ({ data }) => void done.push(data.n))]);
  await expect.poll(() => done.length, { timeout: 20_000 }).toBe(2);
  expect(done.sort()).toEqual([1, 2]);
  expect(await queues[0]?.deadJobs()).toMatchObject([{ name: 'count', data: { n: 4 }, reason: 'no ink' }]);
  const { rows } = await client.query(`select nspname from pg_namespace where nspname like 'pgboss%'`);
  expect(rows).toEqual([{ nspname: 'pgboss' }]);
  for (const queue of queues) await queue.stop();
}, 60_000);

test('jobs put aside by a process that was killed before it carried them over are carried by the next one', async () => {
  const job = defineJob({ name: 'count', data: z.object({ n: z.number() }) });
  await client.query(oldTables.replaceAll('pgboss', 'pgboss_before_25'));
  const done: number[] = [];
  const queue = await createQueue({ databaseUrl: database.databaseUrl, jobs: [job] });
  await queue.work([handleJob(job, async ({ data }) => void done.push(data.n))]);
  await expect.poll(() => done.length, { timeout: 20_000 }).toBe(2);
  expect(done.sort()).toEqual([1, 2]);
  await queue.stop();
}, 60_000);
