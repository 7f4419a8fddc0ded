import { setTimeout as sleep } from 'node:timers/promises';
import Fastify from 'fastify';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { createSharedLimits } from '../../apps/api/src/platform/shared-limits.ts';
import { refusalBursts } from '../../apps/api/src/plugins/refusal-bursts.ts';
import { type Person, startTestApi, type TestApi } from '../support/api.ts';
import { mailFile, mailsGone, mailsOfKind } from '../support/mails.ts';
import { v1 } from '../support/site.ts';

const limits = { signIn: 4, signInAccount: 1_000, signInAddress: 1_000, company: 6, link: 5 };
let one: TestApi;
let two: TestApi;
let owner: Person;

beforeAll(async () => {
  one = await startTestApi({ limits });
  // A second server on the database of the first, as behind a proxy.
  two = await startTestApi({ limits, databaseVia: async () => one.databaseUrl });
  owner = await one.signIn();
});
afterAll(async () => {
  await two.close();
  await one.close();
});

const signIn = (api: TestApi, email: string) =>
  api.http().post(`${v1}/session`).send({ email, password: 'not the right words' });
const statuses = async (asked: (turn: number) => PromiseLike<{ status: number }>, times: number) => {
  const seen: number[] = [];
  for (let turn = 0; turn < times; turn += 1) seen.push((await asked(turn)).status);
  return seen;
};

describe('two servers on one database', () => {
  test('share one count of the passwords tried for an address', async () => {
    const seen = await statuses((turn) => signIn(turn % 2 ? two : one, owner.email), 6);
    expect(seen).toEqual([401, 401, 401, 401, 429, 429]);
    const refused = await signIn(two, owner.email.toUpperCase());
    expect(refused.body.type).toBe('urn:underlath:problem:too-many-requests');
    expect(Number(refused.headers['retry-after'])).toBeGreaterThan(0);
    expect(Number(refused.headers['retry-after'])).toBeLessThanOrEqual(60);
  });

  test('share one count of the changes of a company, and reading is not counted', async () => {
    const change = (turn: number) =>
      (turn % 2 ? two : one).http(owner).patch(`${v1}/company`).set('if-match', '"99"').send({ phone: '555-0100' });
    expect(await statuses(change, 8)).toEqual([412, 412, 412, 412, 412, 412, 429, 429]);
    await two.http(owner).get(`${v1}/company`).expect(200);
  });

  test('share one count of the tries of an invitation', async () => {
    const accept = (turn: number) =>
      (turn % 2 ? two : one)
        .http()
        .post(`${v1}/invitations/accept`)
        .send({ token: 'made-up', name: 'Cleo', password: 'rim joist over sill' });
    expect(await statuses(accept, 6)).toEqual([404, 404, 404, 404, 404, 429]);
  });

  test('keep hashes of who was counted, and no address', async () => {
    const { rows } = await one.platform.database.ownerPool.query<{ key: string }>('select key from rate_limit');
    expect(rows.length).toBeGreaterThan(0);
    for (const { key } of rows) expect(key).toMatch(/^[A-Za-z]+:[\w-]{43}$/);
  });
});

describe('spraying', () => {
  test('many e-mail addresses from one address are one count', async () => {
    const api = await startTestApi({ limits: { signInAddress: 5 } });
    const seen = await statuses((turn) => signIn(api, `person-${turn}@marsh.example`), 7);
    expect(seen).toEqual([401, 401, 401, 401, 401, 429, 429]);
    await api.close();
  });

  test('one e-mail address is one count, wherever it is tried from', async () => {
    // Over https the address comes from the proxy's header.
    const api = await startTestApi({ limits: { signInAccount: 3 }, config: { publicUrl: 'https://marsh.example' } });
    const seen = await statuses(
      (turn) => signIn(api, 'olive@marsh.example').set('x-forwarded-for', `198.51.100.${turn + 1}`),
      5,
    );
    expect(seen).toEqual([401, 401, 401, 429, 429]);
    await api.close();
  });
});

