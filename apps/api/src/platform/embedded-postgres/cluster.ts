import { execFile } from 'node:child_process';
import { randomBytes } from 'node:crypto';
import { existsSync, mkdirSync, readFileSync, realpathSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { findPostgresBinaries, type PostgresBinaries } from './binaries.ts';
import { explainPostgres } from './explain.ts';
import { chooseServerUser, giveTo, makeTraversable, type ServerUser } from './server-user.ts';

/** A folder of PostgreSQL's own and all it takes to run a server on it. */
export interface Cluster {
  folder: string;
  logFile: string;
  portFile: string;
  password: string;
  user: ServerUser | undefined;
  binaries: PostgresBinaries;
  settings: Record<string, string>;
}

export interface ClusterOptions {
  dataDir: string;
  /** Extra `name=value` settings of the server. Tests switch flushing off with it. */
  settings?: Record<string, string>;
  log?: (line: string) => void;
}

/** The role that owns everything in the cluster. */
export const clusterOwner = 'underlath_owner';

/** Makes the folder where there is none. @throws StartupError */
export async function prepareCluster({ dataDir, settings = {}, log = console.log }: ClusterOptions): Promise<Cluster> {
  const binaries = await findPostgresBinaries();
  const user = chooseServerUser();
  const folder = join(dataDir, 'postgres');
  try {
    mkdirSync(dataDir, { recursive: true, mode: 0o711 });
    for (const path of [folder, binaries.postgres]) {
      for (const opened of makeTraversable(user, path)) {
        log(`PostgreSQL cannot run as root; user ${user?.uid} may now pass through ${opened}.`);
      }
    }
    const cluster: Cluster = {
      // The server reports its folder with symbolic links resolved, and the two are compared.
      folder: join(realpathSync(dataDir), 'postgres'),
      logFile: join(dataDir, 'postgres.log'),
      portFile: join(dataDir, 'postgres-port'),
      password: readOrMakePassword(join(dataDir, 'postgres-password')),
      user,
      binaries,
      settings,
    };
    if (!existsSync(join(folder, 'PG_VERSION'))) await createCluster(cluster);
    return cluster;
  } catch (error) {
    throw explainPostgres(error, folder);
  }
}

function readOrMakePassword(file: string): string {
  if (!existsSync(file)) {
    const temporary = `${file}.${process.pid}`;
    writeFileSync(temporary, randomBytes(24).toString('base64url'), { mode: 0o600, flush: true });
    renameSync(temporary, file);
  }
  return readFileSync(file, 'utf8').trim();
}

/** Made under another name and renamed, so a folder called `postgres` is always a whole one. */
async function createCluster({ folder, password, user, binaries }: Cluster): Promise<void> {
  const unfinished = `${folder}.unfinished`;
  const passwordFile = `${folder}.password`;
  rmSync(unfinished, { recursive: true, force: true });
  mkdirSync(unfinished, { mode: 0o700 });
  giveTo(user, unfinished);
  writeFileSync(passwordFile, password, { mode: 0o600 });
  giveTo(user, passwordFile);
  try {
    await promisify(execFile)(
      binaries.initdb,
      [
        `--pgdata=${unfinished}`,
        `--username=${clusterOwner}`,
        `--pwfile=${passwordFile}`,
        '--auth=scram-sha-256',
        '--encoding=UTF8',
        '--locale=C',
        '--locale-provider=builtin',
        '--builtin-locale=C.UTF-8',
        '--no-instructions',
      ],
      { ...user, cwd: unfinished, env: serverEnvironment() },
    );
    renameSync(unfinished, folder);
  } finally {
    rmSync(passwordFile, { force: true });
  }
}

/** PG* variables of the person's shell are meant for other servers. */
export function serverEnvironment(): NodeJS.ProcessEnv {
  return Object.fromEntries(
    Object.entries(process.env).filter(([name]) => !name.startsWith('PG') && !name.startsWith('LC_')),
  );
}
