import { createHash } from 'node:crypto';
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import pg from 'pg';
import { newId } from '../ids.ts';
import { StartupError } from '../startup-error.ts';

export interface Migration {
  name: string;
  sql: string;
  /** SHA-256 of the file, hex, as Prisma's own commands compute it. */
  checksum: string;
}

/** The number Prisma's own commands lock on, so that they and we never migrate at once. */
const migrationLock = 72_707_369;

/** Prisma's own table, so that its commands see what was applied here and the other way round. */
const historyTable = `
  create table if not exists _prisma_migrations (
    id varchar(36) primary key not null,
    checksum varchar(64) not null,
    finished_at timestamptz,
    migration_name varchar(255) not null,
    logs text,
    rolled_back_at timestamptz,
    started_at timestamptz not null default now(),
    applied_steps_count integer not null default 0
  )`;

interface HistoryRow {
  migration_name: string;
  checksum: string;
  finished_at: Date | null;
}

/** Reads prisma/migrations/NAME/migration.sql in order of name. */
export function readMigrations(folder: string): Migration[] {
  return readdirSync(folder, { withFileTypes: true })
    .filter((entry) => entry.isDirectory() && existsSync(join(folder, entry.name, 'migration.sql')))
    .map((entry) => entry.name)
    .sort()
    .map((name) => {
      const sql = readFileSync(join(folder, name, 'migration.sql'), 'utf8');
      return { name, sql, checksum: createHash('sha256').update(sql).digest('hex') };
    });
}

/**
 * Applies what is missing, one transaction each, and returns the names applied. Several processes may call it at once.
 * @throws StartupError when the history does not fit the folder, or a migration fails (the database is left as before it)
 */
export async function migrate(databaseUrl: string, migrations: Migration[]): Promise<string[]> {
  const client = await connectPatiently(databaseUrl);
  try {
    await client.query('select pg_advisory_lock($1)', [migrationLock]);
    await client.query(historyTable);
    const pending = findPending(migrations, await readHistory(client));
    for (const migration of pending) await apply(client, migration);
    return pending.map(({ name }) => name);
  } finally {
    await client.end();
  }
}

/** The names of migrations that the database still lacks; used by `/readyz`. */
export async function pendingMigrations(pool: pg.Pool, migrations: Migration[]): Promise<string[]> {
  return findPending(migrations, await readHistory(pool)).map(({ name }) => name);
}

async function readHistory(client: pg.Client | pg.Pool): Promise<HistoryRow[]> {
  const { rows } = await client.query<HistoryRow>(
    'select migration_name, checksum, finished_at from _prisma_migrations where rolled_back_at is null',
  );
  return rows;
}

function findPending(migrations: Migration[], history: HistoryRow[]): Migration[] {
  const known = new Map(migrations.map((migration) => [migration.name, migration]));
  for (const row of history) {
    const migration = known.get(row.migration_name);
    if (!row.finished_at) {
      throw new StartupError(
        `Migration ${row.migration_name} began and never finished; repair the database, then mark it with "npx prisma migrate resolve".`,
      );
    }
    if (!migration) {
      throw new StartupError(
        `The database has migration ${row.migration_name}, which this program does not know; it is older than the database.`,
      );
    }
    if (migration.checksum !== row.checksum) {
      throw new StartupError(`Migration ${row.migration_name} was changed after it was applied to this database.`);
    }
  }
  const applied = new Set(history.map((row) => row.migration_name));
  return migrations.filter(({ name }) => !applied.has(name));
}

async function apply(client: pg.Client, { name, sql, checksum }: Migration): Promise<void> {
  try {
    await client.query('begin');
    await client.query(sql);
    await client.query(
      `insert into _prisma_migrations (id, checksum, finished_at, migration_name, applied_steps_count)
       values ($1, $2, now(), $3, 1)`,
      [newId(), checksum, name],
    );
    await client.query('commit');
  } catch (cause) {
    await client.query('rollback').catch(() => {});
    throw new StartupError(`Migration ${name} failed and nothing of it was kept: ${(cause as Error).message}.`, {
      cause,
    });
  }
}

/** A server that starts beside its database waits half a minute for it. */
async function connectPatiently(databaseUrl: string): Promise<pg.Client> {
  const deadline = Date.now() + 30_000;
  for (;;) {
    const client = new pg.Client({ connectionString: databaseUrl, connectionTimeoutMillis: 5_000 });
    try {
      await client.connect();
      return client;
    } catch (cause) {
      await client.end().catch(() => {});
      const { code = '', message } = cause as pg.DatabaseError;
      const mayCome = ['ECONNREFUSED', 'ENOTFOUND', 'EAI_AGAIN', '57P03'].includes(code) || /timeout/.test(message);
      if (!mayCome || Date.now() > deadline) throw unreachable(databaseUrl, cause);
      await new Promise((done) => setTimeout(done, 500));
    }
  }
}

function unreachable(databaseUrl: string, cause: unknown): StartupError {
  const { host, pathname, username } = new URL(databaseUrl);
  const { message, code } = cause as NodeJS.ErrnoException;
  return new StartupError(
    `The database ${pathname.slice(1)} at ${host} could not be opened as ${username}: ${message || code}.`,
    { cause },
  );
}
