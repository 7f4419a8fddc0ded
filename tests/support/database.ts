import { randomUUID } from 'node:crypto';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import pg from 'pg';
import type { TestProject } from 'vitest/node';
import { jobs } from '../../apps/api/src/deps.ts';
import { ensureLogins } from '../../apps/api/src/platform/database/logins.ts';
import { migrate, readMigrations } from '../../apps/api/src/platform/database/migrations.ts';
import { startEmbeddedPostgres } from '../../apps/api/src/platform/embedded-postgres/embedded-postgres.ts';
import { findProjectRoot } from '../../apps/api/src/platform/project-root.ts';
import { installQueue } from '../../apps/api/src/platform/queue.ts';

declare module 'vitest' {
  interface ProvidedContext {
    /** Address of the server's maintenance database; `cloneDatabase` makes one for a test file beside it. */
    postgresUrl: string;
  }
}

const template = 'underlath_template';

/** One real PostgreSQL for the whole run, with one migrated database that test files clone. */
export default async function setup(project: TestProject): Promise<() => Promise<void>> {
  const dataDir = mkdtempSync(join(tmpdir(), 'underlath-test-'));
  // Nothing in these databases outlives the run, so nothing is flushed to disk.
  const settings = { fsync: 'off', synchronous_commit: 'off', full_page_writes: 'off' };
  const server = await startEmbeddedPostgres({ dataDir, settings, log: () => {} });
  await withClient(server.databaseUrl, (client) => client.query(`create database ${template}`));
  const templateUrl = urlOf(server.databaseUrl, template);
  await migrate(templateUrl, readMigrations(join(findProjectRoot(), 'prisma/migrations')));
  await ensureLogins(templateUrl);
  await installQueue(templateUrl, jobs);
  project.provide('postgresUrl', server.databaseUrl);
  return async () => {
    await server.stop();
    rmSync(dataDir, { recursive: true, force: true });
  };
}

/** A database of one's own, already migrated. */
export async function cloneDatabase(postgresUrl: string): Promise<{ databaseUrl: string; drop(): Promise<void> }> {
  const name = `test_${randomUUID().replaceAll('-', '')}`;
  await withClient(postgresUrl, async (client) => {
    // PostgreSQL copies one template at a time; test files that start together queue here.
    await client.query('select pg_advisory_lock(1)');
    await client.query(`create database ${name} template ${template}`);
  });
  return {
    databaseUrl: urlOf(postgresUrl, name),
    drop: () => withClient(postgresUrl, (client) => client.query(`drop database if exists ${name} with (force)`)),
  };
}

/** An empty database with no tables, for tests of migrating and restoring. */
export async function emptyDatabase(postgresUrl: string): Promise<{ databaseUrl: string; drop(): Promise<void> }> {
  const name = `empty_${randomUUID().replaceAll('-', '')}`;
  await withClient(postgresUrl, (client) => client.query(`create database ${name}`));
  return {
    databaseUrl: urlOf(postgresUrl, name),
    drop: () => withClient(postgresUrl, (client) => client.query(`drop database if exists ${name} with (force)`)),
  };
}

function urlOf(postgresUrl: string, name: string): string {
  const url = new URL(postgresUrl);
  url.pathname = `/${name}`;
  return url.href;
}

async function withClient(connectionString: string, work: (client: pg.Client) => Promise<unknown>): Promise<void> {
  const client = new pg.Client({ connectionString });
  await client.connect();
  try {
    await work(client);
  } finally {
    await client.end();
  }
}
