import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Config } from '../../apps/api/src/config.ts';
import { startTestApi, type TestApi } from '../support/api.ts';
import { v1 } from '../support/site.ts';

const password = 'rim joist over sill plate';
let made = 0;
const newEmail = () => `opener-${++made}@example.test`;
const open = (api: TestApi, body: object = {}) =>
  api
    .http()
    .post(`${v1}/companies`)
    .send({ companyName: 'Marsh Remodel', name: 'Olive Marsh', email: newEmail(), password, ...body });
const isOpen = async (api: TestApi) => (await api.http().get(`${v1}/sign-up`)).body.open;
const withServer = async (config: Partial<Config>, work: (api: TestApi) => Promise<void>) => {
  const api = await startTestApi({ config });
  try {
    await work(api);
  } finally {
    await api.close();
  }
};

describe('who may open a company', () => {
  test('invited: whoever comes first, and nobody after; people still come by invitation', () =>
    withServer({ signUp: 'invited' }, async (api) => {
      expect(await isOpen(api)).toBe(true);
      const first = await open(api);
      expect([first.status, await isOpen(api)]).toEqual([201, false]);
      const second = await open(api);
      expect([second.status, second.body.type]).toEqual([403, 'urn:underlath:problem:not-allowed']);
      await api.platform.database.people.user.updateMany({ data: { emailVerified: true } });
      const cookie = String(first.headers['set-cookie']?.[0]).split(';')[0] ?? '';
      const invitation = await api.http({ cookie }).post(`${v1}/invitations`).send({ email: newEmail(), role: 'crew' });
      const token = String(invitation.body.link).split('#')[1];
      const joined = await api.http().post(`${v1}/invitations/accept`).send({ token, name: 'Cleo Birch', password });
      expect(joined.status).toBe(201);
    }));

  test('invited: eight at once on an empty server open one', () =>
    withServer({ signUp: 'invited' }, async (api) => {
      const answers = await Promise.all(Array.from({ length: 8 }, () => open(api)));
      expect(answers.map(({ status }) => status).sort()).toEqual([201, ...Array(7).fill(403)]);
      // Nobody is left without a company.
      expect(await api.platform.database.owner.user.count()).toBe(1);
    }));

  test('closed: nobody, not even on an empty server', () =>
    withServer({ signUp: 'closed' }, async (api) => {
      expect([await isOpen(api), (await open(api)).status]).toEqual([false, 403]);
    }));
});

describe('on an open server', () => {
  let api: TestApi;
  beforeAll(async () => {
    api = await startTestApi();
  });
  afterAll(() => api.close());

  test('an address that is known answers like a wrong password at the sign-in', async () => {
    const { email } = await api.signIn();
    const opened = await open(api, { email });
    const signIn = await api.http().post(`${v1}/session`).send({ email, password });
    expect(opened.status).toBe(401);
    expect({ ...opened.body, instance: '' }).toEqual({ ...signIn.body, instance: '' });
  });

  test('who is known and free opens one with the password they have; who works here already is told so', async () => {
    const person = await api.signIn();
    const known = { email: person.email, password: person.password };
    expect((await open(api, known)).body.type).toBe('urn:underlath:problem:wrong-state');
    const owner = await api.signIn();
    const crew = await api.signIn({ companyId: owner.companyId, role: 'crew' });
    await api.http(owner).delete(`${v1}/members/${crew.memberId}`).set('if-match', '"1"');
    const opened = await open(api, { email: crew.email, password: crew.password });
    expect([opened.status, opened.body.member?.role]).toEqual([201, 'owner']);
  });
});

describe('letters', () => {
  test('of a company stop at the hour’s limit, say when to try again, and lose nothing', () =>
    withServer({ mailPerHour: 3, signUp: 'open' }, async (api) => {
      const owner = await api.signIn();
      const invite = (person = owner) =>
        api.http(person).post(`${v1}/invitations`).send({ email: newEmail(), role: 'crew' });
      for (let sent = 0; sent < 3; sent++) expect((await invite()).status).toBe(201);
      const refused = await invite();
      expect([refused.status, refused.body.type]).toEqual([429, 'urn:underlath:problem:too-many-requests']);
      const seconds = Number(refused.headers['retry-after']);
      expect(seconds).toBeGreaterThan(3_500);
      expect(seconds).toBeLessThanOrEqual(3_600);
      expect((await api.http(owner).get(`${v1}/invitations`)).body.items).toHaveLength(3);
      // Another company's letters are its own.
      expect((await invite(await api.signIn())).status).toBe(201);
      await api.platform.database.owner.mail.updateMany({
        where: { companyId: owner.companyId },
        data: { createdAt: new Date(Date.now() - 3_601_000) },
      });
      expect((await invite()).status).toBe(201);
    }));

  test('that leave at the same moment do not pass the limit together', () =>
    withServer({ mailPerHour: 3 }, async ({ signIn, platform: { database, outbox } }) => {
      const { companyId } = await signIn();
      const letter = {
        to: 'ines@wren.example',
        subject: 'A hidden condition',
        text: 'See the wall.',
        locale: 'en',
      } as const;
      const post = () =>
        database.inCompany(companyId, async (tx) => {
          await outbox.post(tx, companyId, letter, { kind: 'notice' });
          // What else the work does before it is committed.
          await tx.$executeRaw`select pg_sleep(0.05)`;
        });
      const sent = await Promise.allSettled(Array.from({ length: 5 }, post));
      expect(sent.filter(({ status }) => status === 'fulfilled')).toHaveLength(3);
    }));
});
