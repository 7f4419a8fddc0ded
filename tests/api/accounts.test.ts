import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { idleSeconds } from '../../apps/api/src/platform/accounts/sessions.ts';
import { type Person, startTestApi, type TestApi } from '../support/api.ts';
import { mailFile, mailsGone, mailsOfKind } from '../support/mails.ts';
import { codeAt, fromBase32 } from '../support/one-time-code.ts';
import { SoftPasskey } from '../support/passkey.ts';
import { newProject, v1 } from '../support/site.ts';

let api: TestApi;

beforeAll(async () => {
  api = await startTestApi();
});
afterAll(() => api.close());

type Cookie = { cookie: string };
const newPassword = 'four joists and a ledger';
const post = (path: string, body: object, who?: Cookie) =>
  api
    .http(who)
    .post(v1 + path)
    .send(body);
const signIn = (email: string, password: string) => post('/session', { email, password });
const whoAmI = (who: Cookie) => api.http(who).get(`${v1}/session`);
const account = async (who: Cookie) => (await api.http(who).get(`${v1}/account`)).body;
const typeOf = ({ body }: { body: { type?: string } }) => body.type?.split(':').at(-1);
const sql = async (text: string, values: unknown[] = []) =>
  (await api.platform.database.ownerPool.query(text, values)).rows;

/** Every cookie that an answer set and did not clear. */
function cookieOf(answer: { headers: Record<string, unknown> }): Cookie {
  const set = (answer.headers['set-cookie'] ?? []) as string[];
  return {
    cookie: set
      .filter((one) => !one.includes('1970'))
      .map((one) => one.split(';')[0])
      .join('; '),
  };
}

/** The secret in the newest link that a person was mailed. */
async function mailedToken(person: Person, to = person.email): Promise<string> {
  await mailsGone(api, person.companyId);
  const mail = (await mailsOfKind(api, person.companyId, 'accountLink')).findLast((one) => one.to === to);
  return /#([\w-]{43})/.exec(mailFile(api, mail?.id ?? ''))?.[1] ?? '';
}

const told = async ({ companyId }: Person) =>
  (await mailsOfKind(api, companyId, 'accountTold')).map(({ to, subject }) => ({ to, subject }));
const logged = async ({ companyId }: Person) =>
  (await sql('select type from people_event where company_id = $1 order by at, id', [companyId])).map(
    ({ type }) => type,
  );

/** A person whose authenticator app was set up, with its secret and their recovery codes. */
async function withCodes(): Promise<{ person: Person; secret: Buffer; recoveryCodes: string[] }> {
  const person = await api.signIn();
  const begun = await post('/account/codes', { password: person.password }, person);
  const secret = fromBase32(begun.body.secret);
  // Of the step before, so that the code of now can still be used once.
  const code = codeAt(secret, new Date(Date.now() - 30_000));
  const confirmed = await post('/account/codes/confirm', { code }, person);
  return { person, secret, recoveryCodes: confirmed.body.recoveryCodes };
}

describe('changing the password', () => {
  test('asks for the present one, ends every other session, and tells the person', async () => {
    const person = await api.signIn();
    const other = cookieOf(await signIn(person.email, person.password));
    const wrong = await post('/account/password', { password: 'not their own at all', newPassword }, person);
    expect([wrong.status, typeOf(wrong)]).toEqual([401, 'wrong-credentials']);
    expect((await whoAmI(other)).status).toBe(200);
    const changed = await post('/account/password', { password: person.password, newPassword }, person);
    expect(changed.status).toBe(204);
    expect([(await whoAmI(person)).status, (await whoAmI(other)).status]).toEqual([200, 401]);
    expect((await signIn(person.email, person.password)).status).toBe(401);
    expect((await signIn(person.email, newPassword)).status).toBe(200);
    expect(await told(person)).toEqual([{ to: person.email, subject: 'Your password was changed' }]);
    expect(await logged(person)).toContain('password.changed');
  });

  test('refuses a common one and one of the person’s own and the firm’s words, and names the field', async () => {
    const person = await api.signIn({ name: 'Odile Marsh' });
    for (const weak of ['short', 'password1234567', 'Odile Marsh 1984!!', 'brandtremodel2026', person.email]) {
      const refused = await post('/account/password', { password: person.password, newPassword: weak }, person);
      expect([refused.status, refused.body.errors?.[0].pointer], weak).toEqual([422, '/newPassword']);
    }
  });
});

