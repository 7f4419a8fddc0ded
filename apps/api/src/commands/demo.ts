import { existsSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { seedDemo } from '../../../../seed/index.ts';
import type { Config } from '../config.ts';
import type { Platform } from '../platform/platform.ts';
import { ProblemError } from '../platform/problem-error.ts';
import { StartupError } from '../platform/startup-error.ts';
import type { DemoAccess } from './demo-access.ts';

const accessFile = (config: Config): string => join(config.dataDir, 'demo-access.json');
/** Lies there while the demo is being written: nobody has been served yet, so nothing of theirs can be in it. */
const unfinishedFile = (config: Config): string => join(config.dataDir, 'demo-unfinished');

/** Fills an empty database with the demo; leaves one that holds anything alone. */
export async function seedDemoOnce(platform: Platform): Promise<void> {
  if (await hasCompanies(platform)) return;
  try {
    await writeDemo(platform);
  } catch (error) {
    // The people of the demo are made first, and by their e-mail addresses only once.
    if (!(error instanceof ProblemError) || error.type !== 'already-exists') throw error;
    throw new StartupError(
      'Another server is writing the demo into this database just now; start this one again in a minute.',
      { cause: error },
    );
  }
}

/** `npm run seed`: the same, but refuses where there is something already. */
export async function seedDemoOrRefuse(platform: Platform): Promise<DemoAccess> {
  if (await hasCompanies(platform)) {
    throw new StartupError('The database is not empty, so the demo was not written; use an empty database.');
  }
  return writeDemo(platform);
}

/** What to type to look around, if this data folder holds the demo. */
export function readDemoAccess(config: Config): DemoAccess | undefined {
  const file = accessFile(config);
  return existsSync(file) ? (JSON.parse(readFileSync(file, 'utf8')) as DemoAccess) : undefined;
}

async function writeDemo(platform: Platform): Promise<DemoAccess> {
  const { config } = platform;
  const started = Date.now();
  mkdirSync(config.dataDir, { recursive: true });
  writeFileSync(unfinishedFile(config), '', { flush: true });
  const access = await seedDemo(platform);
  writeFileSync(accessFile(config), JSON.stringify(access, null, 2), { mode: 0o600, flush: true });
  rmSync(unfinishedFile(config), { force: true });
  console.log(`Wrote the invented demo … ${((Date.now() - started) / 1000).toFixed(1)} s`);
  return access;
}

/** A first start that was killed half way left part of a demo in our own PostgreSQL; it is taken out and written anew. */
export async function forgetUnfinishedDemo({ config, database }: Platform): Promise<void> {
  if (config.databaseUrl || !existsSync(unfinishedFile(config))) return;
  const { rows } = await database.ownerPool.query<{ name: string }>(
    `select format('%I.%I', schemaname, tablename) as name from pg_tables
     where schemaname = 'public' and tablename <> '_prisma_migrations'`,
  );
  const client = await database.ownerPool.connect();
  try {
    await client.query('begin');
    // The record's own triggers refuse to be emptied; only the owner of the whole server may pass them, once.
    await client.query('set local session_replication_role = replica');
    await client.query(`truncate ${rows.map(({ name }) => name).join(', ')}`);
    await client.query('delete from pgboss.job');
    await client.query('commit');
  } catch (error) {
    await client.query('rollback');
    throw error;
  } finally {
    client.release();
  }
  rmSync(unfinishedFile(config), { force: true });
}

async function hasCompanies({ database }: Platform): Promise<boolean> {
  const { rowCount } = await database.ownerPool.query('select 1 from company limit 1');
  return rowCount !== 0;
}
