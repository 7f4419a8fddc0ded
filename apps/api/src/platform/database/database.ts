import { AsyncLocalStorage } from 'node:async_hooks';
import { PrismaPg } from '@prisma/adapter-pg';
import pg from 'pg';
import { type Prisma, PrismaClient } from '../../generated/prisma/client.ts';
import { orAway } from './database-errors.ts';
import { type Fence, setFence, type Tx } from './fence.ts';
import { JoinedWork } from './joined-work.ts';
import { loginsOf } from './logins.ts';

export type { Fence, Tx };

export interface TransactionOptions {
  userId?: string;
  /** Longest the transaction may take, milliseconds; 15,000 unless told. */
  timeoutMs?: number;
  isolationLevel?: Prisma.TransactionIsolationLevel;
}

export interface Database {
  /** Owner of the tables, for commands at the terminal and for starting; a server that serves has no connection of it. */
  owner: PrismaClient;
  /** Signing in: people, sessions and how they prove who they are, and where each works. Connections as `underlath_people`. */
  people: PrismaClient;
  /** Connections as `underlath_app`, which sees no company's rows until a transaction says whose. */
  app: PrismaClient;
  /** The same connections as `app`, for hand-written SQL on hot lists; use `inCompanySql`. */
  pool: pg.Pool;
  ownerPool: pg.Pool;
  peoplePool: pg.Pool;
  /** One transaction on behalf of a company. @throws DatabaseAwayError */
  inCompany<Result>(
    companyId: string,
    work: (tx: Tx) => Promise<Result>,
    options?: TransactionOptions,
  ): Promise<Result>;
  /** One transaction behind any fence, for work before the company is known. @throws DatabaseAwayError */
  behindFence<Result>(fence: Fence, work: (tx: Tx) => Promise<Result>, options?: TransactionOptions): Promise<Result>;
  /**
   * One transaction around everything that is done meanwhile: what would have been a transaction of its own, of whatever
   * service, becomes a savepoint of this one. So what is written here beside that work stands or falls with it.
   * @throws DatabaseAwayError
   */
  asOne<Result>(fence: Fence, work: (tx: Tx) => Promise<Result>): Promise<Result>;
  /** One read-only transaction on behalf of a company over a raw connection. @throws DatabaseAwayError */
  inCompanySql<Result>(companyId: string, work: (client: pg.PoolClient) => Promise<Result>): Promise<Result>;
  /** Answers when the pools of a server do. @throws DatabaseAwayError */
  ping(): Promise<void>;
  close(): Promise<void>;
}

const connectMs = 5_000;
const statementMs = 15_000;
/** A little longer than the server's own limit, so it only ends waits on a server that has stopped answering. */
const answerMs = statementMs + 5_000;
const idleInTransactionMs = 30_000;

interface Options {
  /** As the owner. The other logins follow from it and must have been made by then (`ensureLogins`). */
  databaseUrl: string;
  /** Connections of the application role; signing in takes up to 4 more, a command as the owner another 4. */
  maxConnections?: number;
  onError?: (error: Error) => void;
}

/** Opens the pools; nothing is connected until it is used. */
export function createDatabase({ databaseUrl, maxConnections = 16, onError = () => {} }: Options): Database {
  const logins = loginsOf(databaseUrl);
  const pool = createPool(logins.app, maxConnections, '-c role=underlath_app', onError);
  const peoplePool = createPool(logins.people, 4, '-c role=underlath_people', onError);
  const ownerPool = createPool(databaseUrl, 4, undefined, onError);
  const app = new PrismaClient({ adapter: new PrismaPg(pool) });
  const people = new PrismaClient({ adapter: new PrismaPg(peoplePool) });
  const owner = new PrismaClient({ adapter: new PrismaPg(ownerPool) });

  const transact: Database['behindFence'] = (fence, work, { timeoutMs = statementMs, isolationLevel } = {}) =>
    orAway(() =>
      app.$transaction(
        async (tx) => {
          await setFence(tx, fence);
          return work(tx);
        },
        { timeout: timeoutMs, maxWait: connectMs, ...(isolationLevel && { isolationLevel }) },
      ),
    );
  const joined = new AsyncLocalStorage<JoinedWork>();
  const behindFence: Database['behindFence'] = (fence, work, options) => {
    const around = joined.getStore();
    if (!around?.isOpen) return transact(fence, work, options);
    if (options?.isolationLevel) throw new Error('work that joins a transaction has no isolation level of its own');
    return orAway(() => around.join(fence, (tx, inner) => joined.run(inner, () => work(tx))));
  };

  return {
    owner,
    people,
    app,
    pool,
    peoplePool,
    ownerPool,
    behindFence,
    inCompany: (companyId, work, options) =>
      behindFence({ companyId, ...(options?.userId && { userId: options.userId }) }, work, options),
    asOne: (fence, work) =>
      transact(fence, async (tx) => {
        const around = new JoinedWork(tx, fence);
        try {
          return await joined.run(around, () => work(tx));
        } finally {
          around.isOpen = false;
        }
      }),
    inCompanySql: (companyId, work) => orAway(() => readInCompany(pool, companyId, work)),
    ping: () =>
      orAway(async () => {
        await Promise.all([pool.query('select 1'), peoplePool.query('select 1')]);
      }),
    close: async () => {
      await Promise.all([app.$disconnect(), people.$disconnect(), owner.$disconnect()]);
      await Promise.all([pool.end(), peoplePool.end(), ownerPool.end()]);
    },
  };
}

function createPool(
  connectionString: string,
  max: number,
  options: string | undefined,
  onError: (error: Error) => void,
) {
  const pool = new pg.Pool({
    connectionString,
    max,
    ...(options && { options }),
    application_name: 'underlath',
    connectionTimeoutMillis: connectMs,
    idleTimeoutMillis: 30_000,
    statement_timeout: statementMs,
    query_timeout: answerMs,
    idle_in_transaction_session_timeout: idleInTransactionMs,
    keepAlive: true,
  });
  // Without a listener, an idle connection that the server closes would end the process.
  pool.on('error', ({ message }) => onError(new Error(`a database connection was lost: ${message}`)));
  return pool;
}

async function readInCompany<Result>(
  pool: pg.Pool,
  companyId: string,
  work: (client: pg.PoolClient) => Promise<Result>,
) {
  const client = await pool.connect();
  try {
    // Both in one round trip; several statements at once take no parameters, so the driver quotes the id.
    const company = client.escapeLiteral(companyId);
    await client.query(`begin read only; select set_config('app.company_id', ${company}, true)`);
    const result = await work(client);
    // A read has nothing to lose at its end, so the answer does not wait for it.
    client.query('commit').then(
      () => client.release(),
      (failure: Error) => client.release(failure),
    );
    return result;
  } catch (error) {
    await client.query('rollback').then(
      () => client.release(),
      (failure: Error) => client.release(failure),
    );
    throw error;
  }
}
