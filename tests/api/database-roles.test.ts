import pg from 'pg';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { loginsOf } from '../../apps/api/src/platform/database/logins.ts';
import { newId } from '../../apps/api/src/platform/ids.ts';
import { startTestApi, type TestApi } from '../support/api.ts';
import { type Job, startJob } from '../support/offers.ts';
import { fixture, upload, v1 } from '../support/site.ts';

let api: TestApi;
let job: Job;
let clients: Record<'app' | 'people' | 'queue', pg.Client>;
/** As the features' connections, on behalf of the job's company. */
const asApp = async (sql: string, ...values: unknown[]) => {
  await clients.app.query('begin');
  try {
    await clients.app.query(
      `set local role underlath_app; select set_config('app.company_id', $$${companyId()}$$, true)`,
    );
    return await clients.app.query(sql, values);
  } finally {
    await clients.app.query('rollback');
  }
};
const companyId = () => job.owner.companyId;

beforeAll(async () => {
  api = await startTestApi();
  job = await startJob(api);
  const logins = loginsOf(api.databaseUrl);
  const open = async (connectionString: string) => {
    const client = new pg.Client({ connectionString });
    await client.connect();
    return client;
  };
  clients = { app: await open(logins.app), people: await open(logins.people), queue: await open(logins.queue) };
});
afterAll(async () => {
  for (const client of Object.values(clients)) await client.end();
  await api.close();
});

describe('the logins of the program', () => {
  test('are neither owner nor superuser, and cannot become one', async () => {
    for (const client of Object.values(clients)) {
      const { rows } = await client.query(
        `select r.rolsuper or r.rolbypassrls or r.rolcreaterole or r.rolcreatedb or r.rolreplication as mighty,
           exists(select 1 from pg_roles o where pg_has_role(session_user, o.oid, 'MEMBER')
             and (o.rolsuper or o.rolbypassrls or o.rolname = 'underlath_owner')) as becomes,
           exists(select 1 from pg_class c where c.relowner = r.oid) as owns
         from pg_roles r where rolname = session_user`,
      );
      expect(rows).toEqual([{ mighty: false, becomes: false, owns: false }]);
      await expect(client.query('set role underlath_owner')).rejects.toThrow(/permission denied/);
      await expect(client.query(`alter role ${client.user} superuser`)).rejects.toThrow(/permission denied/);
    }
  });

  test('give back nothing when a connection drops its role', async () => {
    for (const client of Object.values(clients)) {
      await client.query('set role none');
      for (const table of ['company', 'app_user', 'session', 'event', 'pgboss.job'])
        await expect(client.query(`select * from ${table}`)).rejects.toThrow(/permission denied/);
    }
  });

  test('have each what their work takes: no company’s rows to signing in, no people to features', async () => {
    await clients.people.query('set role underlath_people');
    for (const table of ['project', 'finding', 'decision', 'api_key', 'pgboss.job'])
      await expect(clients.people.query(`select * from ${table}`)).rejects.toThrow(/permission denied/);
    await expect(clients.people.query(`update member set role = 'owner'`)).rejects.toThrow(/permission denied/);
    // Of the log of people, and of mail, what people do to their own accounts and nothing else.
    const { rows } = await clients.people.query(
      'select distinct type from people_event union select kind::text from mail',
    );
    expect(
      rows.filter(({ type }) => !/^(sign-in|device|password|email|name|second|passkey|recovery|account)/.test(type)),
    ).toEqual([]);
    await expect(
      clients.people.query(
        `insert into people_event (company_id, id, at, type, actor_kind, actor_name, data)
         values ($1, gen_random_uuid(), now(), 'member.role-changed', 'member', 'Nobody', '{}')`,
        [job.owner.companyId],
      ),
    ).rejects.toThrow(/row-level security/);
    await clients.queue.query('set role underlath_queue');
    for (const table of ['company', 'app_user', 'member'])
      await expect(clients.queue.query(`select * from ${table}`)).rejects.toThrow(/permission denied/);
    for (const table of ['app_user', 'session', 'account'])
      await expect(asApp(`select * from ${table}`)).rejects.toThrow(/permission denied/);
    for (const other of ['underlath_people', 'underlath_queue'])
      await expect(clients.app.query(`set role ${other}`)).rejects.toThrow(/permission denied/);
  });

  test('are all that a server that serves is connected as', async () => {
    await api.http(job.owner).get(`${v1}/projects`).expect(200);
    await api.http().post(`${v1}/session`).send({ email: job.owner.email, password: job.owner.password }).expect(200);
    await api.http().get('/readyz').expect(200);
    const { rows } = await clients.app.query(
      `select distinct usename from pg_stat_activity where datname = current_database() order by 1`,
    );
    expect(rows.map(({ usename }) => usename)).toEqual([
      'underlath_owner_app',
      'underlath_owner_people',
      'underlath_owner_queue',
    ]);
  });
});

