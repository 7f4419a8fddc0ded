import { connect } from 'node:net';
import type { ChangeOrder } from '@underlath/contract';
import pg from 'pg';
import { afterAll, beforeAll, beforeEach, expect, test } from 'vitest';
import { startTestApi, type TestApi } from '../support/api.ts';
import { type Job, startJob } from '../support/offers.ts';
import { type Serving, startServing } from '../support/serve.ts';

const v1 = '/api/v1';
/** Goes on working on the same database when the other process is dead. */
let api: TestApi;
let job: Job;
let doomed: Serving;
let watcher: pg.Client;

beforeAll(async () => {
  api = await startTestApi();
  job = await startJob(api);
  watcher = new pg.Client({ connectionString: api.databaseUrl });
  await watcher.connect();
});
beforeEach(async () => {
  doomed = await startServing({ DATABASE_URL: api.databaseUrl, DATA_DIR: api.dataDir, WORKER: 'none' });
}, 90_000);
afterAll(async () => {
  await watcher.end();
  await api.close();
});

interface Post {
  path: string;
  cookie: string;
  key: string;
  body: object;
  ifMatch?: number;
}

/** Sends a request whose answer nobody will ever read. */
function postUnheard(url: string, { path, cookie, key, body, ifMatch }: Post): void {
  const { hostname, port } = new URL(url);
  const text = JSON.stringify(body);
  const head = [
    `POST ${v1}${path} HTTP/1.1`,
    `host: ${hostname}`,
    `cookie: ${cookie}`,
    'content-type: application/json',
    `content-length: ${Buffer.byteLength(text)}`,
    `idempotency-key: ${key}`,
    ...(ifMatch === undefined ? [] : [`if-match: "${ifMatch}"`]),
  ];
  const socket = connect(Number(port), hostname).pause();
  // The server at its other end is about to die.
  socket.on('error', () => {});
  socket.write(`${head.join('\r\n')}\r\n\r\n${text}`);
}

const repeat = ({ path, cookie, key, body, ifMatch }: Post) => {
  const post = api
    .http()
    .post(v1 + path)
    .set('cookie', cookie)
    .set('idempotency-key', key);
  return (ifMatch === undefined ? post : post.set('if-match', `"${ifMatch}"`)).send(body);
};

const rowsOf = async (sql: string) => (await watcher.query<{ id: string }>(sql, [job.project.id])).rows;
const payments = () => rowsOf('select id from contract_entry where project_id = $1');
const questions = () =>
  rowsOf('select q.id from question q join change_order o on o.id = q.change_order_id where o.project_id = $1');
const sent = (order: ChangeOrder) =>
  rowsOf(
    `select v.version::text as id from change_order_version v join change_order o on o.id = v.change_order_id
     where o.project_id = $1 and o.number = ${order.number}`,
  );

const payment = (key: string): Post => ({
  path: `/projects/${job.project.id}/contract/entries`,
  cookie: job.owner.cookie,
  key,
  body: { kind: 'payment', name: 'Framing draw', happenedOn: '2026-03-09', cents: 777_700 },
});

test('killed between commit and answer, the same keys answer what was done once: payment, question, and a link shown once', async () => {
  const asked = await job.send(await job.draft([(await job.priced()).id]));
  const letter = await job.open(asked.link);
  const order = await job.draft([(await job.priced({ title: 'Second plate' })).id]);
  const posts = {
    payment: payment('pay-the-framing-once'),
    question: {
      path: `${letter.path.replace('/api/v1', '')}/questions`,
      cookie: letter.cookie,
      key: 'ask-once',
      body: { version: 1, name: 'Ines Wren', text: 'Does the wall stay up meanwhile?' },
    },
    send: {
      path: `/change-orders/${order.id}/send`,
      cookie: job.owner.cookie,
      key: 'send-once',
      body: { withEnglish: true },
      ifMatch: order.version,
    },
  };
  for (const post of Object.values(posts)) postUnheard(doomed.url, post);
  const done = async () => [(await payments()).length, (await questions()).length, (await sent(order)).length];
  await expect.poll(done, { timeout: 30_000, interval: 5 }).toEqual([1, 1, 1]);
  await doomed.end('SIGKILL');

  const [paid] = await payments();
  const [question] = await questions();
  expect((await repeat(posts.payment).expect(201)).body.id).toBe(paid?.id);
  expect((await repeat(posts.question).expect(201)).body.id).toBe(question?.id);
  const again = await repeat(posts.send).expect(200);
  expect(again.headers['idempotency-replayed']).toBe('true');
  await job.open(again.body.link);
  expect(await done()).toEqual([1, 1, 1]);
}, 120_000);

test('killed before the commit, nothing of it stands and the key is free again at once', async () => {
  const before = (await payments()).length;
  const post = payment('pay-the-roof-once');
  await watcher.query('begin');
  await watcher.query('select 1 from record_head where project_id = $1 for update', [job.project.id]);
  postUnheard(doomed.url, post);
  const waits = async () => {
    const { rows } = await api.platform.database.ownerPool.query(
      `select 1 from pg_stat_activity where wait_event_type = 'Lock' and datname = current_database()`,
    );
    return rows.length;
  };
  await expect.poll(waits, { timeout: 30_000 }).toBeGreaterThan(0);
  expect((await repeat(post)).body.type).toMatch(/still-running$/);
  await doomed.end('SIGKILL');
  await watcher.query('commit');
  // The dead process's connection ends on its own as soon as the lock it waited for is free.
  await expect.poll(async () => (await repeat(post)).status, { timeout: 5_000, interval: 200 }).toBe(201);
  expect((await repeat(post)).headers['idempotency-replayed']).toBe('true');
  expect(await payments()).toHaveLength(before + 1);
}, 120_000);
