import { type CostBook, starterCostBook } from '@underlath/rules';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { type Person, startTestApi, type TestApi } from '../support/api.ts';

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
  expect(answer.headers.etag).toBe('"0"');
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
