import { type Db, PgBoss } from 'pg-boss';
import type { z } from 'zod';
import type { Tx } from './database/database.ts';
import { loginsOf } from './database/logins.ts';
import { carryJobsOver, inInstallTurn, isOldQueueAside, setOldQueueAside } from './old-queue.ts';
import { StartupError } from './startup-error.ts';

/** A kind of background work: its name, what it carries, and how often it is tried. */
export interface Job<Data = unknown> {
  readonly name: string;
  /** Ids only: the handler reads the rest, so what it sees is never stale. */
  readonly data: z.ZodType<Data>;
  /** Tries after the first; 5 unless told. The pause doubles from `retryDelaySeconds`. */
  readonly retryLimit?: number;
  /** 5 unless told. */
  readonly retryDelaySeconds?: number;
  /** Longest one try may take; 300 unless told. A try of a killed worker is given to another after this. */
  readonly expireInSeconds?: number;
  /** How many run side by side in one worker process; 1 unless told. */
  readonly concurrency?: number;
}

export const defineJob = <Data>(job: Job<Data>): Job<Data> => job;

export interface JobRun<Data> {
  readonly id: string;
  readonly data: Data;
  /** True when an error thrown now makes the job dead. */
  readonly isLastTry: boolean;
}

export interface JobHandler {
  readonly job: Job;
  readonly handle: (run: JobRun<never>) => Promise<void>;
}

/** Binds a handler to its job. A feature lists what this returns in its `jobs`. */
export const handleJob = <Data>(job: Job<Data>, handle: (run: JobRun<Data>) => Promise<void>): JobHandler => ({
  job: job as Job,
  handle: handle as JobHandler['handle'],
});

/** A job that failed on its last try. */
export interface DeadJob {
  readonly id: string;
  readonly name: string;
  readonly data: unknown;
  readonly reason: string;
  readonly failedAt: Date;
}

/** What services need: to leave work behind in the transaction that makes it necessary. */
export interface JobSender {
  /** The job exists exactly when the transaction is committed. */
  enqueue<Data>(tx: Tx, job: Job<Data>, data: Data): Promise<void>;
}

export interface Queue extends JobSender {
  /** Starts working. @throws StartupError when a job has no handler, two, or one nobody declared */
  work(handlers: readonly JobHandler[]): Promise<void>;
  /**
   * Gives jobs back that a killed process had begun, instead of waiting until their time is up. Only for who knows that
   * no other worker is alive, such as the one owner of a built-in database.
   */
  takeOver(): Promise<void>;
  deadJobs(): Promise<DeadJob[]>;
  retryDead(job: Job, id: string): Promise<void>;
  /** Takes no new jobs and waits for those running. */
  stop(): Promise<void>;
}

interface Options {
  /** As the owner, who makes what is missing; the work itself is done as the login for it. */
  databaseUrl: string;
  jobs: readonly Job[];
  onError?: (error: Error) => void;
}

const schema = 'pgboss';
/** A job that is left behind wakes its worker at once; this is for tries whose pause is over, and where no notice comes through. */
const pollSeconds = 1;
const keepDays = 30;
/** A stop waits this long for running jobs; what is still running then is tried again by another worker. */
const drainMs = 25_000;

/** The queue in PostgreSQL. Any number of processes may open it. */
export async function createQueue({ databaseUrl, jobs, onError = () => {} }: Options): Promise<Queue> {
  const boss = await openBoss(databaseUrl, jobs, onError);
  for (const job of jobs) await boss.updateQueue(job.name, settingsOf(job));
  return {
    enqueue: async (tx, job, data) => {
      const db = {
        executeSql: async (sql: string, values: unknown[]) => ({
          rows: await tx.$queryRawUnsafe<unknown[]>(sql, ...values),
        }),
      };
      await boss.send(job.name, job.data.parse(data) as object, { db });
    },
    work: async (handlers) => {
      assertOneHandlerEach(jobs, handlers);
      for (const handler of handlers) await workOn(boss, handler, onError);
    },
    takeOver: async () => {
      const { rows } = await boss
        .getDb()
        .executeSql(`select name, id from ${schema}.job where state = 'active' and name = any($1)`, [
          jobs.map(({ name }) => name),
        ]);
      for (const { name, id } of rows as { name: string; id: string }[])
        await boss.fail(name, id, { message: 'The process that worked on it was killed.' });
    },
    deadJobs: () => readDeadJobs(boss),
    retryDead: async (job, id) => {
      await boss.retry(job.name, id);
    },
    stop: () => boss.stop({ graceful: true, timeout: drainMs }),
  };
}

