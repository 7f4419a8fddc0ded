import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { costBookSchema } from '@underlath/rules/pricing';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { hashSecret } from '../../apps/api/src/platform/secrets.ts';
import { type Person, startTestApi, type TestApi } from '../support/api.ts';
import { newProject, someId, v1 } from '../support/site.ts';

let api: TestApi;

beforeAll(async () => {
  api = await startTestApi();
});
afterAll(() => api.close());

const password = 'rim joist over sill plate';
let made = 0;
const newEmail = () => `person-${++made}@example.test`;
const open = (body: object = {}) =>
  api
    .http()
    .post(`${v1}/companies`)
    .send({ companyName: 'Marsh Remodel', name: 'Olive Marsh', email: newEmail(), password, ...body });
const signIn = (email: string, secret = password) => api.http().post(`${v1}/session`).send({ email, password: secret });
const cookieOf = (answer: { headers: Record<string, unknown> }): { cookie: string } => {
  const [first = ''] = answer.headers['set-cookie'] as string[];
  return { cookie: first.split(';')[0] ?? '' };
};
const invite = (owner: Pick<Person, 'cookie'>, email: string, role = 'crew') =>
  api.http(owner).post(`${v1}/invitations`).send({ email, role });
/** As a link mailed to it does. */
const confirm = (email: string) =>
  api.platform.database.owner.user.update({ where: { email }, data: { emailVerified: true } });
const tokenOf = (link: string) => link.split('#')[1] ?? '';
const accept = (token: string, more: object = {}) =>
  api
    .http()
    .post(`${v1}/invitations/accept`)
    .send({ token, name: 'Cleo Birch', password, ...more });

describe('opening a company', () => {
  test('makes its first owner, signs them in, and puts the starter cost book there and nothing else', async () => {
    const email = newEmail();
    const answer = await open({ email: email.toUpperCase() });
    expect(answer.status).toBe(201);
    expect(answer.body).toMatchObject({
      member: { email, role: 'owner', removedAt: null },
      company: { name: 'Marsh Remodel' },
    });
    const [cookie] = answer.headers['set-cookie'] as unknown as string[];
    expect(cookie).toMatch(/^underlath_session=.+; Path=\/; Expires=.+; HttpOnly; SameSite=Lax$/);
    const me = await api.http(cookieOf(answer)).get(`${v1}/session`);
    expect(me.body).toEqual(answer.body);
    const { id } = answer.body.company;
    const rows = await api.platform.database.inCompany(id, async (tx) => ({
      books: await tx.costBook.findMany(),
      projects: await tx.project.count(),
      members: await tx.member.count(),
    }));
    expect(rows).toMatchObject({ projects: 0, members: 1, books: [{ version: 1 }] });
    expect(costBookSchema.safeParse(rows.books[0]?.book).success).toBe(true);
  });

  test('refuses a short or common password', async () => {
    expect((await open({ password: 'short' })).body.errors[0].pointer).toBe('/password');
    expect((await open({ password: 'passwordpassword' })).body.errors[0].pointer).toBe('/password');
    expect((await open({ email: 'olive' })).body.errors[0].pointer).toBe('/email');
    expect((await open({ companyName: '' })).body.errors[0].pointer).toBe('/companyName');
  });

  test('that fails half way leaves no one behind', async () => {
    const email = newEmail();
    const { database } = api.platform;
    const inCompany = database.inCompany;
    Object.assign(database, { inCompany: () => Promise.reject(new Error('broken')) });
    expect((await open({ email })).status).toBe(500);
    Object.assign(database, { inCompany });
    expect((await open({ email })).status).toBe(201);
  });
});

