import { type ChildProcess, fork } from 'node:child_process';
import { once } from 'node:events';
import { join } from 'node:path';

export interface Child<Hello> {
  hello: Hello;
  process: ChildProcess;
  stop(): Promise<void>;
}

/** Starts one of the scripts beside this file in a process of its own and waits for its first message. @throws Error when it ends before */
export async function startChild<Hello>(script: string, env: NodeJS.ProcessEnv): Promise<Child<Hello>> {
  const child = fork(join(import.meta.dirname, script), {
    execArgv: ['--import', 'tsx'],
    env: { ...process.env, NODE_ENV: 'production', ...env },
  });
  const hello = await new Promise<Hello>((done, fail) => {
    child.once('message', (message) => done(message as Hello));
    child.once('exit', (code) => fail(new Error(`${script} ended with ${code} before it was ready`)));
  });
  return {
    hello,
    process: child,
    stop: () =>
      new Promise((done) => {
        child.once('exit', () => done());
        child.send('stop');
      }),
  };
}

/** What a child that answers to `cpu` has taken of all cores so far, its threads counted, milliseconds. */
export async function cpuMsOf({ process: child }: Child<unknown>): Promise<number> {
  const answered = once(child, 'message');
  child.send('cpu');
  const [{ user, system }] = (await answered) as [NodeJS.CpuUsage];
  return (user + system) / 1000;
}
