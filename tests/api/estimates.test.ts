import type { Estimate } from '@underlath/contract';
import { starterCostBook } from '@underlath/rules';
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

const get = async (id: string) =>
  (await api.http(job.owner).get(`${v1}/findings/${id}/estimate`).expect(200)).body as Estimate;
const save = (id: string, version: number, body: object) =>
  api.http(job.owner).put(`${v1}/findings/${id}/estimate`).set('if-match', `"${version}"`).send(body);

test('suggests the repair of the judgment with amounts from the measurements, and says how each line came about', async () => {
  const { id } = await job.note();
  const estimate = await get(id);
  expect(estimate).toMatchObject({ saved: false, choices: [{ repairId: 'plate-tie' }] });
  const nails = estimate.scope.lines.find(({ operation }) => operation === 'tie-nails');
  expect(nails).toMatchObject({ quantity: 16, findingIds: [id] });
  expect(nails?.steps[0]?.en).toBe('Nails asked on both sides: 16.');
  for (const line of estimate.scope.lines) {
    const { laborCents, materialCents, taxCents, equipmentCents, subcontractCents, otherCents, totalCents } = line;
    expect(laborCents + materialCents + taxCents + equipmentCents + subcontractCents + otherCents).toBe(totalCents);
  }
});

test('saving makes the finding priced, counts its version up and leaves an event; an older version is refused', async () => {
  const { id, version } = await job.note();
  const { choices } = await get(id);
  const saved = (await save(id, version, { choices }).expect(200)).body as Estimate;
  expect(saved).toMatchObject({ saved: true, findingVersion: version + 1 });
  const finding = (await api.http(job.owner).get(`${v1}/findings/${id}`).expect(200)).body;
  expect(finding).toMatchObject({ state: 'priced', linesCents: saved.scope.subtotalCents });
  await save(id, version, { choices }).expect(412);
  const record = await api.http(job.owner).get(`${v1}/projects/${job.project.id}/record?limit=1`).expect(200);
  expect(record.body.items[0]).toMatchObject({ type: 'finding.priced', subjectId: id });
});

test('a replaced quantity keeps its reason, in the price and afterwards', async () => {
  const { id, version } = await job.note();
  const choices = [{ repairId: 'plate-tie', quantities: { 'open-finish': { value: 20, why: 'Tile on both sides' } } }];
  await save(id, version, { choices }).expect(200);
  const estimate = await get(id);
  const opened = estimate.scope.lines.find(({ operation }) => operation === 'open-finish');
  expect(opened?.quantity).toBe(20);
  expect(opened?.steps[0]?.en).toBe('Set by the estimator: Tile on both sides');
  expect(estimate.choices).toEqual(choices);
});

test('a line typed by hand is in the price to the cent and carries overhead and profit like the others', async () => {
  const { id, version } = await job.note();
  const manual = { title: 'Crane half a day', quantity: 0.5, unit: 'day', unitCents: 123_457, why: 'No other access' };
  const { scope } = (await save(id, version, { choices: [], manualLines: [manual] }).expect(200)).body as Estimate;
  expect(scope.lines).toHaveLength(1);
  // Half a cent is rounded away from zero.
  expect(scope.lines[0]).toMatchObject({ operation: 'manual', unit: 'day', otherCents: 61_729, totalCents: 61_729 });
  const overhead = Math.round((61_729 * starterCostBook.overheadPct) / 100);
  expect(scope.overheadCents).toBe(overhead);
  expect(scope.totalCents).toBe(61_729 + overhead + scope.profitCents);
});

test('a rate the book lacks is a gap and no zero, and keeps a change order from being sent', async () => {
  const other = await startJob(api);
  const book = structuredClone(starterCostBook);
  const nails = book.items.find(({ operation }) => operation === 'tie-nails');
  if (nails) nails.materialCentsPerUnit = null;
  await api.http(other.owner).put(`${v1}/cost-book`).set('if-match', '"0"').send({ book }).expect(200);
  const finding = await other.priced();
  expect(finding.linesCents).toBeNull();
  const estimate = (await api.http(other.owner).get(`${v1}/findings/${finding.id}/estimate`).expect(200))
    .body as Estimate;
  expect(estimate.scope.gaps).toMatchObject([{ operation: 'tie-nails', findingIds: [finding.id] }]);
  expect(estimate.scope.lines.some(({ operation }) => operation === 'tie-nails')).toBe(false);
  const order = await other.draft([finding.id]);
  expect(order.blocks.join()).toContain('The cost book has no rate for');
});

test('an unknown repair, one chosen twice and an amount it does not have are pointed at', async () => {
  const { id, version } = await job.note();
  const choices = [
    { repairId: 'gold-plating' },
    { repairId: 'plate-tie', quantities: { 'shore-load': { value: 1, why: 'x' } } },
    { repairId: 'plate-tie' },
  ];
  const refused = await save(id, version, { choices }).expect(422);
  expect(refused.body.errors.map(({ pointer }: { pointer: string }) => pointer)).toEqual([
    '/choices/0/repairId',
    '/choices/1/quantities/shore-load',
    '/choices/2/repairId',
  ]);
});

test('what a client has before them is priced by what was sent', async () => {
  const { id, version } = await job.priced();
  const sent = await job.send(await job.draft([id]));
  const finding = (await api.http(job.owner).get(`${v1}/findings/${id}`).expect(200)).body;
  expect(finding.version).toBeGreaterThan(version);
  const refused = await save(id, finding.version, { choices: [] }).expect(409);
  expect(refused.body.detail).toContain('Edit its change order first');
  const book = { ...structuredClone(starterCostBook), overheadPct: 50 };
  await api.http(job.owner).put(`${v1}/cost-book`).set('if-match', '"0"').send({ book }).expect(200);
  const after = await api.http(job.owner).get(`${v1}/change-orders/${sent.changeOrder.id}`).expect(200);
  expect(after.body.draft.price).toEqual(sent.changeOrder.draft.price);
});
