import type { Estimate, EstimateRange } from '@underlath/contract';
import { starterCostBook } from '@underlath/rules';
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

const rangeOf = async (path: string) =>
  (await api.http(job.owner).get(`${v1}${path}/range`).expect(200)).body as EstimateRange;

test('a finding’s range stands around its printed price, agrees with its formula, and is the same each time', async () => {
  const { id } = await job.priced();
  const estimate = (await api.http(job.owner).get(`${v1}/findings/${id}/estimate`).expect(200)).body as Estimate;
  const drawn = await rangeOf(`/findings/${id}/estimate`);
  expect(drawn.totalCents).toBe(estimate.scope.totalCents);
  const { range } = drawn;
  if (!range?.analyticMeanCents || !range.analyticSdCents) throw new Error('no range, or none by formula');
  expect(range.p50Cents).toBeLessThan(range.p80Cents);
  expect(range.p80Cents).toBeLessThan(range.p90Cents);
  // Six standard errors of a mean of as many trials; a right build misses it once in 500 million runs.
  const standardErrorCents = range.analyticSdCents / Math.sqrt(drawn.trials);
  expect(Math.abs(range.meanCents - range.analyticMeanCents)).toBeLessThan(6 * standardErrorCents);
  expect(range.drivers.length).toBeGreaterThan(0);
  expect(drawn.seen.es).not.toBe('');
  expect(await rangeOf(`/findings/${id}/estimate`)).toEqual(drawn);
});

test('straight to both ends the same hours spread wider, and only two shapes are known', async () => {
  const { id } = await job.priced();
  const near = await rangeOf(`/findings/${id}/estimate`);
  const { body: straight } = await api
    .http(job.owner)
    .get(`${v1}/findings/${id}/estimate/range?shape=triangular`)
    .expect(200);
  expect([near.shape, straight.shape]).toEqual(['pert-beta', 'triangular']);
  expect(straight.range.analyticSdCents).toBeGreaterThan(near.range?.analyticSdCents ?? Number.NaN);
  await api.http(job.owner).get(`${v1}/findings/${id}/estimate/range?shape=bell`).expect(422);
});

test('the P80 of a change order is less than the P80s of its findings added up', async () => {
  const [one, two] = [await job.priced(), await job.priced()];
  const { id } = await job.draft([one.id, two.id]);
  const together = await rangeOf(`/change-orders/${id}`);
  const apart = await Promise.all([one, two].map((finding) => rangeOf(`/findings/${finding.id}/estimate`)));
  const sum = apart.reduce((total, { range }) => total + (range?.p80Cents ?? Number.NaN), 0);
  expect(together.range?.p80Cents).toBeLessThan(sum);
});

test('without a rate there is no range, and an unknown thing is not found', async () => {
  const other = await startJob(api);
  const book = structuredClone(starterCostBook);
  const nails = book.items.find(({ operation }) => operation === 'tie-nails');
  if (nails) nails.materialCentsPerUnit = null;
  await api.http(other.owner).put(`${v1}/cost-book`).set('if-match', '"0"').send({ book }).expect(200);
  const { id } = await other.priced();
  const answer = await api.http(other.owner).get(`${v1}/findings/${id}/estimate/range`).expect(200);
  expect(answer.body).toMatchObject({ range: null, totalCents: 0 });
  await api.http(job.owner).get(`${v1}/findings/${someId()}/estimate/range`).expect(404);
  await api.http(job.owner).get(`${v1}/change-orders/${someId()}/range`).expect(404);
});
