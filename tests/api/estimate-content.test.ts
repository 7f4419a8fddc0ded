import type { ChangeOrder, ChangeOrderDocument, Estimate, EstimateRange, PlaceScope } from '@underlath/contract';
import { starterCostBook } from '@underlath/rules';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { canonicalJson, sha256Of } from '../../apps/api/src/platform/hash.ts';
import { startTestApi, type TestApi } from '../support/api.ts';
import { type Job, startJob } from '../support/offers.ts';
import { readPdf } from '../support/pdf-text.ts';
import { someId } from '../support/site.ts';

const v1 = '/api/v1';
let api: TestApi;
let job: Job;

beforeAll(async () => {
  api = await startTestApi();
  job = await startJob(api);
});
afterAll(() => api.close());

const why = 'Measured again on site';
const choices = [{ repairId: 'plate-tie', quantities: {} }];
const nails = { operation: 'tie-nails', quantity: 20, materialCentsPerUnit: 300, why };
const both = (words: string) => ({ en: words, es: `${words} (es)` });

const get = async <T = Estimate>(path: string, by = job) =>
  (await api.http(by.owner).get(`${v1}${path}`).expect(200)).body as T;
const put = (id: string, version: number, body: object, by = job) =>
  api.http(by.owner).put(`${v1}/findings/${id}/estimate`).set('if-match', `"${version}"`).send(body);
const preview = (id: string, body: object) =>
  api.http(job.owner).post(`${v1}/findings/${id}/estimate/preview`).send(body);
async function saved(body: object, by = job): Promise<Estimate> {
  const { id, version } = await by.note();
  return (await put(id, version, body, by).expect(200)).body;
}
const nailsOf = (estimate: Estimate) => estimate.scope.lines.find(({ operation }) => operation === 'tie-nails');
const pointers = (answer: { body: { errors: { pointer: string }[] } }) =>
  answer.body.errors.map(({ pointer }) => pointer);

test('a line set by hand says what it was, what it is and why, in the price, the saved estimate and its event', async () => {
  const plain = await saved({ choices });
  const estimate = await saved({ choices, overrides: [nails] });
  const line = nailsOf(estimate);
  const bookCents = nailsOf(plain)?.rates?.materialCentsPerUnit;
  expect(line).toMatchObject({ quantity: 20, rates: { materialCentsPerUnit: 300 } });
  expect(line?.overrides).toEqual([
    { field: 'quantity', was: 16, is: 20, why },
    { field: 'materialCentsPerUnit', was: bookCents, is: 300, why },
  ]);
  expect(estimate.scope.totalCents).toBeGreaterThan(plain.scope.totalCents);
  expect((await get(`/findings/${estimate.findingId}/estimate`)).overrides).toEqual([nails]);
  const record = await get<{ items: { data: object }[] }>(`/projects/${job.project.id}/record?limit=1`);
  expect(record.items[0]).toMatchObject({ type: 'finding.priced', data: { overrides: [nails] } });
});

test('taking what was set by hand away brings the measured quantity and the book back', async () => {
  const before = await saved({ choices });
  const byHand = await saved({ choices, overrides: [nails] });
  const after = (await put(byHand.findingId, byHand.findingVersion, { choices }).expect(200)).body as Estimate;
  const sums = ({ scope: { lines, totalCents } }: Estimate) => ({
    totalCents,
    lines: lines.map(({ findingIds: _ids, ...line }) => line),
  });
  expect(sums(after)).toEqual(sums(before));
  expect(after.scope.lines.some(({ overrides }) => overrides)).toBe(false);
});