describe('a forgotten password', () => {
  const forgot = (email: string) => post('/account/forgotten', { email });
  const reset = (token: string, password = newPassword) => post('/account/reset', { token, password });

  test('is answered in the same words for a known and an unknown address, and the unknown one is mailed nothing', async () => {
    const person = await api.signIn();
    const before = (await sql('select count(*)::int as n from mail'))[0].n;
    const [known, unknown] = [await forgot(person.email.toUpperCase()), await forgot('nobody@example.test')];
    expect([known.status, known.body]).toEqual([unknown.status, unknown.body]);
    expect(known.body).toEqual({ delivery: 'filed' });
    expect((await sql('select count(*)::int as n from mail'))[0].n - before).toBe(1);
  });

  test('has a link of 256 bits for 30 minutes, of which the database keeps the hash alone', async () => {
    const person = await api.signIn();
    await forgot(person.email);
    const token = await mailedToken(person);
    expect(Buffer.from(token, 'base64url')).toHaveLength(32);
    const [row] = await sql(
      `select l.*, extract(epoch from expires_at - created_at)::int as seconds from account_link l where user_id = $1`,
      [person.userId],
    );
    expect(row.seconds).toBe(1800);
    expect(JSON.stringify(row)).not.toContain(token);
    expect(JSON.stringify(await sql('select * from mail where "to" = $1', [person.email]))).not.toContain(token);
  });

  test('is chosen anew once, which ends every session and tells the person', async () => {
    const person = await api.signIn();
    await forgot(person.email);
    const token = await mailedToken(person);
    const weak = await reset(token, 'passwordpassword');
    expect([weak.status, weak.body.errors[0].pointer]).toEqual([422, '/password']);
    expect((await reset(token)).status).toBe(204);
    expect((await whoAmI(person)).status).toBe(401);
    expect((await signIn(person.email, newPassword)).status).toBe(200);
    expect((await told(person))[0]?.subject).toBe('Your password was changed with a mailed link');
    expect(typeOf(await reset(token, 'a second phrase for it'))).toBe('link-gone');
    expect(typeOf(await reset('made-up'))).toBe('link-gone');
  });

  test('of two tries at once with one link takes one', async () => {
    const person = await api.signIn();
    await forgot(person.email);
    const token = await mailedToken(person);
    const both = await Promise.all([reset(token), reset(token, 'another phrase entirely')]);
    expect(both.map(({ status }) => status).sort()).toEqual([204, 410]);
  });

  test('has a link that ends with its time, and with a newer one', async () => {
    const person = await api.signIn();
    await forgot(person.email);
    const first = await mailedToken(person);
    await forgot(person.email);
    const second = await mailedToken(person);
    expect(typeOf(await reset(first))).toBe('link-gone');
    await sql(`update account_link set expires_at = now() - interval '1 second' where user_id = $1`, [person.userId]);
    expect(typeOf(await reset(second))).toBe('link-gone');
  });

  test('is mailed five times an hour at most, and answered alike after that', async () => {
    const person = await api.signIn();
    for (let at = 0; at < 7; at += 1) expect((await forgot(person.email)).body).toEqual({ delivery: 'filed' });
    expect(await mailsOfKind(api, person.companyId, 'accountLink')).toHaveLength(5);
  });

  test('leaves a second step where it is', async () => {
    const { person } = await withCodes();
    await forgot(person.email);
    await reset(await mailedToken(person));
    const begun = await signIn(person.email, newPassword);
    expect([begun.status, begun.body]).toEqual([202, { needs: ['code', 'recovery'] }]);
  });
});

