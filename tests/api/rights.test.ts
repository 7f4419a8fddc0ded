import { type ApiKey, type Invitation, type Member, problems, type Role } from '@underlath/contract';
import { starterCostBook } from '@underlath/rules/pricing';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { hashSecret } from '../../apps/api/src/platform/secrets.ts';
import type { Caller } from '../../apps/api/src/shared/caller.ts';
import { type Person, startTestApi, type TestApi } from '../support/api.ts';
import { startJob } from '../support/offers.ts';
import { rounds } from '../support/rounds.ts';
import { cutPlate, newProject, someId, v1 } from '../support/site.ts';

let api: TestApi;

beforeAll(async () => {
  api = await startTestApi();
});
afterAll(() => api.close());

const dayMs = 86_400_000;
const password = 'rim joist over sill plate';
let made = 0;
const newEmail = () => `invited-${++made}@example.test`;
const inDays = (days: number) => new Date(Date.now() + days * dayMs).toISOString();

const makeKey = async (owner: Person, more: object = {}): Promise<ApiKey & { secret: string }> => {
  const answer = await api
    .http(owner)
    .post(`${v1}/api-keys`)
    .send({ name: 'Sync', role: 'owner', ...more });
  expect(answer.status).toBe(201);
  return answer.body;
};
const asKey = ({ secret }: { secret: string }) => api.http().set('authorization', `Bearer ${secret}`);
const invite = async (owner: Person, role: Role = 'owner', email = newEmail()) => {
  const { body } = await api.http(owner).post(`${v1}/invitations`).send({ email, role });
  return { id: body.id, email, token: String(body.link).split('#')[1] ?? '' };
};
const accept = (token: string, more: object = {}) =>
  api
    .http()
    .post(`${v1}/invitations/accept`)
    .send({ token, name: 'Cleo Birch', password, ...more });
const members = async (person: Person): Promise<Member[]> => (await api.http(person).get(`${v1}/members`)).body.items;
const versionOf = async (person: Person, id: string) =>
  (await members(person)).find((member) => member.id === id)?.version ?? 0;
const change = async (by: Person, { memberId }: Person, body: object) =>
  api
    .http(by)
    .patch(`${v1}/members/${memberId}`)
    .set('if-match', `"${await versionOf(by, memberId)}"`)
    .send(body);
const remove = async (by: Person, { memberId }: Person) =>
  api
    .http(by)
    .delete(`${v1}/members/${memberId}`)
    .set('if-match', `"${await versionOf(by, memberId)}"`);
const twoOwners = async (): Promise<[Person, Person]> => {
  const first = await api.signIn();
  return [first, await api.signIn({ companyId: first.companyId, role: 'owner' })];
};
const lists = async (owner: Person): Promise<{ keys: ApiKey[]; invitations: Invitation[] }> => ({
  keys: (await api.http(owner).get(`${v1}/api-keys`)).body.items,
  invitations: (await api.http(owner).get(`${v1}/invitations`)).body.items,
});

describe('whoever loses a role', () => {
  test('keeps nothing of it in a key: it reads what the new role reads, and changes nobody', async () => {
    const [owner, second] = await twoOwners();
    const key = await makeKey(second);
    expect((await asKey(key).get(`${v1}/api-keys`)).status).toBe(200);
    expect((await change(owner, second, { role: 'crew' })).status).toBe(200);
    expect((await asKey(key).get(`${v1}/api-keys`)).status).toBe(403);
    expect((await asKey(key).get(`${v1}/cost-book`)).status).toBe(403);
    expect((await asKey(key).get(`${v1}/projects`)).status).toBe(200);
    const again = await asKey(key)
      .patch(`${v1}/members/${second.memberId}`)
      .set('if-match', '"2"')
      .send({ role: 'owner' });
    expect(again.status).toBe(403);
    expect((await lists(owner)).keys).toMatchObject([{ id: key.id, role: 'crew' }]);
  });

  test('does not get it back in an old key when the role comes back', async () => {
    const [owner, second] = await twoOwners();
    const key = await makeKey(second);
    await change(owner, second, { role: 'estimator' });
    await change(owner, second, { role: 'owner' });
    expect((await asKey(key).get(`${v1}/api-keys`)).status).toBe(403);
    expect((await asKey(key).get(`${v1}/cost-book`)).status).toBe(200);
  });

  test('has no invitation left that gives it away', async () => {
    const [owner, second] = await twoOwners();
    const { token } = await invite(second);
    await change(owner, second, { role: 'estimator' });
    expect((await accept(token)).status).toBe(410);
    expect((await members(owner)).length).toBe(2);
  });
});