test('the range, the days and the change order follow what was set by hand', async () => {
  const longer = { operation: 'plate-tie', hoursPerUnit: 30, why: 'Only one hand fits in' };
  const [plain, byHand] = [await saved({ choices }), await saved({ choices, overrides: [longer] })];
  const rangeOf = (path: string) => get<EstimateRange>(`${path}/range`);
  const range = await rangeOf(`/findings/${byHand.findingId}/estimate`);
  expect(range.totalCents).toBe(byHand.scope.totalCents);
  const spread = (await rangeOf(`/findings/${plain.findingId}/estimate`)).range?.sdCents ?? Number.NaN;
  expect(range.range?.sdCents).toBeGreaterThan(spread);
  const [order, usual] = [await job.draft([byHand.findingId]), await job.draft([plain.findingId])];
  expect(order.draft.price.totalCents).toBe(byHand.scope.totalCents);
  expect(order.draft.price.lines.find(({ operation }) => operation === 'plate-tie')?.overrides).toEqual([
    { field: 'hoursPerUnit', was: 0.75, is: 30, why: longer.why },
  ]);
  expect((await rangeOf(`/change-orders/${order.id}`)).totalCents).toBe(order.draft.price.totalCents);
  expect(order.days).toBeGreaterThan(usual.days);
});

test('work left out by hand stays as a line of nothing, with its reason, and leaves the crew’s steps', async () => {
  const other = await startJob(api);
  const left = { operation: 'tie-nails', quantity: 0, why: 'The tie comes with screws' };
  const estimate = await saved({ choices, overrides: [left] }, other);
  expect(nailsOf(estimate)).toMatchObject({ quantity: 0, totalCents: 0 });
  expect(nailsOf(estimate)?.overrides).toEqual([{ field: 'quantity', was: 16, is: 0, why: left.why }]);
  // Typed in English alone: no Spanish sentence holds it, and the letter marks it as English.
  expect(nailsOf(estimate)?.steps[0]).toEqual({ en: `Left out by the estimator: ${left.why}`, es: '' });
  const { scope } = await get<PlaceScope>(`/locations/${other.wallId}/scope`, other);
  expect(scope.operations.some(({ operation }) => operation === 'plate-tie')).toBe(true);
  expect(scope.operations.some(({ operation }) => operation === 'tie-nails')).toBe(false);
});

test('a rate the book lacks can be set by hand for one finding, and then there is no gap', async () => {
  const other = await startJob(api);
  const book = structuredClone(starterCostBook);
  const item = book.items.find(({ operation }) => operation === 'tie-nails');
  if (item) item.materialCentsPerUnit = null;
  await api.http(other.owner).put(`${v1}/cost-book`).set('if-match', '"0"').send({ book }).expect(200);
  const lacking = await saved({ choices }, other);
  expect(lacking.scope.gaps).toMatchObject([{ operation: 'tie-nails', lacks: ['material'], quantity: 16 }]);
  const set = { operation: 'tie-nails', materialCentsPerUnit: 12, why: 'From the receipt' };
  const mended = await saved({ choices, overrides: [set] }, other);
  expect(mended.scope.gaps).toEqual([]);
  expect(nailsOf(mended)?.overrides).toEqual([
    { field: 'materialCentsPerUnit', was: null, is: 12, why: 'From the receipt' },
  ]);
  const { price } = (await other.draft([lacking.findingId, mended.findingId])).draft;
  expect(price.gaps).toMatchObject([{ findingIds: [lacking.findingId], quantity: 16 }]);
  expect(price.lines.find(({ operation }) => operation === 'tie-nails')?.findingIds).toEqual([mended.findingId]);
  const without = { operation: 'tie-nails', quantity: 0, why: 'Screws' };
  expect((await saved({ choices, overrides: [without] }, other)).scope.gaps).toEqual([]);
});