describe('an address that is not confirmed', () => {
  async function open(): Promise<Person> {
    const email = `odile-${crypto.randomUUID()}@example.test`;
    const body = { companyName: 'Plumb & Tenon', name: 'Odile Marsh', email, password: 'rim joist over sill plate' };
    const answer = await post('/companies', body);
    const { member, company } = answer.body;
    const [{ user_id: userId }] = await sql('select user_id from member where id = $1', [member.id]);
    return { ...body, ...cookieOf(answer), userId, companyId: company.id, memberId: member.id, role: 'owner' };
  }

  test('mails nothing to others: no invitation, no notice; the work itself goes on', async () => {
    const person = await open();
    const invited = await post('/invitations', { email: 'crew@example.test', role: 'crew' }, person);
    expect([invited.status, typeOf(invited)]).toEqual([403, 'confirm-email-first']);
    expect(invited.body.detail).toMatch(/have it sent again/);
    expect(await sql('select 1 from invitation where company_id = $1', [person.companyId])).toEqual([]);
    expect((await post('/projects', newProject, person)).status).toBe(201);
    expect(await account(person)).toMatchObject({ emailConfirmed: false, delivery: 'filed' });
  });

  test('is confirmed by the link that opening a company mails, once', async () => {
    const person = await open();
    const token = await mailedToken(person);
    const confirmed = await post('/account/confirm', { token });
    expect([confirmed.status, confirmed.body]).toEqual([200, { email: person.email }]);
    expect((await post('/invitations', { email: 'crew@example.test', role: 'crew' }, person)).status).toBe(201);
    expect(typeOf(await post('/account/confirm', { token }))).toBe('link-gone');
    expect(typeOf(await post('/account/confirmation', {}, person))).toBe('wrong-state');
    expect(await logged(person)).toContain('email.confirmed');
  });

  test('is mailed its link again when asked, and the earlier link ends', async () => {
    const person = await open();
    const first = await mailedToken(person);
    const again = await post('/account/confirmation', {}, person);
    expect([again.status, again.body]).toEqual([202, { delivery: 'filed' }]);
    const second = await mailedToken(person);
    expect(typeOf(await post('/account/confirm', { token: first }))).toBe('link-gone');
    expect((await post('/account/confirm', { token: second })).status).toBe(200);
    const reset = await post('/account/reset', { token: second, password: newPassword });
    expect(typeOf(reset)).toBe('link-gone');
  });

  test('of a key’s maker stops the key too', async () => {
    const person = await open();
    const key = await post('/api-keys', { name: 'Sync', role: 'owner' }, person);
    const asKey = await api
      .http()
      .post(`${v1}/invitations`)
      .set('authorization', `Bearer ${key.body.secret}`)
      .send({ email: 'crew@example.test', role: 'crew' });
    expect(asKey.status).toBe(403);
  });
});

describe('the own name and address', () => {
  test('a name follows to the member', async () => {
    const person = await api.signIn();
    const changed = await api.http(person).patch(`${v1}/account`).send({ name: 'Ana Marsh' });
    expect(changed.body).toMatchObject({ name: 'Ana Marsh', email: person.email });
    expect((await whoAmI(person)).body.member.name).toBe('Ana Marsh');
  });

  test('an address counts once its link was opened; the old one is told twice', async () => {
    const person = await api.signIn();
    const email = `new-${person.memberId}@example.test`;
    const body = { email: email.toUpperCase(), password: person.password };
    expect(typeOf(await post('/account/email', { ...body, password: 'not their own at all' }, person))).toBe(
      'wrong-credentials',
    );
    expect((await post('/account/email', body, person)).status).toBe(202);
    expect(await account(person)).toMatchObject({ email: person.email, pendingEmail: email });
    expect((await signIn(email, person.password)).status).toBe(401);
    const token = await mailedToken(person, email);
    expect((await post('/account/confirm', { token })).body).toEqual({ email });
    expect((await signIn(email, person.password)).status).toBe(200);
    expect((await signIn(person.email, person.password)).status).toBe(401);
    expect((await whoAmI(person)).body.member.email).toBe(email);
    expect(await told(person)).toEqual([
      expect.objectContaining({ to: person.email, subject: expect.stringContaining('asked to move') }),
      expect.objectContaining({ to: person.email, subject: expect.stringContaining('another e-mail address now') }),
    ]);
  });

  test('an address that somebody else signs in with is answered alike, and mailed nothing', async () => {
    const [person, other] = [await api.signIn(), await api.signIn()];
    const answer = await post('/account/email', { email: other.email, password: person.password }, person);
    expect([answer.status, answer.body]).toEqual([202, { delivery: 'filed' }]);
    expect(await mailsOfKind(api, person.companyId, 'accountLink')).toEqual([]);
  });

  test('moving ends a link for a new password that went to the address before', async () => {
    const person = await api.signIn();
    await post('/account/forgotten', { email: person.email });
    const reset = await mailedToken(person);
    const email = `moved-${person.memberId}@example.test`;
    await post('/account/email', { email, password: person.password }, person);
    await post('/account/confirm', { token: await mailedToken(person, email) });
    expect(typeOf(await post('/account/reset', { token: reset, password: newPassword }))).toBe('link-gone');
  });
});

