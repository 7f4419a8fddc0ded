import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import * as z from 'zod';
import { newId } from '../../apps/api/src/platform/ids.ts';
import { createQueue, defineJob, handleJob, type Job, type Queue } from '../../apps/api/src/platform/queue.ts';
import { type Person, startTestApi, type TestApi } from '../support/api.ts';

const count = defineJob({ name: 'test.count', data: z.object({ n: z.int() }) });
const fail = defineJob({ name: 'test.fail', data: z.object({ n: z.int() }), retryLimit: 1, retryDelaySeconds: 1 });

let api: TestApi;
let owner: Person;
let queue: Queue;
const seen: number[] = [];
let failures = 0;

beforeAll(async () => {
  api = await startTestApi();
  owner = await api.signIn();
  queue = await createQueue({ databaseUrl: api.databaseUrl, jobs: [count as Job, fail as Job] });
  await queue.work([
    handleJob(count, async ({ data }) => void seen.push(data.n)),
    handleJob(fail, async () => {
      failures += 1;
      throw new Error('the saw is dull');
    }),
  ]);
});
afterAll(async () => {
  await queue.stop();
  await api.close();
});

const enqueue = <Data>(job: Job<Data>, data: Data) =>
  api.platform.database.inCompany(owner.companyId, (tx) => queue.enqueue(tx, job, data));

async function until(what: () => boolean | Promise<boolean>, timeoutMs = 15_000): Promise<void> {
  const deadline = Date.now() + timeoutMs;
  while (!(await what())) {
    if (Date.now() > deadline) throw new Error('it did not happen in time');
    await new Promise((done) => setTimeout(done, 50));
  }
}

describe('the queue', () => {
  test('a job left in a committed transaction is done, once', async () => {
    await enqueue(count, { n: 1 });
    await until(() => seen.includes(1));
    expect(seen.filter((n) => n === 1)).toHaveLength(1);
  });

  test('a job left in a transaction that is rolled back never exists', async () => {
    const { database } = api.platform;
    const undone = database.inCompany(owner.companyId, async (tx) => {
      await queue.enqueue(tx, count, { n: 2 });
      throw new Error('changed my mind');
    });
    await expect(undone).rejects.toThrow('changed my mind');
    const { rows } = await database.ownerPool.query(`select 1 from pgboss.job where data->>'n' = '2'`);
    expect(rows).toEqual([]);
  });

  test('a failing job is tried again, then stands as dead with its reason', async () => {
    await enqueue(fail, { n: 3 });
    await until(async () => (await queue.deadJobs()).length > 0);
    expect(failures).toBe(2);
    expect(await queue.deadJobs()).toMatchObject([{ name: 'test.fail', data: { n: 3 }, reason: 'the saw is dull' }]);
  });

  test('what does not fit a job is refused where it is left', async () => {
    await expect(enqueue(count, { n: 'many' } as unknown as { n: number })).rejects.toThrow(/expected number/);
  });

  test('the application cannot read what others left', async () => {
    await expect(api.platform.database.pool.query('select data from pgboss.job')).rejects.toThrow(/permission denied/);
  });

  test.each([
    ['none', [handleJob(count, async () => {})], 'Job test.fail has 0 handlers'],
    [
      'two',
      [handleJob(count, async () => {}), handleJob(fail, async () => {}), handleJob(fail, async () => {})],
      'Job test.fail has 2 handlers',
    ],
  ])('a job with %s stops the start', async (_how, handlers, message) => {
    const other = await createQueue({ databaseUrl: api.databaseUrl, jobs: [count as Job, fail as Job] });
    await expect(other.work(handlers)).rejects.toThrow(message);
    await other.stop();
  });
});

describe('the outbox', () => {
  test('a letter leaves once its transaction is committed; without SMTP it is a file, and its link is forgotten', async () => {
    const { database, outbox } = api.platform;
    const link = `http://localhost/c/${newId()}`;
    await database.inCompany(owner.companyId, (tx) =>
      outbox.post(
        tx,
        owner.companyId,
        { to: 'client@example.test', subject: 'A change to your house', text: `See ${link}`, locale: 'en' },
        { kind: 'invitation' },
      ),
    );
    const sent = () => database.inCompany(owner.companyId, (tx) => tx.mail.findFirstOrThrow());
    await until(async () => (await sent()).state === 'filed');
    const folder = join(api.dataDir, 'mail');
    const [file = ''] = readdirSync(folder);
    expect(readFileSync(join(folder, file), 'utf8')).toContain(link);
    expect((await sent()).text).toBe('See [link removed after sending]');
  });
});
