import { type ChildProcess, spawn } from 'node:child_process';
import { resolve } from 'node:path';

const root = resolve(import.meta.dirname, '../..');
const startMs = 60_000;

/** One of the program's commands in a process of its own, as the scripts of package.json run it. */
export function runScript(name: string, env: NodeJS.ProcessEnv, args: string[] = []): ChildProcess {
  return spawn(process.execPath, ['--import', 'tsx', `apps/api/src/commands/${name}.ts`, ...args], {
    cwd: root,
    env: { ...process.env, VITEST: undefined, PORT: '0', DATABASE_URL: '', ...env },
    stdio: ['ignore', 'pipe', 'pipe'],
  });
}

/** Runs a command to its end. */
export async function runToEnd(
  name: string,
  env: NodeJS.ProcessEnv,
  args: string[] = [],
): Promise<{ code: number | null; printed: string }> {
  const child = runScript(name, env, args);
  const printed = collect(child);
  const code = await new Promise<number | null>((done) => child.once('exit', done));
  return { code, printed: printed.text };
}

export interface Serving {
  url: string;
  child: ChildProcess;
  /** Waits for its end after a signal; answers the exit code, null when it was killed. */
  end(signal: NodeJS.Signals): Promise<number | null>;
}

/** The real server in a process of its own. @throws Error with what it printed when it is not ready in time */
export async function startServing(env: NodeJS.ProcessEnv): Promise<Serving> {
  const child = runScript('serve', { SEED: 'none', ...env });
  const printed = collect(child);
  const ended = new Promise<number | null>((done) => child.once('exit', done));
  const url = await new Promise<string>((done, fail) => {
    const late = setTimeout(() => fail(new Error(`not ready in time:\n${printed.text}`)), startMs);
    const look = () => {
      const found = printed.text.match(/^Underlath is at (\S+)$/m)?.[1];
      if (!found) return;
      clearTimeout(late);
      done(found.replace('localhost', '127.0.0.1'));
    };
    child.stdout?.on('data', look);
    child.once('exit', (code) => fail(new Error(`it ended with ${code}:\n${printed.text}`)));
  });
  return {
    url,
    child,
    end: (signal) => {
      child.kill(signal);
      return ended;
    },
  };
}

function collect(child: ChildProcess): { text: string } {
  const printed = { text: '' };
  const hear = (chunk: Buffer) => {
    printed.text += chunk.toString();
  };
  child.stdout?.on('data', hear);
  child.stderr?.on('data', hear);
  return printed;
}