describe('codes of an authenticator app', () => {
  const finish = (turn: Cookie, body: object) => post('/session/second', body, turn);

  test('ask for the password first, and count only after a right code', async () => {
    const person = await api.signIn();
    expect(typeOf(await post('/account/codes', { password: 'not their own at all' }, person))).toBe(
      'wrong-credentials',
    );
    const { body } = await post('/account/codes', { password: person.password }, person);
    expect(body.uri).toContain(`secret=${body.secret}`);
    expect(typeOf(await post('/account/codes/confirm', { code: '000000' }, person))).toBe('wrong-code');
    expect((await signIn(person.email, person.password)).status).toBe(200);
    const code = codeAt(fromBase32(body.secret), new Date());
    const confirmed = await post('/account/codes/confirm', { code }, person);
    expect(new Set(confirmed.body.recoveryCodes).size).toBe(10);
    expect(await account(person)).toMatchObject({ codesOn: true, recoveryCodesLeft: 10 });
    expect((await signIn(person.email, person.password)).status).toBe(202);
    expect(await logged(person)).toContain('second-factor.on');
  });

  test('are sealed: the database shows neither the secret nor a recovery code', async () => {
    const { person, secret, recoveryCodes } = await withCodes();
    const kept = JSON.stringify([
      await sql('select * from one_time_codes where user_id = $1', [person.userId]),
      await sql('select * from recovery_code where user_id = $1', [person.userId]),
    ]);
    for (const word of [secret.toString('hex'), secret.toString('base64'), recoveryCodes[0] ?? 'x'])
      expect(kept).not.toContain(word);
    expect(kept).not.toContain((recoveryCodes[0] ?? 'x').replaceAll('-', ''));
  });

  test('sign in in two steps; the first opens nothing', async () => {
    const { person, secret } = await withCodes();
    const begun = await signIn(person.email, person.password);
    const turn = cookieOf(begun);
    expect(turn.cookie).toMatch(/^underlath_sign_in=[\w-]{43}$/);
    expect((await whoAmI(turn)).status).toBe(401);
    expect((await whoAmI({ cookie: turn.cookie.replace('sign_in', 'session') })).status).toBe(401);
    const done = await finish(turn, { code: codeAt(secret, new Date()) });
    expect([done.status, done.body.member.id]).toEqual([200, person.memberId]);
    expect((await whoAmI(cookieOf(done))).status).toBe(200);
    expect(typeOf(await finish(turn, { code: codeAt(secret, new Date()) }))).toBe('sign-in-again');
  });

  test('work once each, also for two sign-ins at the same moment', async () => {
    const { person, secret } = await withCodes();
    const turns = [
      cookieOf(await signIn(person.email, person.password)),
      cookieOf(await signIn(person.email, person.password)),
    ];
    const code = codeAt(secret, new Date());
    const both = await Promise.all(turns.map((turn) => finish(turn, { code })));
    expect(both.map(({ status }) => status).sort()).toEqual([200, 401]);
  });

  test('five wrong ones end the sign-in, and twenty in an hour the patience', async () => {
    const { person, secret } = await withCodes();
    const turn = cookieOf(await signIn(person.email, person.password));
    for (let at = 0; at < 5; at += 1) expect(typeOf(await finish(turn, { code: '000000' }))).toBe('wrong-code');
    expect(typeOf(await finish(turn, { code: codeAt(secret, new Date()) }))).toBe('sign-in-again');
    for (let round = 0; round < 3; round += 1) {
      const next = cookieOf(await signIn(person.email, person.password));
      for (let at = 0; at < 5; at += 1) await finish(next, { code: '000000' });
    }
    const last = cookieOf(await signIn(person.email, person.password));
    const refused = await finish(last, { code: codeAt(secret, new Date()) });
    expect([refused.status, refused.headers['retry-after']]).toEqual([429, '3600']);
  });

  test('a sign-in that is begun waits ten minutes', async () => {
    const { person, secret } = await withCodes();
    const turn = cookieOf(await signIn(person.email, person.password));
    const [{ minutes }] = await sql(
      `select extract(epoch from expires_at - created_at)::int / 60 as minutes from sign_in_turn where user_id = $1`,
      [person.userId],
    );
    expect(minutes).toBe(10);
    await sql(`update sign_in_turn set expires_at = now() - interval '1 second' where user_id = $1`, [person.userId]);
    expect(typeOf(await finish(turn, { code: codeAt(secret, new Date()) }))).toBe('sign-in-again');
  });

  test('a recovery code stands in once, however it is typed, and the person is told', async () => {
    const { person, recoveryCodes } = await withCodes();
    const typed = (recoveryCodes[3] ?? '').toLowerCase().replaceAll('-', ' ');
    const done = await finish(cookieOf(await signIn(person.email, person.password)), { recoveryCode: typed });
    expect(done.status).toBe(200);
    const again = await finish(cookieOf(await signIn(person.email, person.password)), { recoveryCode: typed });
    expect(typeOf(again)).toBe('wrong-code');
    expect(await account(person)).toMatchObject({ recoveryCodesLeft: 9 });
    expect((await told(person)).at(-1)?.subject).toContain('with a recovery code');
  });

  test('new recovery codes end the earlier ones', async () => {
    const { person, recoveryCodes } = await withCodes();
    const made = await post('/account/recovery-codes', { password: person.password }, person);
    expect(made.body.recoveryCodes).toHaveLength(10);
    const turn = cookieOf(await signIn(person.email, person.password));
    expect(typeOf(await finish(turn, { recoveryCode: recoveryCodes[0] }))).toBe('wrong-code');
    expect((await finish(turn, { recoveryCode: made.body.recoveryCodes[0] })).status).toBe(200);
  });

  test('end with the password, and the recovery codes with them', async () => {
    const { person } = await withCodes();
    expect(typeOf(await post('/account/codes/end', { password: 'not their own at all' }, person))).toBe(
      'wrong-credentials',
    );
    expect((await post('/account/codes/end', { password: person.password }, person)).status).toBe(204);
    expect(await account(person)).toMatchObject({ codesOn: false, recoveryCodesLeft: 0 });
    expect((await signIn(person.email, person.password)).status).toBe(200);
  });

  test('of one person are not another’s, nor read by another key', async () => {
    const { person, secret } = await withCodes();
    const [row] = await sql('select sealed_secret from one_time_codes where user_id = $1', [person.userId]);
    expect(api.platform.sealing.unseal(person.userId, row.sealed_secret)).toHaveLength(32);
    expect(() => api.platform.sealing.unseal('somebody-else', row.sealed_secret)).toThrow();
    expect(secret).toHaveLength(20);
  });
});

