import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

/** What `postmaster.pid` says about a server in a data folder. */
export interface RunningPostgres {
  pid: number;
  port: number;
}

/**
 * The server that owns a data folder, if one is alive. The file outlives a killed machine, so the process it names may
 * be gone, or be something else by now.
 */
export function findRunningServer(clusterFolder: string): RunningPostgres | undefined {
  const file = join(clusterFolder, 'postmaster.pid');
  if (!existsSync(file)) return undefined;
  const [pid = '', , , port = ''] = readFileSync(file, 'utf8').split('\n');
  const server = { pid: Number(pid), port: Number(port) };
  return server.pid > 0 && isAlive(server.pid) && isPostgres(server.pid) ? server : undefined;
}

export function isAlive(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return (error as NodeJS.ErrnoException).code === 'EPERM';
  }
}

/** Only Linux can tell cheaply; elsewhere the connection attempt that follows decides. */
function isPostgres(pid: number): boolean {
  try {
    return readFileSync(`/proc/${pid}/comm`, 'utf8').startsWith('postgres');
  } catch {
    return process.platform !== 'linux';
  }
}