describe('the database refuses to features', () => {
  test('a head that goes back, or another hash in its place', async () => {
    await asApp('update record_head set seq = seq + 1, hash = repeat($1, 64)', 'a');
    await expect(asApp('update record_head set seq = seq - 1')).rejects.toThrow(/only moves on/);
    await expect(asApp('update record_head set hash = repeat($1, 64)', 'a')).rejects.toThrow(/only moves on/);
    await expect(asApp('update record_head set project_id = gen_random_uuid()')).rejects.toThrow(/only moves on/);
  });

  test('other bytes in a photo', async () => {
    expect((await upload(api, job.owner, job.project.id, fixture('plain.png'))).status).toBe(201);
    expect((await asApp(`update photo set caption = 'Plate'`)).rowCount).toBe(1);
    for (const change of [`sha256 = repeat('0', 64)`, `file_key = 'x'`, 'byte_count = 1'])
      await expect(asApp(`update photo set ${change}`)).rejects.toThrow(/given once/);
  });

  test('other words in a question, and a second answer', async () => {
    const sent = await job.send(await job.draft([(await job.priced()).id]));
    await api.platform.database.inCompany(companyId(), (tx) =>
      tx.question.create({
        data: {
          companyId: companyId(),
          id: newId(),
          changeOrderId: sent.changeOrder.id,
          version: 1,
          name: 'Dana',
          text: 'Why?',
          askedAt: new Date(),
        },
      }),
    );
    await expect(asApp(`update question set text = 'Fine by me'`)).rejects.toThrow(/may change/);
    await expect(asApp(`update question set name = 'Ines'`)).rejects.toThrow(/may change/);
    await api.platform.database.inCompany(companyId(), (tx) =>
      tx.question.updateMany({ data: { answer: 'Rot', answeredAt: new Date(), answeredById: job.owner.memberId } }),
    );
    await expect(asApp(`update question set answer = 'Nothing'`)).rejects.toThrow(/given once/);
  });

  test('a link that comes back to life, or opens by another secret', async () => {
    await api.platform.database.inCompany(companyId(), (tx) =>
      tx.clientLink.updateMany({ data: { revokedAt: new Date() } }),
    );
    await expect(asApp('update client_link set revoked_at = null')).rejects.toThrow(/given once/);
    await expect(asApp(`update client_link set token_hash = id::text`)).rejects.toThrow(/may change/);
  });

  test('another amount, or other hours, in the place of what was entered', async () => {
    const now = new Date();
    const by = { companyId: companyId(), projectId: job.project.id, enteredAt: now, enteredById: job.owner.memberId };
    const finding = await job.note();
    await api.platform.database.inCompany(companyId(), async (tx) => {
      await tx.contractEntry.create({
        data: { ...by, id: newId(), kind: 'payment', name: 'Deposit', happenedOn: now, cents: 1 },
      });
      const work = { operation: 'plate-tie', unit: 'each', quantity: 1, hours: 2, costCents: 0, doneOn: now };
      await tx.actual.create({ data: { ...by, ...work, id: newId(), findingId: finding.id } });
    });
    await expect(asApp('update contract_entry set cents = 2')).rejects.toThrow(/may change/);
    await expect(asApp('update actual set hours = 1')).rejects.toThrow(/may change/);
    expect((await asApp(`update actual set taken_back_at = now(), taken_back_why = 'x'`)).rowCount).toBe(1);
  });

  test('to remove people, keys, invitations, change orders and mail', async () => {
    for (const table of ['member', 'invitation', 'api_key', 'change_order', 'mail', 'photo', 'question', 'client_link'])
      await expect(asApp(`delete from ${table}`)).rejects.toThrow(/permission denied/);
  });
});