test('a credit takes off exactly what its charge adds, overhead and profit included; an allowance is in the price', async () => {
  const line = { title: 'Crane', quantity: 0.5, unit: 'day', unitCents: 123_457, why };
  const total = async (...manualLines: object[]) => (await saved({ choices: [], manualLines })).scope.totalCents;
  const [charge, credit] = [await total(line), await total({ ...line, kind: 'credit' })];
  expect(credit).toBe(0 - charge);
  expect(await total(line, { ...line, kind: 'credit' })).toBe(0);
  expect(await total({ ...line, kind: 'allowance' })).toBe(charge);
  const allowance = { ...line, kind: 'allowance', titleEs: 'Grúa' };
  const { scope, manualLines } = await saved({ choices: [], manualLines: [allowance] });
  expect(manualLines).toEqual([allowance]);
  expect(scope.lines[0]).toMatchObject({ kind: 'allowance', title: { en: 'Crane', es: 'Grúa' } });
  expect(scope.lines[0]?.steps.slice(0, 2)).toEqual([
    { en: `${why}.`, es: '' },
    {
      en: 'Typed by the estimator: 0.5 day x $1,234.57 = $617.29.',
      es: 'Escrito por el estimador: 0.5 day x $1,234.57 = $617.29.',
    },
  ]);
  expect((await saved({ choices: [], manualLines: [line] })).scope.lines[0]?.title).toEqual({ en: 'Crane', es: '' });
});

test('an alternate is priced with the same book, shown as a difference, and in no sum', async () => {
  const alternates = [
    { kind: 'replace', name: both('A new stud beside it'), choices: [{ repairId: 'stud-sister' }] },
    {
      kind: 'better',
      name: both('A steel strap'),
      manualLines: [{ title: 'Strap', quantity: 1, unit: 'each', unitCents: 900_000, why }],
    },
  ];
  const [plain, estimate] = [await saved({ choices }), await saved({ choices, alternates })];
  expect(estimate.scope.totalCents).toBe(plain.scope.totalCents);
  const alone = await saved({ choices: [{ repairId: 'stud-sister', quantities: {} }] });
  expect(estimate.alternatePrices.map(({ differenceCents }) => differenceCents)).toEqual([
    alone.scope.totalCents - plain.scope.totalCents,
    (estimate.alternatePrices[1]?.scope.totalCents ?? Number.NaN) - plain.scope.totalCents,
  ]);
  const order = await job.draft([estimate.findingId]);
  expect(order.draft.price.totalCents).toBe(plain.scope.totalCents);
  expect(order.draft.items[0]?.alternates).toMatchObject([
    { kind: 'replace', differenceCents: estimate.alternatePrices[0]?.differenceCents },
    { kind: 'better', what: [{ en: 'Strap', es: '' }] },
  ]);
});

test('a line of an alternate is set by hand like one of the repair, and only the alternate changes', async () => {
  const choice = { choices: [{ repairId: 'stud-sister', quantities: {} }] };
  const way = { kind: 'replace', name: both('A new stud beside it'), ...choice };
  const plain = await saved({ choices, alternates: [way] });
  const [line] = plain.alternatePrices[0]?.scope.lines ?? [];
  const overrides = [{ operation: line?.operation ?? '', quantity: (line?.quantity ?? 0) * 2, why }];
  const set = await saved({ choices, alternates: [{ ...way, overrides }] });
  expect(set.scope.totalCents).toBe(plain.scope.totalCents);
  const doubled = await saved({ ...choice, overrides });
  expect(set.alternatePrices[0]?.scope.totalCents).toBe(doubled.scope.totalCents);
  expect(doubled.scope.totalCents).toBeGreaterThan(plain.alternatePrices[0]?.scope.totalCents ?? Number.NaN);
});