describe('a removed owner', () => {
  test('does not come back by the session, the key or the invitation they made for themselves', async () => {
    const [owner, second] = await twoOwners();
    const key = await makeKey(second);
    const own = await invite(second);
    expect((await remove(owner, second)).status).toBe(204);
    expect((await api.http(second).get(`${v1}/session`)).status).toBe(401);
    expect((await asKey(key).get(`${v1}/projects`)).status).toBe(401);
    const look = await api.http().post(`${v1}/invitations/look-up`).send({ token: own.token });
    expect([look.status, (await accept(own.token)).status]).toEqual([410, 410]);
    const { invitations } = await lists(owner);
    expect(invitations.find(({ id }) => id === own.id)?.revokedAt).not.toBeNull();
  });

  test('is not let back by an invitation that was written while they were being removed', async () => {
    const [owner, second] = await twoOwners();
    await remove(owner, second);
    const token = 'written-too-late';
    await api.platform.database.inCompany(owner.companyId, (tx) =>
      tx.invitation.create({
        data: {
          companyId: owner.companyId,
          id: someId(),
          email: newEmail(),
          role: 'owner',
          tokenHash: hashSecret(token),
          invitedById: second.memberId,
          createdAt: new Date(),
          expiresAt: new Date(Date.now() + dayMs),
        },
      }),
    );
    expect((await accept(token)).status).toBe(410);
  });
});

