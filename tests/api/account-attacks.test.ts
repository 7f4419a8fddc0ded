import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { type Person, startTestApi, type TestApi } from '../support/api.ts';
import { mailFile, mailsGone, mailsOfKind } from '../support/mails.ts';
import { SoftPasskey } from '../support/passkey.ts';
import { someId, v1 } from '../support/site.ts';

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
const isIn = async (who: Cookie) => (await api.http(who).get(`${v1}/session`)).status === 200;
const typeOf = ({ body }: { body: { type?: string } }) => body.type?.split(':').at(-1);
const sql = async (text: string, values: unknown[] = []) =>
  (await api.platform.database.ownerPool.query(text, values)).rows;
const newEmail = () => `${someId()}@example.test`;
const cookieOf = (answer: { headers: Record<string, unknown> }): Cookie => ({
  cookie: ((answer.headers['set-cookie'] ?? []) as string[])
    .filter((one) => !one.includes('1970'))
    .map((one) => one.split(';')[0])
    .join('; '),
});

/** The secret in the newest link about an account that the company mailed to an address. */
async function mailedToken(companyId: string, to: string): Promise<string> {
  await mailsGone(api, companyId);
  const mail = (await mailsOfKind(api, companyId, 'accountLink')).findLast((one) => one.to === to);
  return /#([\w-]{43})/.exec(mailFile(api, mail?.id ?? ''))?.[1] ?? '';
}

/** Somebody at a phone that was left open asks to move its account to an address of theirs. */
async function askToMove(person: Person, email: string): Promise<string> {
  expect((await post('/account/email', { email, password: person.password }, person)).status).toBe(202);
  return mailedToken(person.companyId, email);
}

/** Opens a company under somebody's address without being able to read its mail. */
async function takeInAdvance(email: string): Promise<{ cookie: string; companyId: string; memberId: string }> {
  const body = { companyName: 'Taken Early Co', name: 'Pat Quarrel', email, password: newPassword };
  const opened = await post('/companies', body);
  expect(opened.status).toBe(201);
  return { ...cookieOf(opened), companyId: opened.body.company.id, memberId: opened.body.member.id };
}

async function addPasskey(who: Cookie, password: string): Promise<SoftPasskey> {
  const key = new SoftPasskey(api.platform.config.publicUrl);
  const asked = await post('/account/passkeys/options', { password }, who);
  const made = await post('/account/passkeys', { name: 'Phone', passkey: key.make(asked.body.challenge) }, who);
  expect(made.status).toBeLessThan(300);
  return key;
}

async function signInWith(key: SoftPasskey) {
  const asked = await post('/session/passkey/options', {});
  return post('/session/passkey', { passkey: key.answer(asked.body.challenge) }, cookieOf(asked));
}

async function invite(owner: Person, email: string, role = 'owner') {
  const { body } = await post('/invitations', { email, role }, owner);
  return String(body.link).split('#')[1] ?? '';
}

describe('a move to another address that a thief asked for', () => {
  test('ends when the password is changed', async () => {
    const person = await api.signIn();
    const token = await askToMove(person, newEmail());
    await post('/account/password', { password: person.password, newPassword }, person).expect(204);
    expect(typeOf(await post('/account/confirm', { token }))).toBe('link-gone');
    expect((await signIn(person.email, newPassword)).status).toBe(200);
  });

  test('ends when the password is chosen anew by mail', async () => {
    const person = await api.signIn();
    const token = await askToMove(person, newEmail());
    await post('/account/forgotten', { email: person.email }).expect(202);
    const reset = await mailedToken(person.companyId, person.email);
    await post('/account/reset', { token: reset, password: newPassword }).expect(204);
    expect(typeOf(await post('/account/confirm', { token }))).toBe('link-gone');
    expect((await signIn(person.email, newPassword)).status).toBe(200);
  });
});

describe('whoever asks to move to an address', () => {
  test('is told the same of one that somebody has and of one that nobody has, however often', async () => {
    const [person, other] = [await api.signIn(), await api.signIn()];
    const pending = async (email: string) => {
      const { status } = await post('/account/email', { email, password: person.password }, person);
      const { body } = await api.http(person).get(`${v1}/account`);
      return [status, body.pendingEmail === email];
    };
    for (let turn = 0; turn < 6; turn += 1) expect(await pending(other.email)).toEqual([turn < 5 ? 202 : 429, true]);
    await mailsGone(api, person.companyId);
    const mails = await mailsOfKind(api, person.companyId, 'accountLink');
    expect(mails.filter(({ to }) => to === other.email)).toEqual([]);
  });

  test('at the same moment as somebody else gets it or is told that it is taken', async () => {
    const [one, two] = [await api.signIn(), await api.signIn()];
    const email = newEmail();
    const tokens = [await askToMove(one, email), await askToMove(two, email)];
    const answers = await Promise.all(tokens.map((token) => post('/account/confirm', { token })));
    expect(answers.map(({ status }) => status).sort()).toEqual([200, 409]);
  });
});

test('letters for a forgotten password that a stranger asks for do not use up a person’s own', async () => {
  const person = await api.signIn();
  for (let turn = 0; turn < 6; turn += 1) await post('/account/forgotten', { email: person.email });
  const asked = await post('/account/email', { email: newEmail(), password: person.password }, person);
  expect(asked.status).toBe(202);
});

test('a sign-in that was under way with the old password opens nothing once it is changed', async () => {
  const person = await api.signIn();
  const { accounts } = api.platform;
  const compare = accounts.checkPassword;
  accounts.checkPassword = async (...given) => {
    const right = await compare(...given);
    await post('/account/password', { password: person.password, newPassword }, person).expect(204);
    return right;
  };
  try {
    const late = await signIn(person.email, person.password);
    expect([late.status, await isIn(cookieOf(late))]).toEqual([401, false]);
  } finally {
    accounts.checkPassword = compare;
  }
  expect(await isIn(person)).toBe(true);
});