test('the signed document holds allowances, exclusions and alternates, and what was sent without them stays as it was', async () => {
  const exclusions = [both('Painting')];
  const alternates = [{ kind: 'repair', name: both('Only the tie'), choices }];
  const manualLines = [{ kind: 'allowance', title: 'Tile', quantity: 1, unit: 'each', unitCents: 50_000, why }];
  const estimate = await saved({ choices, exclusions, alternates, manualLines });
  const sent = await job.send(await job.draft([estimate.findingId]));
  const open = await job.open(sent.link);
  const letter = (await api.http().get(open.path).set('cookie', open.cookie).expect(200)).body;
  expect(letter.sha256).toBe(sent.sha256);
  const [item] = letter.document.items;
  expect(item.exclusions).toEqual(exclusions);
  expect(item.alternates).toMatchObject([{ kind: 'repair', name: both('Only the tie') }]);
  expect(letter.document.price.lines.find(({ kind }: { kind?: string }) => kind === 'allowance')).toMatchObject({
    title: { en: 'Tile' },
  });
  const pdf = await api.http().get(`${open.path}/pdf?locale=es`).set('cookie', open.cookie).responseType('blob');
  const { text } = await readPdf(pdf.body);
  for (const words of [
    'Lo que este precio no cubre',
    'Painting (es)',
    'Only the tie (es)',
    'Partida por definir: se ajusta',
  ])
    expect(text).toContain(words);
  const plain = await job.send(await job.draft([(await job.priced()).id]));
  const { items } = plain.changeOrder.draft;
  expect(items[0]).not.toHaveProperty('exclusions');
  expect(items[0]).not.toHaveProperty('alternates');
});

test('what was sent before lines told their kind and rates still reads, prints and is approved by its hash', async () => {
  const sent = await job.send(await job.draft([(await job.priced()).id]));
  const { id } = sent.changeOrder;
  const { ownerPool } = api.platform.database;
  const { rows } = await ownerPool.query<{ document: string }>(
    'select document from change_order_version where change_order_id = $1',
    [id],
  );
  const document = JSON.parse(rows[0]?.document ?? '') as ChangeOrderDocument;
  const lines = document.price.lines.map(({ kind: _kind, rates: _rates, overrides: _overrides, ...line }) => line);
  const old = canonicalJson({ ...document, price: { ...document.price, lines } });
  expect(old).not.toBe(rows[0]?.document);
  // Nobody may change what was sent; only a test makes an older time so.
  await ownerPool.query('alter table change_order_version disable trigger user');
  const row = [old, sha256Of(old), id];
  await ownerPool.query('update change_order_version set document = $1, sha256 = $2 where change_order_id = $3', row);
  await ownerPool.query('alter table change_order_version enable trigger user');
  const open = await job.open(sent.link);
  const read = (path = '') => api.http().get(`${open.path}${path}`).set('cookie', open.cookie).expect(200);
  const letter = (await read()).body;
  expect(letter.document).toEqual(JSON.parse(old));
  await read('/pdf');
  expect(await job.decide(open, letter)).toMatchObject({ status: 200, body: { state: 'approved' } });
});

test('an alternate without a rate keeps a change order from being sent', async () => {
  const other = await startJob(api);
  const book = structuredClone(starterCostBook);
  const sister = book.items.find(({ operation }) => operation === 'sister-member');
  if (sister) sister.hoursPerUnit = null;
  await api.http(other.owner).put(`${v1}/cost-book`).set('if-match', '"0"').send({ book }).expect(200);
  const alternates = [{ kind: 'better', name: both('Sister it'), choices: [{ repairId: 'member-sister' }] }];
  const estimate = await saved({ choices, alternates }, other);
  expect(estimate.alternatePrices[0]?.differenceCents).toBeNull();
  const order: ChangeOrder = await other.draft([estimate.findingId]);
  expect(order.blocks.join()).toContain('the cost book lacks a rate for the other way "Sister it"');
});

test('shares of a change order with a credit add up to its total', async () => {
  const credit = { kind: 'credit', title: 'Left out', quantity: 1, unit: 'each', unitCents: 300_000, why };
  const [one, two] = [await saved({ choices }), await saved({ choices: [], manualLines: [credit] })];
  const { draft } = await job.draft([one.findingId, two.findingId]);
  const shares = draft.items.map(({ shareCents }) => shareCents);
  expect(shares.reduce((sum, cents) => sum + cents, 0)).toBe(draft.price.totalCents);
  expect(shares[0]).toBeGreaterThan(0);
  expect(shares[1]).toBeLessThan(0);
});

