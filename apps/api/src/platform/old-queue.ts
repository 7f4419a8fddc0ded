import pg from 'pg';
import type { Db } from 'pg-boss';

/** Versions of the queue's tables below this are too old for the library to migrate. */
const oldestKnown = 25;
const asideOf = (schema: string) => `${schema}_before_${oldestKnown}`;

/**
 * Puts tables of the queue aside that are too old for the library, so that it makes new ones; `carryJobsOver` then takes
 * their jobs along. As the owner; a process that is killed between the two leaves nothing undone for the next one.
 */
export async function setOldQueueAside(client: pg.Client, schema: string): Promise<void> {
  if (!(await isThere(client, `${schema}.version`))) return;
  const { rows } = await client.query<{ version: number }>(`select version from ${schema}.version`);
  if ((rows[0]?.version ?? oldestKnown) >= oldestKnown) return;
  await client.query(`alter schema ${schema} rename to ${asideOf(schema)}`);
}

/** Whether jobs still wait where `setOldQueueAside` has put them: a start was killed before it carried them over. */
export async function isOldQueueAside(db: Db, schema: string): Promise<boolean> {
  const { rows } = await db.executeSql('select to_regnamespace($1) is not null as aside', [asideOf(schema)]);
  return rows[0]?.aside === true;
}

/** Jobs that wait, those a stopped worker had begun, and those that failed for good move to the new tables once. */
export async function carryJobsOver(client: pg.Client, schema: string): Promise<void> {
  const aside = asideOf(schema);
  if (!(await isThere(client, `${aside}.job`))) return;
  await client.query('begin');
  await client.query(
    `insert into ${schema}.job (id, name, data, state, retry_limit, retry_count, retry_delay, retry_backoff,
       expire_seconds, start_after, created_on, completed_on, keep_until, output, policy)
     select id, name, data, (case state::text when 'active' then 'retry' else state::text end)::${schema}.job_state,
       retry_limit, retry_count, retry_delay, retry_backoff, extract(epoch from expire_in)::int, start_after, created_on,
       completed_on, greatest(keep_until, now() + interval '1 day'), output, 'standard'
     from ${aside}.job old
     where state::text in ('created', 'retry', 'active', 'failed')
       and exists (select 1 from ${schema}.queue q where q.name = old.name)
     on conflict do nothing`,
  );
  await client.query(`drop schema ${aside} cascade`);
  await client.query('commit');
}

async function isThere(client: pg.Client, table: string): Promise<boolean> {
  const { rows } = await client.query<{ there: boolean }>('select to_regclass($1) is not null as there', [table]);
  return rows[0]?.there === true;
}

/** One process at a time makes the queue's tables; the turn ends with the connection, and an open transaction is undone. */
export async function inInstallTurn(databaseUrl: string, work: (client: pg.Client) => Promise<void>): Promise<void> {
  const client = new pg.Client({ connectionString: databaseUrl });
  await client.connect();
  try {
    await client.query(`select pg_advisory_lock(hashtext('queue tables'))`);
    await work(client);
  } finally {
    await client.end();
  }
}
