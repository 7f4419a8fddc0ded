import { type CostBook, starterCostBook } from '@underlath/rules';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { type Person, startTestApi, type TestApi } from '../support/api.ts';
import { type OpenLetter, startJob } from '../support/offers.ts';

const at = '/api/v1/cost-book';
let api: TestApi;
let owner: Person;

beforeAll(async () => {
  api = await startTestApi();
  owner = await api.signIn();
});
afterAll(() => api.close());

const save = (person: Person, book: object, version: number) =>
  api.http(person).put(at).set('if-match', `"${version}"`).send({ book });
const ownBook = (): CostBook => ({ ...structuredClone(starterCostBook), placeholder: false });

test('a company without a saved book sees the starter book, marked as invented', async () => {
  const answer = await api.http(owner).get(at).expect(200);
  expect(answer.body).toMatchObject({ version: 0, placeholder: true, createdBy: null });
  expect(answer.headers.etag).toMatch(/^"0\./);
  expect(answer.body.book.items.length).toBeGreaterThan(10);
});

test('saving adds a version, the older ones stay as they were, and a stale one is refused', async () => {
  const first = await save(owner, ownBook(), 0).expect(200);
  expect(first.body).toMatchObject({ version: 1, placeholder: false, createdBy: { name: owner.name } });
  const dearer = { ...ownBook(), overheadPct: 21 };
  await save(owner, dearer, 0).expect(412);
  await save(owner, dearer, 1).expect(200);
  const [newest, list] = [await api.http(owner).get(at), await api.http(owner).get(`${at}/versions`)];
  expect(newest.body).toMatchObject({ version: 2, book: { overheadPct: 21 } });
  expect(list.body.items.map(({ version }: { version: number }) => version)).toEqual([2, 1]);
  await expect(
    api.platform.database.inCompany(owner.companyId, (tx) =>
      tx.costBook.updateMany({ where: { version: 1 }, data: { book: {} } }),
    ),
  ).rejects.toThrow(/permission denied/);
});

test('two saves of the same version at once keep one', async () => {
  const other = await api.signIn();
  const answers = await Promise.all([save(other, ownBook(), 0), save(other, ownBook(), 0)]);
  expect(answers.map(({ status }) => status).sort()).toEqual([200, 412]);
});

test('a wrong book is refused row by row and nothing of it is kept', async () => {
  const book = ownBook();
  const [, second, third] = book.items;
  if (second) second.wastePct = -1;
  if (third) third.hoursPerUnit = { low: 3, likely: 2, high: 4 };
  const { version } = (await api.http(owner).get(at)).body;
  const refused = await save(owner, { ...book, color: 'red' }, version).expect(422);
  expect(refused.body.errors).toEqual([
    { pointer: '/book/items/1/wastePct', detail: expect.stringContaining(`row 2 (${second?.operation}): `) },
    { pointer: '/book/items/2/hoursPerUnit', detail: expect.stringContaining('low up to likely up to high') },
    { pointer: '/book/color', detail: 'there is no field called "color"' },
  ]);
  expect((await api.http(owner).get(at)).body.version).toBe(version);
});

test('the estimator reads it and may not save; crew may not read it', async () => {
  const estimator = await api.signIn({ role: 'estimator', companyId: owner.companyId });
  const crew = await api.signIn({ role: 'crew', companyId: owner.companyId });
  await api.http(estimator).get(at).expect(200);
  await save(estimator, ownBook(), 2).expect(403);
  await api.http(crew).get(at).expect(403);
});

test('one version is read by its number; another company’s and one that is not there are not found', async () => {
  const first = await api.http(owner).get(`${at}/versions/1`).expect(200);
  expect(first.body).toMatchObject({ version: 1, book: { overheadPct: 18 } });
  expect(first.headers.etag).toMatch(/^"1\./);
  expect((await api.http(owner).get(`${at}/versions/0`).expect(200)).body.placeholder).toBe(true);
  await api.http(owner).get(`${at}/versions/99`).expect(404);
  const stranger = await api.signIn();
  await api.http(stranger).get(`${at}/versions/2`).expect(404);
});

test('each wrong row has its pointer: rate, hours, percent, currency, unit', async () => {
  const book = ownBook();
  const row = (index: number) => (book.items[index] ?? {}) as unknown as Record<string, unknown>;
  Object.assign(book.trades[0] ?? {}, { wageCentsPerHour: undefined });
  Object.assign(row(0), { hoursPerUnit: { low: -1, likely: 2, high: 4 } });
  Object.assign(row(1), { materialTaxPct: 100.5 });
  Object.assign(row(2), { currency: 'EUR' });
  const { version } = (await api.http(owner).get(at)).body;
  const refused = await save(owner, book, version).expect(422);
  expect(refused.body.errors.map(({ pointer }: { pointer: string }) => pointer)).toEqual([
    '/book/trades/0/wageCentsPerHour',
    '/book/items/0/hoursPerUnit/low',
    '/book/items/1/materialTaxPct',
    '/book/items/2/currency',
  ]);
  const units = ownBook();
  const panel = units.items.findIndex(({ operation }) => operation === 'panel-new');
  Object.assign(units.items[panel] ?? {}, { unit: 'each' });
  expect((await save(owner, units, version).expect(422)).body.errors).toEqual([
    {
      pointer: `/book/items/${panel}/unit`,
      detail: `row ${panel + 1} (panel-new): came as “each”; panel-new is counted in sf`,
    },
  ]);
});

const preview = (person: Person, csv: string) => api.http(person).post(`${at}/csv/preview`).send({ csv });
const exported = async (person: Person) => (await api.http(person).get(`${at}/csv`).expect(200)).text;

test('a book goes out as CSV and comes back unchanged, with the mark of UTF-8', async () => {
  const answer = await api.http(owner).get(`${at}/csv`).expect(200);
  expect(answer.headers['content-type']).toBe('text/csv; charset=utf-8');
  expect(answer.headers['content-disposition']).toBe('attachment; filename="cost-book-2.csv"');
  expect(answer.text).toContain('wage_usd_per_hour');
  const back = await preview(owner, answer.text).expect(200);
  expect(back.body).toMatchObject({ version: 2, changes: [], book: { overheadPct: 21 } });
});

test('an import says what it would change, saves nothing by itself, and is saved as a new version', async () => {
  const csv = (await exported(owner)).replace(',38.00,', ',41.50,').replace(/^fee,change-order-admin.*\r\n/m, '');
  const { body } = await preview(owner, csv).expect(200);
  expect(body.changes).toEqual([
    {
      kind: 'changed',
      row: 'trade',
      id: 'carpenter',
      name: 'Carpenter',
      cells: [{ column: 'wage_usd_per_hour', was: '38.00', is: '41.50' }],
    },
    expect.objectContaining({ kind: 'removed', row: 'fee', id: 'change-order-admin' }),
  ]);
  expect((await api.http(owner).get(at)).body.version).toBe(2);
  const saved = await save(owner, body.book, body.version).expect(200);
  expect(saved.body.version).toBe(3);
  expect((await preview(owner, csv).expect(200)).body.changes).toEqual([]);
});

test('a file with wrong cells is refused cell by cell, and one that is no CSV as a whole', async () => {
  const csv = (await exported(owner)).replace(',41.50,', ',forty,');
  const refused = await preview(owner, csv).expect(422);
  expect(refused.body.errors).toEqual([
    { pointer: '/csv/3/wage_usd_per_hour', detail: expect.stringContaining('came as “forty”; allowed is US dollars') },
  ]);
  expect((await preview(owner, 'row,"id').expect(422)).body.errors[0].pointer).toBe('/csv');
  const estimator = await api.signIn({ role: 'estimator', companyId: owner.companyId });
  await preview(estimator, csv).expect(403);
  await api.http(estimator).get(`${at}/csv`).expect(200);
});

test('changing rates changes no sent document, which goes on naming its version', async () => {
  const job = await startJob(api);
  const finding = await job.priced();
  const sent = await job.send(await job.draft([finding.id]));
  const letterOf = async (open: OpenLetter) =>
    (await api.http().get(open.path).set('cookie', open.cookie).expect(200)).body;
  const open = await job.open(sent.link);
  const before = await letterOf(open);
  const { version } = (await api.http(job.owner).get(at)).body;
  const dearer = ownBook();
  for (const trade of dearer.trades) trade.wageCentsPerHour *= 2;
  await save(job.owner, dearer, version).expect(200);
  expect(await letterOf(open)).toEqual(before);
  const order = (await api.http(job.owner).get(`/api/v1/change-orders/${sent.changeOrder.id}`).expect(200)).body;
  expect(JSON.stringify(order)).toContain(`"costBookVersion":${version}`);
  const today = (await api.http(job.owner).get(`/api/v1/findings/${finding.id}/estimate`)).body.scope;
  expect(today.costBookVersion).toBe(version + 1);
  expect(today.totalCents).toBeGreaterThan(before.document.price.totalCents);
});

test('work the book has no row for is a gap, and a starter row taken over is said to be invented', async () => {
  const job = await startJob(api);
  const finding = await job.priced();
  const estimate = async () => (await api.http(job.owner).get(`/api/v1/findings/${finding.id}/estimate`)).body.scope;
  const { lines } = await estimate();
  const operation = lines[0].operation as string;
  const { version } = (await api.http(job.owner).get(at)).body;
  const full = ownBook();
  const without = { ...full, items: full.items.filter((item) => item.operation !== operation) };
  await save(job.owner, without, version).expect(200);
  const gapped = await estimate();
  expect(gapped.placeholder).toBe(false);
  expect(gapped.gaps).toEqual([expect.objectContaining({ operation })]);
  expect(gapped.lines.some((line: { operation: string }) => line.operation === operation)).toBe(false);
  const marked = full.items.map((item) => (item.operation === operation ? { ...item, invented: true as const } : item));
  const taken = await save(job.owner, { ...full, items: marked }, version + 1).expect(200);
  expect(taken.body.placeholder).toBe(true);
  expect(await estimate()).toMatchObject({ placeholder: true, gaps: [] });
});