describe('signing in and out', () => {
  test('takes the right password in any case of the address, and tells nothing about a wrong one', async () => {
    const email = newEmail();
    await open({ email });
    expect((await signIn(email.toUpperCase())).status).toBe(200);
    const wrong = await signIn(email, 'another password altogether');
    const unknown = await signIn(newEmail());
    expect([wrong.status, wrong.body.type]).toEqual([401, 'urn:underlath:problem:wrong-credentials']);
    expect(unknown.body.detail).toBe(wrong.body.detail);
  });

  test('out ends the session on the server, not only in the browser', async () => {
    const session = cookieOf(await open());
    const out = await api.http(session).delete(`${v1}/session`);
    expect([out.status, out.headers['set-cookie']?.[0]]).toEqual([204, expect.stringContaining('1970')]);
    expect((await api.http(session).get(`${v1}/session`)).status).toBe(401);
  });

  test('a page drawn for one person reads and does nothing once somebody else signed in in its browser', async () => {
    const owner = await api.signIn();
    const crew = await api.signIn({ companyId: owner.companyId, role: 'crew' });
    const from = (page: Person) => api.http(crew).set('underlath-member', page.memberId);
    for (const path of ['/session', '/projects']) {
      expect((await from(owner).get(v1 + path)).body.type).toBe('urn:underlath:problem:not-signed-in');
      expect((await from(crew).get(v1 + path)).status).toBe(200);
    }
    const renamed = await from(owner).patch(`${v1}/account`).send({ name: 'Ana Brandt' });
    expect(renamed.status).toBe(401);
  });

  test('keeps passwords as Argon2id only', async () => {
    const email = newEmail();
    await open({ email });
    const { rows } = await api.platform.database.ownerPool.query(
      'select a.password from account a join app_user u on u.id = a.user_id where u.email = $1',
      [email],
    );
    expect(rows[0].password).toMatch(/^\$argon2id\$/);
  });
});

describe('the company and its people', () => {
  test('the details change from the version seen', async () => {
    const owner = await api.signIn();
    const patch = (version: number, change: object) =>
      api.http(owner).patch(`${v1}/company`).set('if-match', `"${version}"`).send(change);
    const changed = await patch(1, { name: 'Marsh and Daughter', licenseNumber: 'CCB 000000', state: 'OR' });
    expect(changed.body).toMatchObject({
      name: 'Marsh and Daughter',
      licenseNumber: 'CCB 000000',
      state: 'OR',
      version: 2,
    });
    expect((await patch(1, { name: 'Late' })).status).toBe(412);
    expect((await patch(2, { state: 'Oregon' })).body.errors[0].pointer).toBe('/state');
  });

  test('the last owner neither goes nor steps down, also when two try at once', async () => {
    const owner = await api.signIn();
    const remove = (id: string) => api.http(owner).delete(`${v1}/members/${id}`).set('if-match', '"1"');
    const change = (id: string, body: object) =>
      api.http(owner).patch(`${v1}/members/${id}`).set('if-match', '"1"').send(body);
    expect((await remove(owner.memberId)).body.type).toBe('urn:underlath:problem:wrong-state');
    expect((await change(owner.memberId, { role: 'crew' })).body.type).toBe('urn:underlath:problem:wrong-state');
    const second = await api.signIn({ companyId: owner.companyId, role: 'owner' });
    const both = await Promise.all([
      change(owner.memberId, { role: 'estimator' }),
      api.http(second).patch(`${v1}/members/${second.memberId}`).set('if-match', '"1"').send({ role: 'estimator' }),
    ]);
    const { body } = await api.http(owner).get(`${v1}/members`);
    expect(both.filter(({ status }) => status === 200)).toHaveLength(1);
    expect(body.items.filter(({ role }: { role: string }) => role === 'owner')).toHaveLength(1);
  });

  test('a changed role holds from the next request on', async () => {
    const owner = await api.signIn();
    const person = await api.signIn({ companyId: owner.companyId, role: 'crew' });
    const project = () => api.http(person).post(`${v1}/projects`).send(newProject);
    expect((await project()).status).toBe(403);
    await api.http(owner).patch(`${v1}/members/${person.memberId}`).set('if-match', '"1"').send({ role: 'estimator' });
    expect((await project()).status).toBe(201);
  });

  test('a removed member is out at once, with every session and every key they made', async () => {
    const owner = await api.signIn();
    const person = await api.signIn({ companyId: owner.companyId, role: 'owner' });
    const key = await api.http(person).post(`${v1}/api-keys`).send({ name: 'Sync', role: 'crew' });
    expect((await api.http(owner).delete(`${v1}/members/${person.memberId}`).set('if-match', '"1"')).status).toBe(204);
    expect((await api.http(person).get(`${v1}/session`)).status).toBe(401);
    const bearer = await api.http().get(`${v1}/projects`).set('authorization', `Bearer ${key.body.secret}`);
    expect(bearer.status).toBe(401);
    const sessions = await api.platform.database.ownerPool.query('select 1 from session where user_id = $1', [
      person.userId,
    ]);
    expect(sessions.rowCount).toBe(0);
    expect((await signIn(person.email, person.password)).status).toBe(403);
    expect((await api.http(owner).delete(`${v1}/members/${person.memberId}`).set('if-match', '"1"')).status).toBe(404);
    const { body } = await api.http(owner).get(`${v1}/members`);
    expect(body.items.find(({ id }: { id: string }) => id === person.memberId).removedAt).not.toBeNull();
  });

  test('a member of another company is 404', async () => {
    const [owner, stranger] = [await api.signIn(), await api.signIn()];
    expect((await api.http(owner).delete(`${v1}/members/${stranger.memberId}`).set('if-match', '"1"')).status).toBe(
      404,
    );
    expect(
      (await api.http(owner).patch(`${v1}/members/${stranger.memberId}`).set('if-match', '"1"').send({ role: 'crew' }))
        .status,
    ).toBe(404);
  });
});