test('a net decrease keeps overhead and profit until the contract gives them back', async () => {
  const other = await startJob(api);
  const credit = { kind: 'credit', title: 'Left out', quantity: 1, unit: 'each', unitCents: 300_000, why };
  const { findingId, scope: alone } = await saved({ choices: [], manualLines: [credit] }, other);
  const order: ChangeOrder = await other.draft([findingId]);
  expect(order.draft.price).toMatchObject({ totalCents: -300_000, overheadPct: 0, overheadCents: 0, profitCents: 0 });
  const ask = (path: string) => api.http(other.owner).get(`${v1}${path}`).expect(200);
  expect((await ask(`/change-orders/${order.id}/range`)).body.totalCents).toBe(-300_000);
  const terms = (await ask(`/projects/${other.project.id}/contract/terms`)).body;
  const { version: _version, changedAt: _changedAt, ...written } = terms;
  await api
    .http(other.owner)
    .put(`${v1}/projects/${other.project.id}/contract/terms`)
    .set('if-match', '"0"')
    .send({ ...written, netDecreaseReturnsOverheadAndProfit: true })
    .expect(200);
  const after: ChangeOrder = (await ask(`/change-orders/${order.id}`)).body;
  expect(after.draft.price.totalCents).toBe(alone.totalCents);
  expect(alone.totalCents).toBeLessThan(-300_000);
});

test('a preview answers the price and its range and saves nothing', async () => {
  const { id, version } = await job.note();
  const content = { choices, overrides: [nails] };
  const answer = (await preview(id, content).expect(200)).body as { estimate: Estimate; range: EstimateRange };
  expect(answer.estimate).toMatchObject({ saved: false, findingVersion: version, overrides: [nails] });
  expect(answer.range.totalCents).toBe(answer.estimate.scope.totalCents);
  const after = await get(`/findings/${id}/estimate`);
  expect(after).toMatchObject({ saved: false, findingVersion: version, overrides: [] });
  await preview(someId(), content).expect(404);
  expect(pointers(await preview(id, { choices, overrides: [{ ...nails, why: ' ' }] }).expect(422))).toEqual([
    '/overrides/0/why',
  ]);
});

test.each<[string, object, string]>([
  ['an override without a reason', { overrides: [{ operation: 'tie-nails', quantity: 1 }] }, '/overrides/0/why'],
  ['an override of nothing', { overrides: [{ operation: 'tie-nails', why }] }, '/overrides/0'],
  ['a negative quantity', { overrides: [{ ...nails, quantity: -1 }] }, '/overrides/0/quantity'],
  ['half a cent', { overrides: [{ ...nails, otherCentsPerUnit: 0.5 }] }, '/overrides/0/otherCentsPerUnit'],
  ['hours without end', { overrides: [{ ...nails, hoursPerUnit: 1e9 }] }, '/overrides/0/hoursPerUnit'],
  ['work of no chosen repair', { overrides: [{ ...nails, operation: 'shore-load' }] }, '/overrides/0/operation'],
  ['a line set twice', { overrides: [nails, nails] }, '/overrides/1/operation'],
  [
    'a credit below nothing',
    { manualLines: [{ kind: 'credit', title: 'a', quantity: 1, unit: 'each', unitCents: -5, why }] },
    '/manualLines/0/unitCents',
  ],
  [
    'a kind there is not',
    { manualLines: [{ kind: 'gift', title: 'a', quantity: 1, unit: 'each', unitCents: 5, why }] },
    '/manualLines/0/kind',
  ],
  ['an exclusion in one language', { exclusions: [{ en: 'Paint' }] }, '/exclusions/0/es'],
  ['an alternate of nothing', { alternates: [{ kind: 'better', name: both('x') }] }, '/alternates/0'],
  [
    'an alternate with an unknown repair',
    { alternates: [{ kind: 'better', name: both('x'), choices: [{ repairId: 'gold' }] }] },
    '/alternates/0/choices/0/repairId',
  ],
  [
    'an alternate that sets work it does not have',
    {
      alternates: [
        { kind: 'better', name: both('x'), choices, overrides: [{ operation: 'stud-work', quantity: 1, why }] },
      ],
    },
    '/alternates/0/overrides/0/operation',
  ],
  [
    'an alternate without a Spanish name',
    { alternates: [{ kind: 'better', name: { en: 'x', es: '' }, choices }] },
    '/alternates/0/name/es',
  ],
])('%s is refused and pointed at', async (_name, part, pointer) => {
  const { id, version } = await job.note();
  expect(pointers(await put(id, version, { choices, ...part }).expect(422))).toEqual([pointer]);
});

