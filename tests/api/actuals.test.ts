import type { Actual, Estimate, PlannedAgainstTaken, WorkHistory } from '@underlath/contract';
import { FULL_VOICE, starterCostBook } from '@underlath/rules';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { startTestApi, type TestApi } from '../support/api.ts';
import { type Job, startJob } from '../support/offers.ts';
import { someId } from '../support/site.ts';

const v1 = '/api/v1';
let api: TestApi;
let job: Job;

beforeAll(async () => {
  api = await startTestApi();
  job = await startJob(api);
});
afterAll(() => api.close());

async function approved(): Promise<string> {
  const { id } = await job.priced();
  const sent = await job.send(await job.draft([id]));
  const open = await job.open(sent.link);
  const letter = (await api.http().get(open.path).set('cookie', open.cookie).expect(200)).body;
  expect((await job.decide(open, letter)).status).toBe(200);
  return id;
}
const enter = (findingId: string, body: object) =>
  api.http(job.owner).post(`${v1}/findings/${findingId}/actuals`).send(body);
const list = async (findingId: string) =>
  (await api.http(job.owner).get(`${v1}/findings/${findingId}/actuals`).expect(200)).body as {
    items: Actual[];
    work: PlannedAgainstTaken[];
  };
const history = async () =>
  (await api.http(job.owner).get(`${v1}/cost-book/history`).expect(200)).body as {
    costBookVersion: number;
    items: WorkHistory[];
  };
const tie = { operation: 'plate-tie', quantity: 2, hours: 3, costCents: 4_200, doneOn: '2026-03-20' };

test('what it took stands beside what was planned, and several entries of one kind of work add up', async () => {
  const id = await approved();
  const entry = (await enter(id, tie).expect(201)).body as Actual;
  expect(entry).toMatchObject({ ...tie, findingId: id, unit: 'each', note: '', takenBack: null });
  expect(entry.title.es).not.toBe('');
  await enter(id, { ...tie, hours: 1.5, quantity: 1 }).expect(201);
  const { items, work } = await list(id);
  expect(items).toHaveLength(2);
  const estimate = (await api.http(job.owner).get(`${v1}/findings/${id}/estimate`).expect(200)).body as Estimate;
  const line = estimate.scope.lines.find(({ operation }) => operation === 'plate-tie');
  expect(work.find(({ operation }) => operation === 'plate-tie')).toMatchObject({
    planned: { quantity: line?.quantity, hours: line?.hours },
    taken: { quantity: 3, hours: 4.5, costCents: 8_400 },
  });
  expect(work.find(({ operation }) => operation === 'tie-nails')?.taken).toBeNull();
});

test('before the client has approved there is nothing to enter, and unknown work is refused by name', async () => {
  const { id } = await job.priced();
  const early = await enter(id, tie).expect(409);
  expect(early.body.detail).toContain('once the client has approved');
  const unknown = await enter(await approved(), { ...tie, operation: 'sweeping' }).expect(422);
  expect(unknown.body.errors).toMatchObject([{ pointer: '/operation' }]);
  await enter(someId(), tie).expect(404);
});

test('the same id enters once, with other content it is refused', async () => {
  const findingId = await approved();
  const id = someId();
  const first = await enter(findingId, { ...tie, id }).expect(201);
  expect((await enter(findingId, { ...tie, id }).expect(201)).body).toEqual(first.body);
  await enter(findingId, { ...tie, id, hours: 9 }).expect(409);
  expect((await list(findingId)).items).toHaveLength(1);
});

test('an entry taken back stays readable with its reason and counts no more; the record tells both', async () => {
  const findingId = await approved();
  const { id } = (await enter(findingId, tie).expect(201)).body as Actual;
  const back = () => api.http(job.owner).post(`${v1}/actuals/${id}/take-back`).send({ why: 'Wrong wall' });
  expect((await back().expect(200)).body.takenBack).toMatchObject({ why: 'Wrong wall' });
  await back().expect(409);
  const { items, work } = await list(findingId);
  expect(items).toMatchObject([{ id, takenBack: { why: 'Wrong wall' } }]);
  expect(work.find(({ operation }) => operation === 'plate-tie')?.taken).toBeNull();
  const record = await api.http(job.owner).get(`${v1}/projects/${job.project.id}/record?limit=50`).expect(200);
  // The mails of sending and answering are noted whenever the queue gets to them.
  const events = (record.body.items as { type: string; subjectId: string }[]).filter(
    ({ type }) => !type.startsWith('mail.'),
  );
  expect(events.slice(0, 2)).toMatchObject([
    { type: 'actual.taken-back', subjectId: id, data: { reason: 'Wrong wall' } },
    { type: 'actual.entered', subjectId: id, data: { operation: 'plate-tie', hours: 3 } },
  ]);
});

test('jobs done draw a figure beside the book, one job a finding, and the book stays as it is', async () => {
  const other = await startJob(api);
  job = other;
  const book = starterCostBook.items.find(({ operation }) => operation === 'plate-tie')?.hoursPerUnit;
  expect((await history()).items).toEqual([]);
  const findingId = await approved();
  await enter(findingId, { ...tie, quantity: 2, hours: 4 }).expect(201);
  await enter(findingId, { ...tie, quantity: 2, hours: 8 }).expect(201);
  const { costBookVersion, items } = await history();
  expect(costBookVersion).toBe(0);
  expect(items).toMatchObject([
    { operation: 'plate-tie', unit: 'each', jobs: 1, seenPerUnit: 3, lowestPerUnit: 3, highestPerUnit: 3, book },
  ]);
  const likely = book?.likely ?? Number.NaN;
  // One voice beside the book's ten; six places are more than hours are kept to.
  expect(items[0]?.suggested?.likely).toBeCloseTo(likely + (3 - likely) / (1 + FULL_VOICE), 6);
  const after = await api.http(job.owner).get(`${v1}/cost-book`).expect(200);
  expect(after.body).toMatchObject({ version: 0 });
});