describe('a key', () => {
  test('changes no keys, members, invitations or company details, whatever its role', async () => {
    const [owner, second] = await twoOwners();
    const key = asKey(await makeKey(owner));
    const { id } = await invite(owner);
    const answers = [
      await key.post(`${v1}/api-keys`).send({ name: 'Two', role: 'owner' }),
      await key.post(`${v1}/invitations`).send({ email: newEmail(), role: 'owner' }),
      await key.delete(`${v1}/invitations/${id}`),
      await key.delete(`${v1}/members/${second.memberId}`).set('if-match', '"1"'),
      await key.patch(`${v1}/members/${second.memberId}`).set('if-match', '"1"').send({ role: 'crew' }),
      await key.patch(`${v1}/company`).set('if-match', '"1"').send({ crewSeesMoney: true }),
    ];
    expect(answers.map(({ status }) => status)).toEqual(Array(6).fill(403));
    expect(answers[0]?.body.detail).toContain('a person who is signed in');
  });

  test('ends within two years, after one unless told, and is dead from then on', async () => {
    const owner = await api.signIn();
    const key = await makeKey(owner);
    const aheadDays = (Date.parse(key.expiresAt) - Date.now()) / dayMs;
    expect(aheadDays).toBeGreaterThan(364);
    expect(aheadDays).toBeLessThanOrEqual(365);
    for (const expiresAt of [inDays(800), inDays(-1)]) {
      const refused = await api.http(owner).post(`${v1}/api-keys`).send({ name: 'Sync', role: 'crew', expiresAt });
      expect(refused.body.errors?.[0].pointer).toBe('/expiresAt');
    }
    await api.platform.database.owner.apiKey.update({
      where: { companyId_id: { companyId: owner.companyId, id: key.id } },
      data: { expiresAt: new Date(Date.now() - 1000) },
    });
    expect((await asKey(key).get(`${v1}/projects`)).status).toBe(401);
  });

  test('says when it was last used, written once an hour at most', async () => {
    const owner = await api.signIn();
    const key = await makeKey(owner);
    const told = async () => (await lists(owner)).keys[0]?.lastUsedAt;
    expect(await told()).toBeNull();
    await asKey(key).get(`${v1}/projects`);
    const first = await told();
    expect(Date.now() - Date.parse(first ?? '')).toBeLessThan(60_000);
    await asKey(key).get(`${v1}/projects`);
    expect(await told()).toBe(first);
    const longAgo = new Date(Date.now() - 2 * 3_600_000);
    await api.platform.database.owner.apiKey.updateMany({ where: { id: key.id }, data: { lastUsedAt: longAgo } });
    await asKey(key).get(`${v1}/projects`);
    expect(Date.parse((await told()) ?? '')).toBeGreaterThan(longAgo.getTime());
  });

  test('for reading only reads what its role reads and changes nothing', async () => {
    const owner = await api.signIn();
    const key = asKey(await makeKey(owner, { use: 'read' }));
    expect((await key.get(`${v1}/projects`)).status).toBe(200);
    expect((await key.get(`${v1}/api-keys`)).status).toBe(200);
    const refused = await key.post(`${v1}/projects`).send(newProject);
    expect([refused.status, refused.body.detail]).toEqual([403, 'This API key is for reading only.']);
  });

  test('for photos only sends and lists photos, and reads nothing else', async () => {
    const owner = await api.signIn();
    const project = (await api.http(owner).post(`${v1}/projects`).send(newProject)).body;
    const key = asKey(await makeKey(owner, { use: 'photos', role: 'crew' }));
    expect((await key.get(`${v1}/projects/${project.id}/photos`)).status).toBe(200);
    const refused = await key.get(`${v1}/projects/${project.id}`);
    expect([refused.status, refused.body.detail]).toEqual([403, 'This API key is for photos only.']);
  });

  test('is made once for one repeat key, and the repeat is told the same secret', async () => {
    const owner = await api.signIn();
    const make = () =>
      api.http(owner).post(`${v1}/api-keys`).set('idempotency-key', 'one').send({ name: 'Sync', role: 'crew' });
    const [first, second] = [await make(), await make()];
    expect(second.body.secret).toBe(first.body.secret);
    expect((await lists(owner)).keys).toHaveLength(1);
  });
});

describe('a member', () => {
  test('is changed and removed from the version seen', async () => {
    const [owner, second] = await twoOwners();
    const address = `${v1}/members/${second.memberId}`;
    expect((await api.http(owner).patch(address).send({ name: 'Ana' })).status).toBe(428);
    const changed = await api.http(owner).patch(address).set('if-match', '"1"').send({ name: 'Ana' });
    expect([changed.headers.etag, changed.body.version]).toEqual(['"2"', 2]);
    expect((await api.http(owner).patch(address).set('if-match', '"1"').send({ role: 'crew' })).status).toBe(412);
    expect((await api.http(owner).delete(address).set('if-match', '"1"')).status).toBe(412);
    expect((await api.http(owner).delete(address).set('if-match', '"2"')).status).toBe(204);
  });
});

describe('an invitation tapped twice', () => {
  test.each([2, 4])(
    '%i at once, round after round, makes one member, and tells nobody of a broken server',
    async (times) => {
      const owner = await api.signIn();
      for (let round = 0; round < rounds({ gate: 5, long: 30 }); round++) {
        const { email, token } = await invite(owner, 'crew');
        const answers = await Promise.all(Array.from({ length: times }, () => accept(token)));
        expect(answers.map(({ status }) => status)).toEqual(Array(times).fill(201));
        const there = (await members(owner)).filter((member) => member.email === email);
        expect(there).toHaveLength(1);
        expect(new Set(answers.map(({ body }) => body.member.id))).toEqual(new Set([there[0]?.id]));
        const signedIn = await api.http().post(`${v1}/session`).send({ email, password });
        expect(signedIn.status).toBe(200);
      }
    },
    240_000,
  );

  test('by two people with two passwords is theirs who came first, and the other is told kindly', async () => {
    const owner = await api.signIn();
    const { token } = await invite(owner, 'crew');
    const answers = await Promise.all([accept(token), accept(token, { password: 'the words of somebody else' })]);
    expect(answers.map(({ status }) => status).sort()).toEqual([201, 410]);
    const late = answers.find(({ status }) => status === 410);
    expect(late?.body).toMatchObject({ title: problems['link-gone'].title });
    expect(late?.body.detail).toContain('If that was you, sign in');
  });
});

