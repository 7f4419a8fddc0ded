import { join } from 'node:path';
import type { Config } from '../config.ts';
import { type Accounts, createAccounts } from './accounts/accounts.ts';
import { createSealing, type Sealing } from './accounts/sealing.ts';
import { type Clock, systemClock } from './clock.ts';
import { createDatabase, type Database } from './database/database.ts';
import { ensureLogins } from './database/logins.ts';
import { type Migration, migrate, readMigrations } from './database/migrations.ts';
import { startEmbeddedPostgres } from './embedded-postgres/embedded-postgres.ts';
import { createFileStore, type FileStore } from './file-store/file-store.ts';
import { createMailer, type Mailer } from './mail/mailer.ts';
import { createOutbox, type MailOutbox } from './mail/outbox.ts';
import { createQueue, type Job, type Queue } from './queue.ts';
import { createRangePool, type RangePool } from './range-pool.ts';

/** Everything outside the house rules: what services are built on. HTTP and worker share it. */
export interface Platform {
  readonly config: Config;
  readonly database: Database;
  readonly migrations: Migration[];
  readonly fileStore: FileStore;
  readonly queue: Queue;
  readonly outbox: MailOutbox;
  readonly mailer: Mailer;
  readonly accounts: Accounts;
  readonly sealing: Sealing;
  readonly clock: Clock;
  readonly ranges: RangePool;
  /** Lets go of everything, in order; the queue waits for its running jobs first. */
  close(): Promise<void>;
}

interface Options {
  /** Every job that any feature declares. */
  jobs: readonly Job[];
  onError: (error: Error) => void;
  log?: (line: string) => void;
  maxConnections?: number;
  /** True for a server; a command may work beside one on the same data folder. */
  mustOwn?: boolean;
}

/** Opens the database the configuration names; without one, PostgreSQL runs in the data folder. Migrated when it returns. */
export async function openDatabase(
  config: Config,
  { log = console.log, mustOwn = false }: Pick<Options, 'log' | 'mustOwn'> = {},
): Promise<{ databaseUrl: string; migrations: Migration[]; stop(): Promise<void> }> {
  const embedded = config.databaseUrl
    ? undefined
    : await startEmbeddedPostgres({ dataDir: config.dataDir, log, mustOwn });
  const databaseUrl = config.databaseUrl ?? embedded?.databaseUrl ?? '';
  const stop = async () => embedded?.stop();
  try {
    const migrations = readMigrations(join(config.projectRoot, 'prisma/migrations'));
    for (const name of await migrate(databaseUrl, migrations)) log(`Applied migration ${name}.`);
    await ensureLogins(databaseUrl);
    return { databaseUrl, migrations, stop };
  } catch (error) {
    await stop();
    throw error;
  }
}

/** Opens every adapter. What was opened is closed again when a later one fails. */
export async function openPlatform(config: Config, options: Options): Promise<Platform> {
  const undo: (() => Promise<unknown>)[] = [];
  const close = async () => {
    for (const step of undo.splice(0).reverse()) await step();
  };
  try {
    const { jobs, onError, log, maxConnections } = options;
    const { databaseUrl, migrations, stop } = await openDatabase(config, options);
    undo.push(stop);
    const database = createDatabase({ databaseUrl, onError, ...(maxConnections && { maxConnections }) });
    undo.push(() => database.close());
    const fileStore = await createFileStore(config);
    const queue = await createQueue({ databaseUrl, jobs, onError });
    undo.push(() => queue.stop());
    const mailer = createMailer(config, log);
    const outbox = createOutbox(queue, config.mailPerHour);
    const accounts = createAccounts(database);
    const sealing = createSealing(config);
    const ranges = createRangePool();
    undo.push(() => ranges.close());
    const clock = systemClock;
    return { config, database, migrations, fileStore, queue, outbox, mailer, accounts, sealing, clock, ranges, close };
  } catch (error) {
    await close();
    throw error;
  }
}