describe('strangers who use up the sign-ins of an address', () => {
  const right = (api: TestApi, { email, password }: Person, cookie = '') =>
    api.http({ cookie }).post(`${v1}/session`).send({ email, password });
  const deviceOf = (answer: { headers: Record<string, unknown> }) =>
    ((answer.headers['set-cookie'] ?? []) as string[]).find((one) => one.startsWith('underlath_device='));

  test('do not lock out the device that the person signed in on before, signed out or not', async () => {
    const api = await startTestApi({ limits: { signInAccount: 3 } });
    const person = await api.signIn();
    const first = await right(api, person);
    const cookie = deviceOf(first) ?? '';
    for (const flag of ['HttpOnly', 'SameSite=Strict', 'Path=/']) expect(cookie).toContain(flag);
    const known = cookie.split(';')[0];
    expect(await statuses(() => signIn(api, person.email), 4)).toEqual([401, 401, 429, 429]);
    expect([(await right(api, person)).status, (await right(api, person, known)).status]).toEqual([429, 200]);
    // It is no way around the count: tries from it are counted too, and it is good for this one address.
    const wrong = () => signIn(api, person.email).set('cookie', known ?? '');
    expect(await statuses(wrong, 3)).toEqual([401, 401, 429]);
    const other = await api.signIn();
    await statuses(() => signIn(api, other.email), 3);
    expect((await right(api, other, known)).status).toBe(429);
    await api.close();
  });

  test('do not lock out whoever then chooses a new password by mail', async () => {
    const api = await startTestApi({ limits: { signInAccount: 3 } });
    const person = await api.signIn();
    await statuses(() => signIn(api, person.email), 4);
    await api.http().post(`${v1}/account/forgotten`).send({ email: person.email }).expect(202);
    await mailsGone(api, person.companyId);
    const [mail] = await mailsOfKind(api, person.companyId, 'accountLink');
    const token = /#([\w-]{43})/.exec(mailFile(api, mail?.id ?? ''))?.[1];
    const password = 'four joists and a ledger';
    const reset = await api.http().post(`${v1}/account/reset`).send({ token, password });
    const known = deviceOf(reset)?.split(';')[0];
    expect((await right(api, { ...person, password }, known)).status).toBe(200);
    await api.close();
  });
});

test('a database that is away leaves the counting to each process, and breaks nothing', async () => {
  const away = { query: () => Promise.reject(new Error('away')) };
  const hung = { query: () => new Promise(() => {}) };
  for (const pool of [away, hung]) {
    Object.defineProperty(pool, 'constructor', { value: { name: 'Pool' } });
    const shared = createSharedLimits(pool as never);
    const allowance = { name: 'twice', tries: 2, seconds: 60 };
    const waits: number[] = [];
    for (let turn = 0; turn < 3; turn += 1) waits.push(await shared.take(allowance, 'olive'));
    expect(waits.slice(0, 2)).toEqual([0, 0]);
    expect(waits[2]).toBeGreaterThan(0);
  }
});

test('a burst of refusals is one line of the log with where it came from, and a few are none', async () => {
  const lines: { from?: object; level: number }[] = [];
  const stream = { write: (line: string) => void lines.push(JSON.parse(line)) };
  const app = Fastify({ logger: { level: 'warn', stream } });
  app.decorateRequest('principal', null);
  await app.register(refusalBursts, { windowMs: 50 });
  app.post('/secret', async (_request, reply) => reply.code(401).send('no'));
  const ask = () => app.inject({ method: 'POST', url: '/secret?key=mill-pond', payload: { password: 'mill-pond' } });
  await app.ready();
  for (let turn = 0; turn < 5; turn += 1) await ask();
  await sleep(120);
  expect(lines).toEqual([]);
  await Promise.all(Array.from({ length: 25 }, ask));
  await sleep(120);
  await app.close();
  expect(lines).toHaveLength(1);
  expect(lines[0]?.from).toEqual({ 'address:127.0.0.1': 25 });
  expect(JSON.stringify(lines)).not.toContain('mill-pond');
});