describe('an invitation', () => {
  test('is a link with 256 random bits, mailed, of which the database keeps only the hash', async () => {
    const owner = await api.signIn({ name: 'Olive Marsh' });
    const email = newEmail();
    const { status, body } = await invite(owner, email);
    expect(status).toBe(201);
    expect(body.link).toMatch(new RegExp(`^${api.platform.config.publicUrl}/invitation#[\\w-]{43}$`));
    const token = tokenOf(body.link);
    const { rows } = await api.platform.database.ownerPool.query('select token_hash from invitation where id = $1', [
      body.id,
    ]);
    expect(rows).toEqual([{ token_hash: hashSecret(token) }]);
    const mail = () =>
      readdirSync(join(api.dataDir, 'mail'))
        .map((name) => readFileSync(join(api.dataDir, 'mail', name), 'utf8'))
        .join('\n');
    await expect.poll(mail, { timeout: 15_000 }).toContain(`To: ${email}`);
    expect(mail().replace(/=\n/g, '')).toContain(token);
    // What stays in the database after sending opens nothing.
    const kept = () =>
      api.platform.database.ownerPool
        .query('select text, state from mail where "to" = $1', [email])
        .then((answer) => answer.rows[0]);
    await expect.poll(kept, { timeout: 15_000 }).toMatchObject({ state: 'filed' });
    expect((await kept()).text).not.toContain(token);
    expect((await api.http(owner).get(`${v1}/invitations`)).text).not.toContain(token);
  });

  test('tells what it offers as often as it is looked at, and changes nothing by it', async () => {
    const owner = await api.signIn();
    const email = newEmail();
    const { body } = await invite(owner, email, 'estimator');
    const look = () =>
      api
        .http()
        .post(`${v1}/invitations/look-up`)
        .send({ token: tokenOf(body.link) });
    expect((await look()).body).toMatchObject({ companyName: 'Brandt Remodel', email, role: 'estimator' });
    await look();
    const { body: list } = await api.http(owner).get(`${v1}/invitations`);
    expect(list.items[0]).toMatchObject({ id: body.id, acceptedAt: null, revokedAt: null });
  });

  test('makes a member, signed in, once', async () => {
    const owner = await api.signIn();
    const email = newEmail();
    const token = tokenOf((await invite(owner, email)).body.link);
    const joined = await accept(token);
    expect(joined.status).toBe(201);
    expect(joined.body).toMatchObject({
      member: { email, role: 'crew', name: 'Cleo Birch' },
      company: { id: owner.companyId },
    });
    expect((await api.http(cookieOf(joined)).get(`${v1}/session`)).body.member.id).toBe(joined.body.member.id);
    const again = await accept(token);
    expect([again.status, again.body.member.id]).toEqual([201, joined.body.member.id]);
    const other = await accept(token, { password: 'the words of somebody else' });
    expect([other.status, other.body.type]).toEqual([410, 'urn:underlath:problem:link-gone']);
  });

  test('accepted ten times at once makes one member, who is signed in each time', async () => {
    const owner = await api.signIn();
    const token = tokenOf((await invite(owner, newEmail())).body.link);
    const answers = await Promise.all(Array.from({ length: 10 }, () => accept(token)));
    expect(answers.map(({ status }) => status)).toEqual(Array(10).fill(201));
    expect((await api.http(owner).get(`${v1}/members`)).body.items).toHaveLength(2);
  });

  test('with a weak password is not used up and leaves no one behind', async () => {
    const owner = await api.signIn();
    const token = tokenOf((await invite(owner, newEmail())).body.link);
    expect((await accept(token, { password: 'short' })).body.errors[0].pointer).toBe('/password');
    expect((await accept(token)).status).toBe(201);
  });

  test('brings a removed member back under their old password, and under no other', async () => {
    const owner = await api.signIn();
    const person = await api.signIn({ companyId: owner.companyId, role: 'crew' });
    await confirm(person.email);
    await api.http(owner).delete(`${v1}/members/${person.memberId}`).set('if-match', '"1"');
    const token = tokenOf((await invite(owner, person.email, 'estimator')).body.link);
    expect((await accept(token, { password: 'not their own password' })).body.type).toBe(
      'urn:underlath:problem:wrong-credentials',
    );
    const back = await accept(token, { password: person.password });
    expect(back.body.member).toMatchObject({ id: person.memberId, role: 'estimator', removedAt: null });
  });

  test('for someone of another company is refused, and their membership stays', async () => {
    const [owner, elsewhere] = [await api.signIn(), await api.signIn()];
    const token = tokenOf((await invite(owner, elsewhere.email)).body.link);
    expect((await accept(token, { password: elsewhere.password })).body.type).toBe('urn:underlath:problem:wrong-state');
    expect((await api.http(elsewhere).get(`${v1}/session`)).body.company.id).toBe(elsewhere.companyId);
  });

  test('revoked, run out or made up opens nothing', async () => {
    const owner = await api.signIn();
    const revoked = (await invite(owner, newEmail())).body;
    expect((await api.http(owner).delete(`${v1}/invitations/${revoked.id}`)).status).toBe(204);
    expect((await api.http(owner).delete(`${v1}/invitations/${revoked.id}`)).status).toBe(404);
    expect((await accept(tokenOf(revoked.link))).status).toBe(410);
    const old = (await invite(owner, newEmail())).body;
    await api.platform.database.inCompany(owner.companyId, (tx) =>
      tx.invitation.updateMany({ where: { id: old.id }, data: { expiresAt: new Date(Date.now() - 1000) } }),
    );
    expect((await accept(tokenOf(old.link))).status).toBe(410);
    expect((await accept('made-up')).status).toBe(404);
    const stranger = await api.signIn();
    expect((await api.http(stranger).delete(`${v1}/invitations/${old.id}`)).status).toBe(404);
  });

  test('to a member is refused', async () => {
    const owner = await api.signIn();
    expect((await invite(owner, owner.email.toUpperCase())).body.type).toBe('urn:underlath:problem:already-exists');
    expect((await invite(owner, 'nobody', 'boss')).body.errors).toHaveLength(2);
  });
});

