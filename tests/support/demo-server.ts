import { execFileSync, spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { type AddressInfo, createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';

export interface DemoServer {
  url: string;
  signIns: Record<'owner' | 'estimator' | 'crew', { email: string; password: string }>;
  clientLink: string;
  dataDir: string;
  stop(): Promise<void>;
}

const root = resolve(import.meta.dirname, '../..');
const startMs = 180_000;

/** Chosen before the start, so that links in letters and passkeys know the address. */
const freePort = (): Promise<number> =>
  new Promise((done) => {
    const server = createServer().listen(0, '127.0.0.1', () => {
      const { port } = server.address() as AddressInfo;
      server.close(() => done(port));
    });
  });

interface Options {
  /** A folder that a stopped demo server has left; without it the demo is told anew, which takes a while. */
  copyOf?: string;
  /** Leaves the data folder when the server stops. */
  keepsFolder?: boolean;
}

/** Runs `npm start`'s own script on a data folder of its own and a free port, and reads what it prints, as a person would. */
export async function startDemoServer({ copyOf, keepsFolder = false }: Options = {}): Promise<DemoServer> {
  const dataDir = mkdtempSync(join(tmpdir(), 'underlath-demo-'));
  // Owners are kept too: the database refuses a folder that belongs to somebody else.
  if (copyOf) execFileSync('cp', ['-a', `${copyOf}/.`, dataDir]);
  const child = spawn(process.execPath, ['--import', 'tsx', 'apps/api/src/commands/start.ts'], {
    cwd: root,
    env: {
      ...process.env,
      PORT: String(await freePort()),
      DATA_DIR: dataDir,
      SEED: 'demo',
      SIGN_UP: 'open',
      MAIL_PER_HOUR: '100000',
      DATABASE_URL: '',
    },
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  let printed = '';
  const ended = new Promise<void>((done) => child.once('exit', () => done()));
  const stop = async () => {
    child.kill('SIGTERM');
    await ended;
    if (!keepsFolder) rmSync(dataDir, { recursive: true, force: true });
  };
  const ready = new Promise<void>((done, fail) => {
    const late = setTimeout(() => fail(new Error(`the server was not ready in time:\n${printed}`)), startMs);
    const hear = (chunk: Buffer) => {
      printed += chunk.toString();
      if (/^ {2}client .*$/m.test(printed)) {
        clearTimeout(late);
        done();
      }
    };
    child.stdout.on('data', hear);
    child.stderr.on('data', hear);
    child.once('exit', (code) => fail(new Error(`the server ended with ${code}:\n${printed}`)));
  });
  try {
    await ready;
  } catch (error) {
    await stop();
    throw error;
  }
  const line = (name: string) => printed.match(new RegExp(`^ {2}${name} +(\\S+) {3}(.+)$`, 'm'));
  const signIn = (role: string) => ({ email: line(role)?.[1] ?? '', password: line(role)?.[2] ?? '' });
  return {
    url: printed.match(/^Underlath is at (\S+)$/m)?.[1] ?? '',
    signIns: { owner: signIn('owner'), estimator: signIn('estimator'), crew: signIn('crew') },
    clientLink: printed.match(/^ {2}client +(\S+)$/m)?.[1] ?? '',
    dataDir,
    stop,
  };
}
