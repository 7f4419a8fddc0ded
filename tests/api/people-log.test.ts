import type { PeopleEvent } from '@underlath/contract';
import { starterCostBook } from '@underlath/rules/pricing';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { nobody } from '../../apps/api/src/features/people-log/people-log.service.ts';
import { type Person, startTestApi, type TestApi } from '../support/api.ts';
import { v1 } from '../support/site.ts';

let api: TestApi;
let owner: Person;
const log = () => api.deps.services.peopleLog;
const read = async (query = '', person = owner) =>
  (await api.http(person).get(`${v1}/people-log${query}`).expect(200)).body as {
    items: PeopleEvent[];
    next: string | null;
  };

beforeAll(async () => {
  api = await startTestApi();
  owner = await api.signIn({ role: 'owner' });
});
afterAll(() => api.close());

test('company details and a cost book that is saved are written down with who did it', async () => {
  await api.http(owner).patch(`${v1}/company`).set('if-match', '"1"').send({ phone: '555-0100' }).expect(200);
  await api.http(owner).put(`${v1}/cost-book`).set('if-match', '"0"').send({ book: starterCostBook }).expect(200);
  const actor = { kind: 'member', id: owner.memberId, name: owner.name };
  expect((await read()).items).toMatchObject([
    { type: 'cost-book.saved', actor, data: { version: 1 } },
    { type: 'company.changed', actor, data: { changed: ['phone'] } },
  ]);
  expect((await read('?type=company.changed')).items).toHaveLength(1);
});

test('a change that is refused leaves no note', async () => {
  const before = (await read()).items.length;
  await api.http(owner).patch(`${v1}/company`).set('if-match', '"99"').send({ phone: '555-0199' }).expect(412);
  expect((await read()).items).toHaveLength(before);
});

test('a sign-in is told to the company where the person works, a refused one as done by nobody', async () => {
  const lines: object[] = [];
  const serverLog = { warn: (facts: object) => void lines.push(facts) };
  const { email, password, memberId } = owner;
  await api.http().post(`${v1}/session`).send({ email, password }).expect(200);
  await api.deps.services.refused.write(email.toUpperCase(), { address: '192.0.2.8' }, serverLog);
  const [refused, good] = (await read()).items;
  expect(good).toMatchObject({ type: 'sign-in.good', subjectId: memberId, data: { from: '127.0.0.x' } });
  const data = { why: 'password', from: '192.0.2.x' };
  expect(refused).toMatchObject({ type: 'sign-in.refused', actor: nobody, subjectId: memberId, data });
  expect(lines).toEqual([]);
});

test('a sign-in of an unknown address is told to the server’s log alone, without the address', async () => {
  const lines: object[] = [];
  const serverLog = { warn: (facts: object) => void lines.push(facts) };
  await api.deps.services.refused.write('Odd.Person@marsh.example', { address: '192.0.2.8' }, serverLog);
  const person = expect.stringMatching(/^[0-9a-f]{12}$/);
  expect(lines).toEqual([{ domain: 'marsh.example', person, why: 'password', from: '192.0.2.x' }]);
  expect(JSON.stringify(lines).toLowerCase()).not.toContain('odd');
});

test('pages go on where the last one ended, and the CSV has them all', async () => {
  const first = await read('?limit=2');
  const second = await read(`?limit=2&cursor=${first.next}`);
  const seen = [...first.items, ...second.items].map(({ id }) => id);
  expect(new Set(seen).size).toBe(4);
  expect(second.next).toBeNull();
  const answer = await api.http(owner).get(`${v1}/people-log/csv`).expect(200);
  expect(answer.headers['content-disposition']).toBe('attachment; filename="people-log.csv"');
  const lines = answer.text.trim().split('\r\n');
  expect(lines).toHaveLength(5);
  expect(lines[1]).toContain('sign-in.refused');
});

test('only an owner reads it, and of their own company only', async () => {
  for (const role of ['estimator', 'crew'] as const) {
    const person = await api.signIn({ role, companyId: owner.companyId });
    await api.http(person).get(`${v1}/people-log`).expect(403);
    await api.http(person).get(`${v1}/people-log/csv`).expect(403);
  }
  expect((await read('', await api.signIn())).items).toEqual([]);
});

test('nobody changes or removes a line, the owner of the tables neither', async () => {
  const { database } = api.platform;
  for (const statement of ["update people_event set type = 'x'", 'delete from people_event', 'truncate people_event'])
    await expect(database.ownerPool.query(statement)).rejects.toThrow(/written once/);
  await expect(
    database.inCompany(owner.companyId, (tx) => tx.peopleEvent.deleteMany({ where: { companyId: owner.companyId } })),
  ).rejects.toThrow(/permission denied/);
});

test('a fact that names a secret is refused before it is kept', async () => {
  const data = { resetToken: 'x' };
  const { companyId } = owner;
  await expect(
    api.platform.database.inCompany(companyId, (tx) =>
      log().note(tx, companyId, { type: 'password.reset', actor: nobody, data }),
    ),
  ).rejects.toThrow(/keeps no secrets/);
});
