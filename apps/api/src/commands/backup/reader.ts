import { createReadStream, existsSync } from 'node:fs';
import { pipeline } from 'node:stream/promises';
import pg from 'pg';
import { from as copyFrom } from 'pg-copy-streams';
import { jobs as knownJobs } from '../../deps.ts';
import { giveUpWaitingMail } from '../../features/mail/mail-of-backup.ts';
import { sendMailJob } from '../../platform/mail/outbox.ts';
import type { Platform } from '../../platform/platform.ts';
import { StartupError } from '../../platform/startup-error.ts';
import { keyPath } from '../backup-key.ts';
import { assertUnchanged, filePath, type Manifest, readManifest, tablePath } from './folder.ts';

/**
 * Puts a backup into an empty database and file store: files first, then every row in one transaction.
 * @throws StartupError when the backup is damaged or of another version, or the database holds anything
 */
export async function restore(platform: Platform, folder: string): Promise<Manifest> {
  const manifest = readManifest(folder);
  assertSameVersion(platform, manifest);
  await assertEmpty(platform);
  assertFilesThere(folder, manifest);
  for (const { name, sha256 } of manifest.tables) await assertUnchanged(tablePath(folder, name), sha256);
  if (manifest.sealingKey) await assertUnchanged(keyPath(folder), manifest.sealingKey.sha256);
  await restoreFiles(platform, folder, manifest);
  await restoreRows(platform, folder, manifest);
  await restoreJobs(platform, manifest);
  return manifest;
}

function assertSameVersion({ migrations }: Platform, manifest: Manifest): void {
  const ours = migrations.map(({ name, checksum }) => `${name} ${checksum}`).join();
  const theirs = manifest.migrations.map(({ name, checksum }) => `${name} ${checksum}`).join();
  if (ours === theirs) return;
  const last = manifest.migrations.at(-1)?.name;
  throw new StartupError(
    `The backup was taken at migration ${last} and this program is at another; restore with the version that took it, then update.`,
  );
}

async function assertEmpty({ database }: Platform): Promise<void> {
  const { rows } = await database.ownerPool.query<{ filled: boolean }>(
    'select exists(select 1 from company) or exists(select 1 from app_user) as filled',
  );
  if (rows[0]?.filled)
    throw new StartupError(
      'The database is not empty; restore into a new one (another DATA_DIR or DATABASE_URL, with SEED=none).',
    );
}

function assertFilesThere(folder: string, { files }: Manifest): void {
  const missing = files.map(({ key }) => filePath(folder, key)).filter((path) => !existsSync(path));
  if (missing.length === 0) return;
  const more = missing.length > 1 ? ` (and ${missing.length - 1} more)` : '';
  throw new StartupError(`${missing[0]} is missing${more}; the backup is not whole, and nothing was restored.`);
}

async function restoreFiles({ fileStore }: Platform, folder: string, { files }: Manifest): Promise<void> {
  for (const { key, sha256 } of files) {
    const received = await fileStore.receive(createReadStream(filePath(folder, key)));
    if (received.sha256 !== sha256) {
      await fileStore.discard(received);
      throw new StartupError(`${filePath(folder, key)} is not as it was when the backup was taken.`);
    }
    await fileStore.keep(received, key);
  }
}

async function restoreRows({ database }: Platform, folder: string, { tables }: Manifest): Promise<void> {
  const client = await database.ownerPool.connect();
  try {
    await client.query('begin');
    await client.query('set local statement_timeout = 0');
    for (const table of tables) await restoreTable(client, folder, table);
    await giveUpWaitingMail(client);
    await client.query('commit');
  } finally {
    client.release(true);
  }
}

/** By way of a plain table: PostgreSQL does not copy into one with row-level security unless a superuser does. */
async function restoreTable(
  client: pg.PoolClient,
  folder: string,
  { name, columns, rowCount }: Manifest['tables'][number],
) {
  const table = pg.escapeIdentifier(name);
  const list = columns.map((column) => pg.escapeIdentifier(column)).join(', ');
  await client.query(`create temporary table incoming on commit drop as select ${list} from ${table} with no data`);
  await pipeline(
    createReadStream(tablePath(folder, name)),
    client.query(copyFrom(`copy incoming (${list}) from stdin`)),
  );
  const inserted = await client.query(`insert into ${table} (${list}) select ${list} from incoming`);
  if (inserted.rowCount !== rowCount)
    throw new StartupError(`Table ${name} took ${inserted.rowCount} rows of ${rowCount}.`);
  await client.query('drop table incoming');
}

async function restoreJobs({ database, queue }: Platform, manifest: Manifest): Promise<void> {
  for (const { name, data } of manifest.jobs) {
    const job = knownJobs.find((known) => known.name === name && name !== sendMailJob.name);
    if (job) await database.owner.$transaction((tx) => queue.enqueue(tx, job, data));
  }
}