describe('a passkey', () => {
  const origin = () => api.platform.config.publicUrl;
  async function withPasskey(verifies = true): Promise<{ person: Person; key: SoftPasskey; recoveryCodes: string[] }> {
    const person = await api.signIn();
    const key = new SoftPasskey(origin(), verifies);
    const asked = await post('/account/passkeys/options', { password: person.password }, person);
    const added = await post(
      '/account/passkeys',
      { name: 'Site phone', passkey: key.make(asked.body.challenge) },
      person,
    );
    expect(added.status).toBe(201);
    return { person, key, recoveryCodes: added.body.recoveryCodes };
  }
  const askedFor = async () => {
    const asked = await post('/session/passkey/options', {});
    return { challenge: asked.body.challenge as string, turn: cookieOf(asked) };
  };

  test('is added with the password, brings recovery codes, and is asked for after the password', async () => {
    const { person, key, recoveryCodes } = await withPasskey();
    expect(recoveryCodes).toHaveLength(10);
    expect((await account(person)).passkeys).toMatchObject([{ name: 'Site phone', lastUsedAt: null }]);
    const begun = await signIn(person.email, person.password);
    expect(begun.body).toEqual({ needs: ['passkey', 'recovery'] });
    const turn = cookieOf(begun);
    const asked = await post('/session/second/passkey', {}, turn);
    expect(asked.body.allowCredentials).toMatchObject([{ id: key.id.toString('base64url') }]);
    const done = await post('/session/second', { passkey: key.answer(asked.body.challenge) }, turn);
    expect([done.status, done.body.member.id]).toEqual([200, person.memberId]);
    expect((await account(person)).passkeys[0].lastUsedAt).not.toBeNull();
  });

  test('signs in alone when the device checked the person, and not when it did not', async () => {
    const { person, key } = await withPasskey();
    const { challenge, turn } = await askedFor();
    const done = await post('/session/passkey', { passkey: key.answer(challenge) }, turn);
    expect([done.status, done.body.member.id]).toEqual([200, person.memberId]);
    const careless = await withPasskey(false);
    const second = await askedFor();
    const refused = await post('/session/passkey', { passkey: careless.key.answer(second.challenge) }, second.turn);
    expect(typeOf(refused)).toBe('wrong-credentials');
  });

  test('answers its own challenge, once, at this address, within its time', async () => {
    const { key } = await withPasskey();
    const [first, second] = [await askedFor(), await askedFor()];
    const answerToFirst = key.answer(first.challenge);
    expect(typeOf(await post('/session/passkey', { passkey: answerToFirst }, second.turn))).toBe('wrong-credentials');
    expect((await post('/session/passkey', { passkey: answerToFirst }, first.turn)).status).toBe(200);
    expect(typeOf(await post('/session/passkey', { passkey: answerToFirst }, first.turn))).toBe('sign-in-again');
    const third = await askedFor();
    const stranger = new SoftPasskey('https://elsewhere.example');
    expect(typeOf(await post('/session/passkey', { passkey: stranger.answer(third.challenge) }, third.turn))).toBe(
      'wrong-credentials',
    );
    const fourth = await askedFor();
    await sql(`update sign_in_turn set expires_at = now() - interval '1 second' where kind = 'passkey-sign-in'`);
    expect(typeOf(await post('/session/passkey', { passkey: key.answer(fourth.challenge) }, fourth.turn))).toBe(
      'sign-in-again',
    );
  });

  test('of another person is no second step', async () => {
    const [mine, theirs] = [await withPasskey(), await withPasskey()];
    const turn = cookieOf(await signIn(mine.person.email, mine.person.password));
    const asked = await post('/session/second/passkey', {}, turn);
    expect(typeOf(await post('/session/second', { passkey: theirs.key.answer(asked.body.challenge) }, turn))).toBe(
      'wrong-code',
    );
  });

  test('is removed by its owner with the password, and no other', async () => {
    const [mine, theirs] = [await withPasskey(), await withPasskey()];
    const [{ id }] = (await account(mine.person)).passkeys;
    const remove = (who: Person) => post(`/account/passkeys/${id}/remove`, { password: who.password }, who);
    expect((await remove(theirs.person)).status).toBe(404);
    expect((await remove(mine.person)).status).toBe(204);
    expect((await signIn(mine.person.email, mine.person.password)).status).toBe(200);
  });
});

