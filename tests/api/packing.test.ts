import { gzipSync } from 'node:zlib';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { startTestApi, type TestApi } from '../support/api.ts';
import { type Job, startJob } from '../support/offers.ts';
import { v1 } from '../support/site.ts';

let api: TestApi;
let job: Job;

beforeAll(async () => {
  api = await startTestApi();
  job = await startJob(api);
});
afterAll(() => api.close());

const read = (path: string, encodings: string) =>
  fetch(api.url + v1 + path, { headers: { cookie: job.owner.cookie, 'accept-encoding': encodings } });

test('what is read goes out packed to who takes it, with its version, and says the same', async () => {
  const path = `/findings/${(await job.priced()).id}/estimate`;
  const [packed, plain] = [await read(path, 'gzip'), await read(path, 'identity')];
  expect([packed.headers.get('content-encoding'), plain.headers.get('content-encoding')]).toEqual(['gzip', null]);
  expect(packed.headers.get('vary')?.toLowerCase()).toContain('accept-encoding');
  expect(packed.headers.get('etag')).toBe(plain.headers.get('etag'));
  expect(await packed.json()).toEqual(await plain.json());
});

test('what fits into a packet stays as it is', async () => {
  const answer = await read('/projects/018f0000-0000-7000-8000-000000000000', 'gzip');
  expect([answer.status, answer.headers.get('content-encoding')]).toEqual([404, null]);
});

test('what a change answers is not packed: it may hold a secret that is told once', async () => {
  const order = await job.draft([(await job.priced()).id]);
  const sent = await fetch(`${api.url}${v1}/change-orders/${order.id}/send`, {
    method: 'POST',
    headers: {
      ...{ cookie: job.owner.cookie, 'accept-encoding': 'gzip', 'content-type': 'application/json' },
      'if-match': `"${order.version}"`,
    },
    body: '{"withEnglish":true}',
  });
  expect([sent.status, sent.headers.get('content-encoding')]).toEqual([200, null]);
  expect((await sent.json()).link).toMatch(/\/c\/\w{10}#/);
});

test('a packed body is not unpacked', async () => {
  const body = gzipSync(JSON.stringify({ name: 'North wall', kind: 'wall' }));
  const answer = await fetch(`${api.url}${v1}/projects/${job.project.id}/locations`, {
    method: 'POST',
    headers: { cookie: job.owner.cookie, 'content-type': 'application/json', 'content-encoding': 'gzip' },
    body,
  });
  expect([400, 415, 422]).toContain(answer.status);
});
