import pg from 'pg';

/** Versions of the queue's tables below this are too old for the library to migrate. */
const oldestKnown = 25;
const asideOf = (schema: string) => `${schema}_before_${oldestKnown}`;

/**
 * Puts tables of the queue aside that are too old for the library, so that it makes new ones; `carryJobsOver` then takes
 * their jobs along. As the owner; a process that is killed between the two leaves nothing undone for the next one.
 */
export async function setOldQueueAside(databaseUrl: string, schema: string): Promise<void> {
  await inTurn(databaseUrl, async (client) => {
    const { rows } = await client.query<{ exists: boolean }>('select to_regclass($1) is not null as exists', [
      `${schema}.version`,
    ]);
    if (!rows[0]?.exists) return;
    const { rows: versions } = await client.query<{ version: number }>(`select version from ${schema}.version`);
    if ((versions[0]?.version ?? oldestKnown) >= oldestKnown) return;
    await client.query(`alter schema ${schema} rename to ${asideOf(schema)}`);
  });
}

/** Jobs that wait, those a stopped worker had begun, and those that failed for good move to the new tables once. */
export async function carryJobsOver(databaseUrl: string, schema: string): Promise<void> {
  const aside = asideOf(schema);
  await inTurn(databaseUrl, async (client) => {
    const { rows } = await client.query<{ exists: boolean }>('select to_regclass($1) is not null as exists', [
      `${aside}.job`,
    ]);
    if (!rows[0]?.exists) return;
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
  });
}

/** One process at a time, and all of it or nothing. */
async function inTurn(databaseUrl: string, work: (client: pg.Client) => Promise<void>): Promise<void> {
  const client = new pg.Client({ connectionString: databaseUrl });
  await client.connect();
  try {
    await client.query('begin');
    await client.query(`select pg_advisory_xact_lock(hashtext('old queue'))`);
    await work(client);
    await client.query('commit');
  } finally {
    await client.end();
  }
}