describe('whoever holds an invitation reads that mailbox', () => {
  const userAt = (email: string) => api.platform.database.owner.user.findUnique({ where: { email } });
  const neverConfirmed = (email: string) =>
    api.platform.database.people.user.update({ where: { email }, data: { emailVerified: false } });

  test('so the address is confirmed', async () => {
    const owner = await api.signIn();
    const { email, token } = await invite(owner, 'crew');
    await accept(token);
    expect(await userAt(email)).toMatchObject({ emailVerified: true });
  });

  test('and gets the address that somebody took in advance, whose company stays as it is', async () => {
    const [owner, squatter] = [await api.signIn(), await api.signIn()];
    await neverConfirmed(squatter.email);
    const { token } = await invite(owner, 'crew', squatter.email);
    const joined = await accept(token);
    expect([joined.status, joined.body.company.id]).toEqual([201, owner.companyId]);
    expect((await api.http(squatter).get(`${v1}/session`)).body.company.id).toBe(squatter.companyId);
    const bySquatter = await api
      .http()
      .post(`${v1}/session`)
      .send({ email: squatter.email, password: squatter.password });
    expect(bySquatter.status).toBe(401);
  });

  test('and sets a new password for an account that never confirmed; its sessions end', async () => {
    const owner = await api.signIn();
    const person = await api.signIn({ companyId: owner.companyId, role: 'crew' });
    await neverConfirmed(person.email);
    await remove(owner, person);
    const { token } = await invite(owner, 'crew', person.email);
    expect((await accept(token)).status).toBe(201);
    const old = { email: person.email, password: person.password };
    expect((await api.http().post(`${v1}/session`).send(old)).status).toBe(401);
  });

  test('but an account that confirmed gives its own password', async () => {
    const owner = await api.signIn();
    const person = await api.signIn({ companyId: owner.companyId, role: 'crew' });
    await api.platform.database.owner.user.update({ where: { email: person.email }, data: { emailVerified: true } });
    await remove(owner, person);
    const { token } = await invite(owner, 'crew', person.email);
    expect((await accept(token)).body.type).toBe('urn:underlath:problem:wrong-credentials');
    expect((await accept(token, { password: person.password })).status).toBe(201);
  });
});

describe('the cost book', () => {
  test('is the owner’s to change until the owner lets estimators', async () => {
    const owner = await api.signIn();
    const estimator = await api.signIn({ companyId: owner.companyId, role: 'estimator' });
    const save = () =>
      api.http(estimator).put(`${v1}/cost-book`).set('if-match', '"0"').send({ book: starterCostBook });
    expect((await save()).status).toBe(403);
    const company = await api
      .http(owner)
      .patch(`${v1}/company`)
      .set('if-match', '"1"')
      .send({ estimatorsEditCostBook: true });
    expect(company.body.estimatorsEditCostBook).toBe(true);
    expect((await save()).status).not.toBe(403);
    const crew = await api.signIn({ companyId: owner.companyId, role: 'crew' });
    const byCrew = await api.http(crew).put(`${v1}/cost-book`).set('if-match', '"0"').send({ book: starterCostBook });
    expect(byCrew.status).toBe(403);
  });
});

