import { existsSync } from 'node:fs';
import { mkdir, rename, rm, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import pg from 'pg';
import { to as copyTo } from 'pg-copy-streams';
import { thumbKey, viewKey } from '../../features/photos/photo-files.ts';
import { headKey, headsFolder, keepHead, readHeads } from '../../features/records/record-witnesses.ts';
import type { Platform } from '../../platform/platform.ts';
import { StartupError } from '../../platform/startup-error.ts';
import { takeKey } from '../backup-key.ts';
import { filePath, type Manifest, sealManifest, tablePath, writeMeasured } from './folder.ts';

/** What was written, and what of the files did not fit the rows. */
export interface Backup {
  manifest: Manifest;
  /** Files that rows speak of and that are missing or hold other bytes; the backup lacks them too. */
  faults: string[];
  /** Files that no row speaks of, left by a process that was killed, or of an upload that was just under way. */
  leftOver: string[];
}

/**
 * Writes every table as of one instant, and every file, into a new folder. The server may go on working: bytes are
 * stored before the rows that name them, so each row of the instant finds its file.
 * @throws StartupError when the folder exists already
 */
export async function backUp(platform: Platform, folder: string): Promise<Backup> {
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
    const heads = await readHeadRows(client);
    const photos = await readPhotoFiles(client);
    await client.query('commit');
    // They go into this backup and stay in the store: what is cut off here later is missed by them.
    for (const head of heads) await keepHead(platform.fileStore, head);
    const files = await writeFiles(platform, unfinished, heads);
    const sealingKey = await takeKey(platform, unfinished);
    const manifest: Manifest = {
      format: 'underlath.backup/2',
      takenAt: platform.clock.now().toISOString(),
      migrations: platform.migrations.map(({ name, checksum }) => ({ name, checksum })),
      tables,
      files,
      heads,
      ...(sealingKey && { sealingKey }),
      jobs: jobs.rows,
    };
    await writeFile(join(unfinished, 'manifest.json'), sealManifest(manifest), { flush: true });
    await rename(unfinished, folder);
    return { manifest, ...compareFiles(files, photos) };
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

async function readHeadRows(client: pg.PoolClient): Promise<Manifest['heads']> {
  const { rows } = await client.query<Manifest['heads'][number]>(
    `select company_id::text as "companyId", project_id::text as "recordId", seq, hash from record_head
     where seq > 0 order by 1, 2`,
  );
  return rows;
}

interface PhotoFile {
  id: string;
  fileKey: string;
  sha256: string;
  viewSha256: string | null;
}

async function readPhotoFiles(client: pg.PoolClient): Promise<PhotoFile[]> {
  const { rows } = await client.query<PhotoFile>(
    `select id::text, file_key as "fileKey", sha256, view_sha256 as "viewSha256" from photo order by id`,
  );
  return rows;
}

/** Holds what was hashed on the way against what the rows say of it. */
function compareFiles(files: Manifest['files'], photos: readonly PhotoFile[]): Pick<Backup, 'faults' | 'leftOver'> {
  const found = new Map(files.map(({ key, sha256 }) => [key, sha256]));
  const spokenOf = new Set<string>();
  const faults: string[] = [];
  const expect = (what: string, key: string, sha256?: string) => {
    spokenOf.add(key);
    const hash = found.get(key);
    if (hash === undefined) faults.push(`${what} is missing (${key}).`);
    else if (sha256 !== undefined && hash !== sha256) faults.push(`${what} has hash ${hash}, not ${sha256} (${key}).`);
  };
  for (const { id, fileKey, sha256, viewSha256 } of photos) {
    expect(`The file of photo ${id}`, fileKey, sha256);
    if (viewSha256 === null) continue;
    expect(`The view of photo ${id}`, viewKey(fileKey), viewSha256);
    expect(`The thumbnail of photo ${id}`, thumbKey(fileKey));
  }
  const leftOver = files.map(({ key }) => key).filter((key) => !spokenOf.has(key) && !key.startsWith(headsFolder));
  return { faults, leftOver };
}

/** Heads that were kept after the instant of the rows stay out: they tell of events that the backup does not have. */
async function writeFiles(
  { fileStore }: Platform,
  folder: string,
  heads: Manifest['heads'],
): Promise<Manifest['files']> {
  const later = new Set<string>();
  for (const head of await readHeads(fileStore)) {
    const then = heads.find(({ recordId }) => recordId === head.recordId);
    if (head.seq > (then?.seq ?? 0)) later.add(headKey(head));
  }
  const files: Manifest['files'] = [];
  for await (const key of fileStore.keys()) {
    if (later.has(key)) continue;
    const { stream } = await fileStore.open(key);
    files.push({ key, ...(await writeMeasured(stream, filePath(folder, key))) });
  }
  return files;
}
