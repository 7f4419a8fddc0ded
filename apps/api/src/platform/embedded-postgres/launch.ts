import { spawn } from 'node:child_process';
import { closeSync, existsSync, openSync, readFileSync, renameSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:net';
import { join } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import { StartupError } from '../startup-error.ts';
import { type Cluster, serverEnvironment } from './cluster.ts';
import { canConnect } from './connect.ts';
import { explainPostgres } from './explain.ts';

/** Longest a server may take to answer after its start; recovery after a crash is part of it. */
export const startDeadlineMs = 60_000;

/** Starts a server on a free port and waits until it answers. @throws StartupError */
export async function startPostgres(cluster: Cluster): Promise<{ pid: number; port: number }> {
  // postmaster.pid names no living PostgreSQL here; left in place, a reused process id would stop the start.
  rmSync(join(cluster.folder, 'postmaster.pid'), { force: true });
  for (let attempt = 1; ; attempt++) {
    const port = await choosePort(cluster.portFile);
    const result = await launch(cluster, port);
    if (typeof result === 'number') return { pid: result, port };
    if (!/could not bind|Address already in use/.test(result) || attempt === 5)
      throw explainPostgres(new Error(result), cluster.folder);
    rmSync(cluster.portFile, { force: true });
  }
}

/** Starts the server detached, so that Ctrl-C reaches only us and we stop it in order. Returns its pid, or its log. */
async function launch(cluster: Cluster, port: number): Promise<number | string> {
  const settings = {
    port: String(port),
    listen_addresses: '127.0.0.1',
    unix_socket_directories: '',
    max_connections: '120',
    timezone: 'UTC',
    log_timezone: 'UTC',
    ...cluster.settings,
  };
  const logStart = openLog(cluster.logFile);
  const log = openSync(cluster.logFile, 'a', 0o600);
  const child = spawn(
    cluster.binaries.postgres,
    ['-D', cluster.folder, ...Object.entries(settings).flatMap(([name, value]) => ['-c', `${name}=${value}`])],
    { ...cluster.user, cwd: cluster.folder, detached: true, stdio: ['ignore', log, log], env: serverEnvironment() },
  );
  closeSync(log);
  let exited: string | undefined;
  child.on('error', (error) => {
    exited = error.message;
  });
  child.on('exit', () => {
    // Who stopped it may have removed the whole folder.
    exited = existsSync(cluster.logFile) ? readFileSync(cluster.logFile, 'utf8').slice(logStart) : 'its log is gone';
  });
  child.unref();
  const deadline = Date.now() + startDeadlineMs;
  while (exited === undefined && Date.now() < deadline) {
    if (child.pid && (await canConnect(cluster, port))) return child.pid;
    await sleep(40);
  }
  child.kill('SIGKILL');
  return exited ?? 'it did not answer within 60 seconds';
}

/** Returns where the new lines will start. The log starts afresh once it has passed 10 MB. */
function openLog(file: string): number {
  const size = statSync(file, { throwIfNoEntry: false })?.size ?? 0;
  if (size < 10_000_000) return size;
  renameSync(file, `${file}.old`);
  return 0;
}

async function choosePort(file: string): Promise<number> {
  const remembered = existsSync(file) ? Number(readFileSync(file, 'utf8')) : 0;
  if (remembered > 0 && (await freePort(remembered))) return remembered;
  const port = await freePort(0);
  if (!port)
    throw new StartupError(
      'No loopback port is free for the built-in PostgreSQL; set DATABASE_URL to a PostgreSQL of your own.',
    );
  writeFileSync(file, String(port));
  return port;
}

function freePort(wanted: number): Promise<number | undefined> {
  return new Promise((done) => {
    const probe = createServer();
    probe.once('error', () => done(undefined));
    probe.listen(wanted, '127.0.0.1', () => {
      const address = probe.address();
      probe.close(() => done(typeof address === 'object' ? address?.port : undefined));
    });
  });
}