describe('the log of people', () => {
  test('tells each change of rights, who did it, and what ended with it', async () => {
    const [owner, second] = await twoOwners();
    await makeKey(second, { name: 'Nightly' });
    const { id, token, email } = await invite(second, 'crew');
    await accept(token);
    await invite(second, 'crew');
    await change(owner, second, { role: 'crew', name: 'Bo Brandt' });
    await remove(owner, second);
    await api
      .http(owner)
      .patch(`${v1}/company`)
      .set('if-match', '"1"')
      .send({ crewSeesMoney: true, phone: '555-0100' });
    const key = await makeKey(owner);
    await api.http(owner).delete(`${v1}/api-keys/${key.id}`);
    const open = await invite(owner, 'crew');
    await api.http(owner).delete(`${v1}/invitations/${open.id}`);
    const { body } = await api.http(owner).get(`${v1}/people-log?limit=50`);
    const told = (type: string) => body.items.filter((one: { type: string }) => one.type === type);
    expect(told('api-key.made')[1]).toMatchObject({
      actor: { id: second.memberId },
      data: { name: 'Nightly', role: 'owner', use: 'full' },
    });
    expect(told('invitation.accepted')).toMatchObject([{ subjectId: id, data: { to: email } }]);
    expect(told('member.joined')).toMatchObject([{ data: { role: 'crew' } }]);
    expect(told('member.role-changed')).toMatchObject([
      {
        actor: { id: owner.memberId },
        subjectId: second.memberId,
        data: { from: 'owner', to: 'crew', keysLowered: 1, invitationsEnded: 1 },
      },
    ]);
    expect(told('member.renamed')).toMatchObject([{ data: { to: 'Bo Brandt' } }]);
    expect(told('member.removed')).toMatchObject([{ data: { keysEnded: 1, invitationsEnded: 0 } }]);
    expect(told('company.changed')).toMatchObject([{ data: { changed: ['phone'] } }]);
    expect(told('rights.changed')).toMatchObject([{ data: { crewSeesMoney: true } }]);
    expect(told('api-key.revoked')).toMatchObject([{ subjectId: key.id }]);
    expect(told('invitation.revoked')).toMatchObject([{ subjectId: open.id }]);
  });
});

describe('an owner who was lowered while a request was on its way', () => {
  test('makes no key and no invitation, ends none, and changes nothing of the company', async () => {
    const [owner, second] = await twoOwners();
    const [key, invitation] = [await makeKey(owner), await invite(owner)];
    const { apiKeys, invitations, companies } = api.deps.services;
    // As the request was let in: with the role that is gone by the time it is worked on.
    const late: Caller = {
      companyId: second.companyId,
      role: 'owner',
      memberId: second.memberId,
      actor: { kind: 'member', id: second.memberId, name: second.name },
    };
    await change(owner, second, { role: 'crew' });
    for (const work of [
      () => apiKeys.create(late, { name: 'Late', role: 'owner', use: 'full' }),
      () => apiKeys.revoke(late, key.id),
      () => invitations.invite(late, { email: newEmail(), role: 'owner' }),
      () => invitations.revoke(late, invitation.id),
      () => companies.change(late, 1, { crewSeesMoney: true }),
    ])
      await expect(work()).rejects.toMatchObject({ type: 'not-allowed' });
    expect((await lists(owner)).keys).toHaveLength(1);
  });
});

test('an answer kept for repeats shows no price to who may not see prices any more', async () => {
  const job = await startJob(api);
  const second = await api.signIn({ companyId: job.owner.companyId, role: 'estimator' });
  const finding = await job.priced();
  const judge = () =>
    api
      .http(second)
      .post(`${v1}/findings/${finding.id}/judgments`)
      .set('idempotency-key', 'measured-again')
      .send({ inputs: cutPlate });
  const first = await judge();
  expect(first.body.linesCents).toBeGreaterThan(0);
  await change(job.owner, second, { role: 'crew' });
  const again = await judge();
  expect(again.headers['idempotency-replayed']).toBe('true');
  expect(again.body).toEqual({ ...first.body, linesCents: null });
});
