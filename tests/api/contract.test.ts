import type { Contract } from '@underlath/contract';
import { addWorkingDays } from '@underlath/rules';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { startTestApi, type TestApi } from '../support/api.ts';
import { type Job, startJob } from '../support/offers.ts';

const v1 = '/api/v1';
let api: TestApi;
let job: Job;

beforeAll(async () => {
  api = await startTestApi();
  job = await startJob(api);
});
afterAll(() => api.close());

const contract = async () =>
  (await api.http(job.owner).get(`${v1}/projects/${job.project.id}/contract`).expect(200)).body as Contract;

async function answered(days: number, kind: 'approved' | 'declined') {
  const sent = await job.send(await job.draft([(await job.priced()).id], { days }));
  const open = await job.open(sent.link);
  const letter = (await api.http().get(open.path).set('cookie', open.cookie).expect(200)).body;
  expect((await job.decide(open, letter, { kind })).status).toBe(200);
  return sent.changeOrder;
}

test('without changes the sum is the original one and the finish is its working days after the start', async () => {
  expect(await contract()).toMatchObject({
    originalSumCents: 8_400_000,
    approvedChangesCents: 0,
    currentSumCents: 8_400_000,
    pendingCents: 0,
    currentDays: 60,
    startOn: '2026-03-02',
    finishOn: addWorkingDays('2026-03-02', 60),
    approved: [],
    pending: [],
    declined: [],
  });
});

test('approved changes run up the sum in the order they were answered; pending and declined ones stand apart', async () => {
  const first = await answered(2, 'approved');
  const declined = await answered(5, 'declined');
  const second = await answered(3, 'approved');
  const pending = await job.send(await job.draft([(await job.priced()).id], { days: 9 }));
  await job.draft([(await job.priced()).id]);
  const now = await contract();
  const [one, two] = [first.totalCents, second.totalCents];
  expect(now.approved.map(({ number, sumAfterCents, daysAfter }) => [number, sumAfterCents, daysAfter])).toEqual([
    [first.number, 8_400_000 + one, 62],
    [second.number, 8_400_000 + one + two, 65],
  ]);
  expect(now.currentSumCents).toBe(8_400_000 + one + two);
  expect(now.approvedDays).toBe(5);
  expect(now.finishOn).toBe(addWorkingDays('2026-03-02', 65));
  expect(now.pending).toMatchObject([{ changeOrderId: pending.changeOrder.id, sumAfterCents: null }]);
  expect([now.pendingCents, now.pendingDays]).toEqual([pending.changeOrder.totalCents, 9]);
  expect(now.declined.map(({ changeOrderId }) => changeOrderId)).toEqual([declined.id]);
});

test('the letter of the next change starts from the sum that stands', async () => {
  const { currentSumCents, currentDays } = await contract();
  const { draft } = await job.draft([(await job.priced()).id], { days: 4 });
  expect(draft.contract).toMatchObject({
    beforeCents: currentSumCents,
    daysBefore: currentDays,
    daysAfter: currentDays + 4,
  });
  expect(draft.contract.finishAfter).toBe(addWorkingDays('2026-03-02', currentDays + 4));
});

test('someone else’s project is not found', async () => {
  await api
    .http(await api.signIn())
    .get(`${v1}/projects/${job.project.id}/contract`)
    .expect(404);
});