test('sign-ins and changes of a password at the same moment end each other and never the server', async () => {
  const person = await api.signIn();
  const asked = Array.from({ length: 16 }, (_, turn) =>
    turn % 4 === 3
      ? post('/account/password', { password: person.password, newPassword: `${newPassword} ${turn}` }, person)
      : signIn(person.email, person.password),
  );
  const answers = await Promise.all(asked);
  expect(answers.filter(({ status }) => status >= 500)).toEqual([]);
  expect(answers.filter(({ status }) => status === 204)).toHaveLength(1);
  const alive = await Promise.all(answers.filter(({ status }) => status === 200).map((one) => isIn(cookieOf(one))));
  expect(alive).not.toContain(true);
});

describe('an address that was taken in advance and is proven by an invitation', () => {
  test('leaves nothing of whoever took it: no passkey, no code, no link', async () => {
    const email = newEmail();
    const thief = await takeInAdvance(email);
    const key = await addPasskey(thief, newPassword);
    const elsewhere = newEmail();
    await post('/account/email', { email: elsewhere, password: newPassword }, thief).expect(202);
    const move = await mailedToken(thief.companyId, elsewhere);
    // An accomplice who is an owner too takes the thief out of the company.
    await sql('update member set removed_at = now() where id = $1', [thief.memberId]);

    const owner = await api.signIn();
    const accepted = await post('/invitations/accept', {
      token: await invite(owner, email),
      name: 'Cleo Birch',
      password: 'rim joist over sill plate',
    });
    expect(accepted.status).toBe(201);
    expect((await signInWith(key)).status).not.toBe(200);
    await post('/account/confirm', { token: move });
    const later = await signIn(email, 'rim joist over sill plate');
    expect([later.status, later.body.member?.id]).toEqual([200, accepted.body.member.id]);
  });
});

test('a removed member who moved to another address comes back under it', async () => {
  const owner = await api.signIn();
  const person = await api.signIn({ companyId: owner.companyId, role: 'crew' });
  const email = newEmail();
  const token = await askToMove(person, email);
  await api.http(owner).delete(`${v1}/members/${person.memberId}`).set('if-match', '"1"').expect(204);
  await post('/account/confirm', { token }).expect(200);
  const body = { token: await invite(owner, email, 'crew'), name: 'Cleo Birch', password: person.password };
  const back = await post('/invitations/accept', body);
  expect([back.status, back.body.member?.email]).toEqual([201, email]);
});

test('a reset that proves an address for the first time ends the second step that somebody set up before', async () => {
  const email = newEmail();
  const { companyId, ...thief } = await takeInAdvance(email);
  const key = await addPasskey(thief, newPassword);
  await post('/account/forgotten', { email }).expect(202);
  const token = await mailedToken(companyId, email);
  await post('/account/reset', { token, password: 'rim joist over sill plate' }).expect(204);
  expect((await signInWith(key)).status).toBe(401);
  expect((await signIn(email, 'rim joist over sill plate')).status).toBe(200);
});

describe('the log of people', () => {
  const entries = async ({ companyId }: Person) =>
    sql('select type, data from people_event where company_id = $1 order by at, id', [companyId]);

  test('keeps the network of a sign-in and not its whole address', async () => {
    const person = await api.signIn();
    await signIn(person.email, 'not the right words');
    await signIn(person.email, person.password);
    await expect.poll(async () => (await entries(person)).length).toBe(2);
    expect((await entries(person)).map(({ data }) => data.from)).toEqual(['127.0.0.x', '127.0.0.x']);
  });

  test('tells of a second step that was not right, and of a passkey that did not check the person', async () => {
    const person = await api.signIn();
    const key = await addPasskey(person, person.password);
    const careless = new SoftPasskey(api.platform.config.publicUrl, false);
    Object.defineProperty(careless, 'id', { value: key.id });
    expect((await signInWith(careless)).status).toBe(401);
    const turn = cookieOf(await signIn(person.email, person.password));
    expect((await post('/session/second', { recoveryCode: 'AAAAAA' }, turn)).status).toBe(401);
    const refused = (await entries(person)).filter(({ type }) => type === 'sign-in.refused');
    expect(refused.map(({ data }) => data.why)).toEqual(['passkey', 'second step']);
  });

  test('tells of a password tried, or used, at an invitation or at opening a company', async () => {
    const [owner, person] = [await api.signIn(), await api.signIn()];
    const token = await invite(owner, person.email);
    const accept = (password: string, one = token) =>
      post('/invitations/accept', { token: one, name: 'Cleo Birch', password });
    expect((await accept('not the right words')).status).toBe(401);
    const open = { companyName: 'Second Co', name: 'Ana Brandt', email: person.email };
    expect((await post('/companies', { ...open, password: 'not the right words' })).status).toBe(401);
    await expect
      .poll(async () => (await entries(person)).map(({ type }) => type))
      .toEqual(['sign-in.refused', 'sign-in.refused']);

    const email = newEmail();
    const own = await invite(owner, email, 'crew');
    const types = async () =>
      (await entries(owner)).map(({ type }) => type).filter((type) => type.startsWith('sign-in'));
    expect((await accept(newPassword, own)).status).toBe(201);
    expect(await types()).toEqual(['sign-in.good']);
    expect((await accept(newPassword, own)).status).toBe(201);
    expect(await types()).toEqual(['sign-in.good', 'sign-in.good']);
    expect((await accept('not the right words', own)).status).toBe(410);
    await expect.poll(types).toEqual(['sign-in.good', 'sign-in.good', 'sign-in.refused']);
  });
});
