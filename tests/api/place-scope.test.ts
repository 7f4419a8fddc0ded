import type { ChangeOrder, Estimate, PlaceScope } from '@underlath/contract';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { startTestApi, type TestApi } from '../support/api.ts';
import { type Job, startJob } from '../support/offers.ts';
import { someId } from '../support/site.ts';

const v1 = '/api/v1';
let api: TestApi;
let job: Job;

beforeAll(async () => {
  api = await startTestApi();
});
afterAll(() => api.close());

async function start(): Promise<void> {
  job = await startJob(api);
}
const scope = async (query = '') =>
  (await api.http(job.owner).get(`${v1}/locations/${job.wallId}/scope${query}`).expect(200)).body as PlaceScope;
const patch = (version: number, change: object) =>
  api.http(job.owner).patch(`${v1}/locations/${job.wallId}`).set('if-match', `"${version}"`).send(change);

test('a place without findings has nothing to do', async () => {
  await start();
  expect(await scope()).toMatchObject({ findings: [], scope: { operations: [], workingDays: 0 } });
});

test('two findings in one spot open it once, in an order, with a hold point before it is closed', async () => {
  await start();
  const [one, two] = [await job.note(), await job.priced()];
  const { findings, scope: plan } = await scope();
  expect(findings).toMatchObject([
    { id: one.id, included: true, proposed: true, repairs: [expect.stringContaining('Tie')] },
    { id: two.id, included: true, proposed: false },
  ]);
  expect(plan.naive.stripSf).toBeCloseTo(2 * plan.unions.stripSf, 9);
  const opened = plan.operations.filter(({ operation }) => operation === 'open-finish');
  expect(opened).toMatchObject([{ for: [one.id, two.id] }]);
  const close = plan.operations.find(({ operation }) => operation === 'close-finish');
  const hold = plan.operations.find(({ holdPoint }) => holdPoint);
  expect(close?.after).toContain(hold?.id);
  expect(plan.shares.reduce((sum, { shareHours }) => sum + shareHours, 0)).toBeCloseTo(plan.totalHours.likely, 6);
});

test('leaving one out is worked out again, and names what would be closed over', async () => {
  const before = await scope();
  const [first] = before.findings;
  const after = await scope(`?declined=${first?.id}`);
  expect(after.findings[0]).toMatchObject({ id: first?.id, included: false });
  expect(after.scope.totalHours.likely).toBeLessThan(before.scope.totalHours.likely);
  expect(after.scope.conflicts).toMatchObject([{ finding: first?.id }]);
  const strange = await api.http(job.owner).get(`${v1}/locations/${job.wallId}/scope?declined=${someId()}`);
  expect([strange.status, strange.body.errors[0].pointer]).toEqual([422, '/declined']);
});

test('more hands on the longest chain of steps do not make a day shorter than the chain', async () => {
  const { scope: two } = await scope('?crewSize=2&hoursPerDay=1');
  const { scope: four } = await scope('?crewSize=4&hoursPerDay=1');
  const chain = two.operations.filter(({ id }) => two.criticalPath.includes(id));
  const chainHours = chain.reduce((sum, { hours }) => sum + hours.likely, 0);
  expect(two.workingDays).toBeGreaterThan(1);
  expect(four.workingDays).toBeGreaterThanOrEqual(Math.floor(chainHours / 2));
  await api.http(job.owner).get(`${v1}/locations/${job.wallId}/scope?crewSize=0`).expect(422);
});

test('the crew of the cost book counts, in the scope and in the days of a change order', async () => {
  await start();
  const finding = await job.priced();
  const usual = await scope();
  expect(usual).toMatchObject({ crewSize: 2, hoursPerDay: 8 });
  const { book, version } = (await api.http(job.owner).get(`${v1}/cost-book`).expect(200)).body;
  await api
    .http(job.owner)
    .put(`${v1}/cost-book`)
    .set('if-match', `"${version}"`)
    .send({ book: { ...book, crewSize: 1, hoursPerDay: 6 } })
    .expect(200);
  const own = await scope();
  expect(own).toMatchObject({ crewSize: 1, hoursPerDay: 6 });
  expect(own.scope.workingDays).toBe(Math.ceil(own.scope.totalHours.likely / 6));
  expect(await scope('?crewSize=2&hoursPerDay=8')).toEqual(usual);
  const order = await job.draft([finding.id]);
  expect(order.days).toBe(own.scope.workingDays);
  expect(order.wording.note.en).toContain('for 1 person at 6 hours a day');
});

test('what the contract does already is credited in the scope, the price and the change order', async () => {
  await start();
  const { id } = await job.priced();
  const order = await job.draft([id]);
  const price = async () =>
    ((await api.http(job.owner).get(`${v1}/findings/${id}/estimate`).expect(200)).body as Estimate).scope;
  const before = await price();
  const stripped = before.lines.find(({ operation }) => operation === 'open-finish');
  expect(stripped?.totalCents).toBeGreaterThan(0);
  const place = (await patch(1, { existing: ['stripped'] }).expect(200)).body;
  expect(place.existing).toEqual(['stripped']);
  expect((await scope()).scope.credits).toMatchObject([{ operation: 'open-finish' }]);
  const after = await price();
  expect(after.subtotalCents).toBe(before.subtotalCents - (stripped?.totalCents ?? 0));
  const now = (await api.http(job.owner).get(`${v1}/change-orders/${order.id}`).expect(200)).body as ChangeOrder;
  expect(now.totalCents).toBe(after.totalCents);
});

test('the approved nails of the place are counted in a new panel, not the least nailing', async () => {
  await start();
  const { id, version } = await job.note();
  await api
    .http(job.owner)
    .put(`${v1}/findings/${id}/estimate`)
    .set('if-match', `"${version}"`)
    .send({ choices: [{ repairId: 'panel-replace' }] })
    .expect(200);
  const least = (await scope()).scope;
  await patch(1, { edgeNailSpacingIn: 3, fieldNailSpacingIn: 12 }).expect(200);
  const approved = (await scope()).scope;
  expect(approved.unions.panelNails).toBeGreaterThan(least.unions.panelNails);
  const nails = (from: typeof least) => from.operations.find(({ operation }) => operation === 'panel-nails');
  expect([nails(least)?.assumed, nails(approved)?.assumed]).toEqual([true, false]);
  const refused = await patch(2, { edgeNailSpacingIn: 0 });
  expect([refused.status, refused.body.errors[0].pointer]).toEqual([422, '/edgeNailSpacingIn']);
});

test('a change order takes the days of its steps in order, place after place', async () => {
  await start();
  const order = await job.draft([(await job.priced()).id, (await job.priced()).id]);
  const { scope: plan } = await scope();
  expect(order.days).toBe(plan.workingDays);
});