/** Makes the queue's tables, a place for each job, and the rights to work there; as the owner, and without working. */
export async function installQueue(databaseUrl: string, jobs: readonly Job[]): Promise<void> {
  await inInstallTurn(databaseUrl, async (client) => {
    await setOldQueueAside(client, schema);
    const boss = newBoss(databaseUrl, true);
    boss.on('error', () => {});
    await boss.start();
    for (const job of jobs) if (!(await boss.getQueue(job.name))) await boss.createQueue(job.name, settingsOf(job));
    await carryJobsOver(client, schema);
    // The application may leave jobs and read back their ids; it cannot read what other companies left.
    await boss.getDb().executeSql(
      `grant usage on schema ${schema} to underlath_app, underlath_people, underlath_queue;
     grant select, insert, update, delete on all tables in schema ${schema} to underlath_queue;
     grant insert on ${schema}.job_common to underlath_app, underlath_people;
     grant select (id, start_after) on ${schema}.job_common to underlath_app, underlath_people;
     grant select on ${schema}.queue to underlath_app, underlath_people`,
      [],
    );
    await boss.stop({ graceful: true });
  });
}

/** Works as a login that may not change tables; what is missing is made by the owner first. */
async function openBoss(databaseUrl: string, jobs: readonly Job[], onError: (error: Error) => void): Promise<PgBoss> {
  const { queue } = loginsOf(databaseUrl);
  if (!(await isInstalled(queue, jobs))) await installQueue(databaseUrl, jobs);
  const boss = newBoss(queue, false);
  boss.on('error', onError);
  return boss.start();
}

async function isInstalled(queueUrl: string, jobs: readonly Job[]): Promise<boolean> {
  const boss = newBoss(queueUrl, false);
  boss.on('error', () => {});
  try {
    await boss.start();
    if (await isOldQueueAside(boss.getDb(), schema)) return false;
    const known = await Promise.all(jobs.map((job) => boss.getQueue(job.name)));
    return known.every((queue) => queue !== null);
  } catch (error) {
    if (isNotInstalled(error)) return false;
    throw error;
  } finally {
    await boss.stop({ graceful: false });
    // A start that failed is none to the library, so that its stop leaves the connections open.
    await (boss.getDb() as Db & { close(): Promise<void> }).close();
  }
}

/** The library's own two sentences, and PostgreSQL's for a schema without rights in it. */
const isNotInstalled = (error: unknown): boolean =>
  /not installed|requires migrations|permission denied/.test(error instanceof Error ? error.message : '');

const newBoss = (connectionString: string, isOwner: boolean): PgBoss =>
  new PgBoss({
    connectionString: isOwner ? connectionString : asRole(connectionString),
    schema,
    max: 3,
    migrate: isOwner,
    schedule: false,
    // A worker owns no table, so it can't rebuild indexes; and nothing here reads a registry of processes.
    useListenNotify: !isOwner,
    reindex: false,
    registerInstance: false,
  });

function asRole(connectionString: string): string {
  const url = new URL(connectionString);
  url.searchParams.set('options', '-c role=underlath_queue');
  return url.href;
}

const settingsOf = (job: Job) => ({
  retryLimit: job.retryLimit ?? 5,
  retryDelay: job.retryDelaySeconds ?? 5,
  retryBackoff: true,
  expireInSeconds: job.expireInSeconds ?? 300,
  notify: true,
  deleteAfterSeconds: keepDays * 86_400,
  retentionSeconds: keepDays * 86_400,
});

function assertOneHandlerEach(jobs: readonly Job[], handlers: readonly JobHandler[]): void {
  const names = jobs.map(({ name }) => name);
  const twice = names.find((name, index) => names.indexOf(name) !== index);
  if (twice) throw new StartupError(`Two jobs are called ${twice}.`);
  for (const name of names) {
    const count = handlers.filter((handler) => handler.job.name === name).length;
    if (count !== 1) throw new StartupError(`Job ${name} has ${count} handlers; it needs exactly one.`);
  }
  const stranger = handlers.find((handler) => !names.includes(handler.job.name));
  if (stranger) throw new StartupError(`A handler waits for job ${stranger.job.name}, which no feature declares.`);
}

async function workOn(boss: PgBoss, { job, handle }: JobHandler, onError: (error: Error) => void): Promise<void> {
  const options = {
    includeMetadata: true as const,
    batchSize: 1,
    pollingIntervalSeconds: pollSeconds,
    notifyPollingIntervalSeconds: pollSeconds,
  };
  for (let line = 0; line < (job.concurrency ?? 1); line++) {
    await boss.work(job.name, options, async ([taken]) => {
      if (!taken) return;
      const isLastTry = taken.retryCount >= taken.retryLimit;
      try {
        await handle({ id: taken.id, data: job.data.parse(taken.data) as never, isLastTry });
      } catch (error) {
        onError(new Error(`job ${job.name} ${taken.id} failed${isLastTry ? ' for good' : ''}`, { cause: error }));
        throw error;
      }
    });
  }
}

async function readDeadJobs(boss: PgBoss): Promise<DeadJob[]> {
  const { rows } = await boss.getDb().executeSql(
    `select id, name, data, coalesce(output->>'message', output::text, '') as reason, completed_on as "failedAt"
     from ${schema}.job where state = 'failed' order by completed_on desc limit 1000`,
    [],
  );
  return rows as DeadJob[];
}
