import { execFile } from 'node:child_process';
import { setTimeout as sleep } from 'node:timers/promises';
import { promisify } from 'node:util';
import pg from 'pg';
import { isDatabaseAway } from '../database/database-errors.ts';
import { StartupError } from '../startup-error.ts';
import { type Cluster, type ClusterOptions, prepareCluster, serverEnvironment } from './cluster.ts';
import { canConnect, urlOf } from './connect.ts';
import { explainPostgres } from './explain.ts';
import { startDeadlineMs, startPostgres } from './launch.ts';
import { findRunningServer, isAlive } from './process-state.ts';

export interface EmbeddedPostgres {
  /** Address of the `underlath` database, with the owner's password. */
  databaseUrl: string;
  /** Process id of the server. */
  pid: number;
  /** How this process came by it. A guest uses a server that another living process of ours owns. */
  origin: 'started' | 'adopted' | 'guest';
  /** Stops the server and waits; a guest only lets go. */
  stop(): Promise<void>;
}

interface Options extends ClusterOptions {
  /** The caller serves people: it may not share the data folder with another living server. Commands are guests. */
  mustOwn?: boolean;
}

const database = 'underlath';
/** Held for life by the process that owns the server, so a second process can tell a living owner from a dead one. */
const ownershipLock = 0x75_6e_64_6c;
/** A program whose starter was killed notices within a second or two, and leaves. */
const ownerLeavesMs = 15_000;

/**
 * Runs PostgreSQL from the npm-shipped binaries in `dataDir`/postgres, on a loopback port that is chosen once and
 * remembered. A server left behind by a killed parent is adopted.
 * @throws StartupError in one sentence when the machine, the disk or the folder does not allow it
 */
export async function startEmbeddedPostgres(options: Options): Promise<EmbeddedPostgres> {
  const cluster = await prepareCluster(options);
  const deadline = Date.now() + startDeadlineMs;
  for (let running = findRunningServer(cluster.folder); running; running = findRunningServer(cluster.folder)) {
    if (await canConnect(cluster, running.port)) {
      const server = await adopt(cluster, running);
      if (server && (server.origin !== 'guest' || !options.mustOwn)) return server;
      await server?.stop();
      if (Date.now() > deadline - startDeadlineMs + ownerLeavesMs) throw inUse(cluster.folder);
    }
    if (Date.now() > deadline) {
      throw new StartupError(
        `A PostgreSQL (process ${running.pid}) holds ${cluster.folder} but does not answer; stop that process and start again.`,
      );
    }
    await sleep(100);
  }
  const { pid, port } = await startPostgres(cluster).catch((error: unknown) => {
    throw explainPostgres(error, cluster.folder);
  });
  return takeOver(cluster, pid, port, 'started');
}

/** Nothing when the server stopped between being found and being taken over. */
async function adopt(
  cluster: Cluster,
  { pid, port }: { pid: number; port: number },
): Promise<EmbeddedPostgres | undefined> {
  try {
    return await takeOver(cluster, pid, port, 'adopted');
  } catch (error) {
    if (isDatabaseAway(error)) return undefined;
    throw error;
  }
}

async function takeOver(
  cluster: Cluster,
  pid: number,
  port: number,
  how: 'started' | 'adopted',
): Promise<EmbeddedPostgres> {
  const keeper = new pg.Client({ connectionString: urlOf(cluster, port, 'postgres'), keepAlive: true });
  // Losing this connection means that the server went away; the pools report that to whoever is waiting.
  keeper.on('error', () => {});
  await keeper.connect();
  await createDatabase(keeper);
  const { rows } = await keeper.query<{ owned: boolean }>('select pg_try_advisory_lock($1) as owned', [ownershipLock]);
  const isOwner = rows[0]?.owned === true;
  return {
    databaseUrl: urlOf(cluster, port, database),
    pid,
    origin: isOwner ? how : 'guest',
    stop: async () => {
      // The lock is held until the server is down: let go earlier, another process would take over a server that is leaving.
      if (isOwner) await stopServer(cluster, pid);
      await keeper.end().catch(() => {});
    },
  };
}

async function createDatabase(client: pg.Client): Promise<void> {
  const { rowCount } = await client.query('select 1 from pg_database where datname = $1', [database]);
  if (rowCount) return;
  await client.query(`create database ${database}`).catch((error: pg.DatabaseError) => {
    const madeByAnother = error.code === '42P04' || error.code === '23505';
    if (!madeByAnother) throw error;
  });
}

async function stopServer({ binaries, folder, user }: Cluster, pid: number): Promise<void> {
  if (!isAlive(pid)) return;
  await promisify(execFile)(binaries.pg_ctl, ['stop', '-D', folder, '-m', 'fast', '-w', '-t', '60'], {
    ...user,
    cwd: folder,
    env: serverEnvironment(),
  });
}

const inUse = (folder: string): StartupError =>
  new StartupError(
    `Another Underlath is running on ${folder}; stop it first, or start this one with another DATA_DIR.`,
  );