const mistyped = { title: 'Beam', quantity: 10_000, unit: 'each', unitCents: 220_000, why: 'As quoted' };

test('a line mistyped past what can be kept is refused by name, and nobody loses the list of findings', async () => {
  const { id, version } = await job.note();
  const tooMuch = { choices, manualLines: [{ ...mistyped, quantity: 1 }, mistyped] };
  for (const refused of [await put(id, version, tooMuch), await preview(id, tooMuch)]) {
    expect([refused.status, refused.body.type]).toEqual([422, 'urn:underlath:problem:invalid-input']);
    expect(pointers(refused)).toEqual(['/manualLines/1']);
    expect(refused.body.detail).toContain('Beam');
  }
  const nails = { operation: 'tie-nails', quantity: 100_000, materialCentsPerUnit: 2_000_000_000, why };
  expect(pointers(await put(id, version, { choices, overrides: [nails] }))).toEqual(['/choices']);
  const { items } = await get<{ items: { id: string; linesCents: number | null }[] }>(
    `/projects/${job.project.id}/findings`,
  );
  expect(items.find((one) => one.id === id)).toMatchObject({ linesCents: null, state: 'judged' });
  expect((await get(`/findings/${id}/estimate`)).saved).toBe(false);
});

test('a sum that was kept before there was a limit takes nothing else down', async () => {
  const { findingId } = await saved({ choices });
  const estimate = { choices, manualLines: [mistyped], costBookVersion: 0, linesCents: 2_200_000_000 };
  await api.platform.database.ownerPool.query('update finding set estimate = $1 where id = $2', [estimate, findingId]);
  const { items } = await get<{ items: { id: string; linesCents: number | null }[] }>(
    `/projects/${job.project.id}/findings`,
  );
  expect(items.find((one) => one.id === findingId)?.linesCents).toBeNull();
  expect((await get<{ linesCents: number | null }>(`/findings/${findingId}`)).linesCents).toBeNull();
  const refused = await api.http(job.owner).get(`${v1}/findings/${findingId}/estimate`);
  expect([refused.status, refused.body.detail]).toEqual([422, expect.stringContaining('Beam')]);
  const range = await api.http(job.owner).get(`${v1}/findings/${findingId}/estimate/range`);
  expect(range.status).toBe(422);
  const { version } = await get<{ version: number }>(`/findings/${findingId}`);
  await put(findingId, version, { choices }).expect(200);
});

test('offers of findings that each fit but not together are refused, and the list stays', async () => {
  const half = { ...mistyped, quantity: 1, unitCents: 1_200_000_000 };
  const two = [await saved({ choices, manualLines: [half] }), await saved({ choices, manualLines: [half] })];
  const made = await api
    .http(job.owner)
    .post(`${v1}/projects/${job.project.id}/change-orders`)
    .send({ findingIds: two.map(({ findingId }) => findingId) });
  expect([made.status, made.body.detail]).toEqual([422, expect.stringContaining('Beam')]);
  await get(`/projects/${job.project.id}/findings`);
});