describe('an API key', () => {
  test('works for its company with its role, is shown once, and ends when revoked', async () => {
    const owner = await api.signIn();
    const { status, body } = await api
      .http(owner)
      .post(`${v1}/api-keys`)
      .send({ name: 'Scheduler', role: 'estimator' });
    expect(status).toBe(201);
    expect(body.secret).toMatch(/^ulk_[\w-]{43}$/);
    expect(body.secret.startsWith(body.prefix)).toBe(true);
    const list = await api.http(owner).get(`${v1}/api-keys`);
    expect(list.text).not.toContain(body.secret);
    const asKey = (method: 'get' | 'post', path: string) =>
      api
        .http()
        [method](v1 + path)
        .set('authorization', `Bearer ${body.secret}`);
    const project = await asKey('post', '/projects').send(newProject);
    expect(project.status).toBe(201);
    const record = await api.http(owner).get(`${v1}/projects/${project.body.id}/record`);
    expect(record.body.items[0].actor).toEqual({ kind: 'api-key', id: body.id, name: 'Scheduler' });
    expect((await asKey('get', '/session')).status).toBe(403);
    expect((await asKey('get', '/api-keys')).status).toBe(403);
    expect((await api.http(owner).delete(`${v1}/api-keys/${body.id}`)).status).toBe(204);
    expect((await asKey('get', '/projects')).status).toBe(401);
    expect((await api.http(owner).delete(`${v1}/api-keys/${someId()}`)).status).toBe(404);
  });
});
