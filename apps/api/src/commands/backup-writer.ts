import { existsSync } from 'node:fs';
import { mkdir, rename, rm, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import pg from 'pg';
import { to as copyTo } from 'pg-copy-streams';
import type { Platform } from '../platform/platform.ts';
import { StartupError } from '../platform/startup-error.ts';
import { filePath, type Manifest, tablePath, writeMeasured } from './backup-folder.ts';

/**
 * Writes every table as of one instant, and every file, into a new folder. The server may go on working: bytes are
 * stored before the rows that name them, so each row of the instant finds its file.
 * @throws StartupError when the folder exists already
 */
export async function backUp(platform: Platform, folder: string): Promise<Manifest> {
  if (existsSync(folder)) throw new StartupError(`${folder} exists already; name a new folder for the backup.`);
  const unfinished = `${folder}.unfinished`;
  await rm(unfinished, { recursive: true, force: true });
  await mkdir(join(unfinished, 'tables'), { recursive: true, mode: 0o700 });
  const client = await platform.database.ownerPool.connect();
  try {
    await client.query('begin isolation level repeatable read read only');
    await client.query('set local statement_timeout = 0');
    const tables = await writeTables(client, unfinished);
    const jobs = await client.query<{ name: string; data: unknown }>(
      `select name, data from pgboss.job where state in ('created', 'retry', 'active') order by created_on`,
    );
    await client.query('commit');
    const manifest: Manifest = {
      format: 'underlath.backup/1',
      takenAt: platform.clock.now().toISOString(),
      migrations: platform.migrations.map(({ name, checksum }) => ({ name, checksum })),
      tables,
      files: await writeFiles(platform, unfinished),
      jobs: jobs.rows,
    };
    await writeFile(join(unfinished, 'manifest.json'), JSON.stringify(manifest, null, 2), { flush: true });
    await rename(unfinished, folder);
    return manifest;
  } finally {
    // Ends the transaction too when something failed in it.
    client.release(true);
  }
}

async function writeTables(client: pg.PoolClient, folder: string): Promise<Manifest['tables']> {
  const tables: Manifest['tables'] = [];
  for (const name of await tablesParentsFirst(client)) {
    const columns = await columnsOf(client, name);
    const list = columns.map((column) => pg.escapeIdentifier(column)).join(', ');
    const rows = client.query(copyTo(`copy (select ${list} from ${pg.escapeIdentifier(name)}) to stdout`));
    const measured = await writeMeasured(rows, tablePath(folder, name));
    tables.push({ name, columns, rowCount: rows.rowCount, ...measured });
  }
  return tables;
}

/** A table comes after every table its foreign keys point at. */
async function tablesParentsFirst(client: pg.PoolClient): Promise<string[]> {
  const { rows } = await client.query<{ name: string; parents: string[] }>(
    `select t.relname as name, coalesce(array_agg(p.relname::text) filter (where p.relname <> t.relname), '{}') as parents
     from pg_class t
     left join pg_constraint c on c.conrelid = t.oid and c.contype = 'f'
     left join pg_class p on p.oid = c.confrelid
     where t.relnamespace = 'public'::regnamespace and t.relkind = 'r' and t.relname <> '_prisma_migrations'
     group by t.relname order by t.relname`,
  );
  const ordered: string[] = [];
  while (ordered.length < rows.length) {
    const next = rows.find(
      ({ name, parents }) => !ordered.includes(name) && parents.every((parent) => ordered.includes(parent)),
    );
    if (!next) throw new StartupError('Tables point at each other in a circle, so they cannot be put in order.');
    ordered.push(next.name);
  }
  return ordered;
}

async function columnsOf(client: pg.PoolClient, table: string): Promise<string[]> {
  const { rows } = await client.query<{ name: string }>(
    `select attname::text as name from pg_attribute
     where attrelid = $1::regclass and attnum > 0 and not attisdropped and attgenerated = '' order by attnum`,
    [`public.${pg.escapeIdentifier(table)}`],
  );
  return rows.map(({ name }) => name);
}

async function writeFiles({ fileStore }: Platform, folder: string): Promise<Manifest['files']> {
  const files: Manifest['files'] = [];
  for await (const key of fileStore.keys()) {
    const { stream } = await fileStore.open(key);
    files.push({ key, ...(await writeMeasured(stream, filePath(folder, key))) });
  }
  return files;
}