describe('devices', () => {
  const list = async (who: Cookie) => (await api.http(who).get(`${v1}/account/devices`)).body.items;
  const phone =
    'Mozilla/5.0 (iPhone; CPU iPhone OS 18_1 like Mac OS X) AppleWebKit/605.1.15 (KHTML, like Gecko) Version/18.1 Mobile/15E148 Safari/604.1';
  const fromPhone = async ({ email, password }: Person) =>
    cookieOf(await api.http().post(`${v1}/session`).set('user-agent', phone).send({ email, password }));

  test('are told in plain words, with the network and not the address, and this one is marked', async () => {
    const person = await api.signIn();
    const onPhone = await fromPhone(person);
    const items = await list(onPhone);
    expect(items).toHaveLength(2);
    expect(items.find(({ isThisOne }: { isThisOne: boolean }) => isThisOne)).toMatchObject({
      words: { en: 'iPhone, Safari', es: 'iPhone, Safari' },
      network: '127.0.0.x',
    });
    expect(JSON.stringify(items)).not.toMatch(/127\.0\.0\.1|token/);
  });

  test('end one by one or all but this; a stranger’s is not found', async () => {
    const person = await api.signIn();
    const [second, third] = [await fromPhone(person), await fromPhone(person)];
    const stranger = await api.signIn();
    const of = async (who: Cookie) => (await list(who)).find((one: { isThisOne: boolean }) => one.isThisOne).id;
    const id = await of(second);
    expect((await api.http(stranger).delete(`${v1}/account/devices/${id}`)).status).toBe(404);
    expect((await api.http(person).delete(`${v1}/account/devices/${id}`)).status).toBe(204);
    expect([(await whoAmI(second)).status, (await whoAmI(third)).status]).toEqual([401, 200]);
    expect((await api.http(third).delete(`${v1}/account/devices`)).status).toBe(204);
    expect([(await whoAmI(person)).status, (await whoAmI(third)).status]).toEqual([401, 200]);
    expect((await logged(person)).filter((type) => type === 'device.ended')).toHaveLength(2);
  });

  test.each(['owner', 'estimator', 'crew'] as const)('of %s lie unused as long as the table says', async (role) => {
    const person = await api.signIn({ role });
    const unusedFor = (seconds: number) =>
      sql(`update session set last_used_at = now() - make_interval(secs => $2) where user_id = $1`, [
        person.userId,
        seconds,
      ]);
    await unusedFor(idleSeconds[role] - 60);
    expect((await whoAmI(person)).status).toBe(200);
    const [{ fresh }] = await sql(
      `select last_used_at > now() - interval '1 minute' as fresh from session where user_id = $1`,
      [person.userId],
    );
    expect(fresh).toBe(true);
    await unusedFor(idleSeconds[role] + 1);
    expect((await whoAmI(person)).status).toBe(401);
  });

  test('last 90 days however much they are used', async () => {
    const person = await api.signIn();
    const [{ days }] = await sql(
      `select extract(epoch from expires_at - created_at)::int / 86400 as days from session where user_id = $1`,
      [person.userId],
    );
    expect(days).toBe(90);
    await sql(`update session set expires_at = now() - interval '1 second' where user_id = $1`, [person.userId]);
    expect((await whoAmI(person)).status).toBe(401);
  });

  test('are read in one statement, which writes the last use every five minutes at most', async () => {
    const person = await api.signIn();
    const last = async () => (await sql('select last_used_at from session where user_id = $1', [person.userId]))[0];
    await sql(`update session set last_used_at = now() - interval '4 minutes' where user_id = $1`, [person.userId]);
    const before = await last();
    await whoAmI(person);
    expect(await last()).toEqual(before);
    const { peoplePool } = api.platform.database;
    const query = peoplePool.query;
    let statements = 0;
    Object.assign(peoplePool, {
      query: (...given: Parameters<typeof query>) => {
        statements += 1;
        return query.apply(peoplePool, given);
      },
    });
    await api.platform.accounts.memberOf(person.cookie.split('=')[1] ?? '');
    Object.assign(peoplePool, { query });
    expect(statements).toBe(1);
  });

  test('keep the hash of their token alone', async () => {
    const person = await api.signIn();
    const rows = await sql('select * from session where user_id = $1', [person.userId]);
    expect(JSON.stringify(rows)).not.toContain(person.cookie.split('=')[1]);
  });
});

describe('signing in and out', () => {
  test('is noted, good and refused', async () => {
    const person = await api.signIn();
    await signIn(person.email, person.password);
    await signIn(person.email, 'not their own at all');
    await expect.poll(() => logged(person)).toEqual(['sign-in.good', 'sign-in.refused']);
  });

  test('out empties what the browser kept of answers', async () => {
    const person = await api.signIn();
    const out = await api.http(person).delete(`${v1}/session`);
    expect([out.status, out.headers['clear-site-data']]).toEqual([204, '"cache"']);
    expect((await whoAmI(person)).status).toBe(401);
    expect(await logged(person)).toContain('sign-in.ended');
  });
});
