import { createHash, randomUUID } from 'node:crypto';
import type { ChangeOrder, ClientLetter } from '@underlath/contract';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { newId } from '../../apps/api/src/platform/ids.ts';
import { startTestApi, type TestApi } from '../support/api.ts';
import { type Job, type OpenLetter, openLink, type Sent, startJob } from '../support/offers.ts';
import { readPdf } from '../support/pdf-text.ts';

const v1 = '/api/v1';
const problem = (type: string) => `urn:underlath:problem:${type}`;
let api: TestApi;
let job: Job;

beforeAll(async () => {
  api = await startTestApi();
  job = await startJob(api);
  const company = await api.http(job.owner).get(`${v1}/company`).expect(200);
  const phone = { phone: '555-0142', email: 'office@brandt.example' };
  await api.http(job.owner).patch(`${v1}/company`).set('if-match', `"${company.body.version}"`).send(phone).expect(200);
});
afterAll(() => api.close());

interface Offered extends Sent {
  open: OpenLetter;
  letter: ClientLetter;
}

async function offer(): Promise<Offered> {
  const sent = await job.send(await job.draft([(await job.priced()).id], { days: 3 }));
  const open = await job.open(sent.link);
  return { ...sent, open, letter: await letterOf(open) };
}
const get = ({ path, cookie }: OpenLetter, below = '') => api.http().get(`${path}${below}`).set('cookie', cookie);
const letterOf = async (open: OpenLetter) => (await get(open).expect(200)).body as ClientLetter;
const secretOf = ({ link }: Pick<Sent, 'link'>) => new URL(link).hash.slice(1);
const ask = ({ path, cookie }: OpenLetter, body: object = {}) =>
  api
    .http()
    .post(`${path}/questions`)
    .set('cookie', cookie)
    .send({ version: 1, name: 'Ines Wren', text: 'Is there dust?', ...body });
const linkOf = ({ changeOrder }: Sent) => `${v1}/change-orders/${changeOrder.id}/link`;
const revoke = (sent: Sent) => api.http(job.owner).delete(linkOf(sent)).expect(204);
const expire = ({ changeOrder }: Sent) =>
  api.platform.database.inCompany(job.owner.companyId, (tx) =>
    tx.clientLink.updateMany({ where: { changeOrderId: changeOrder.id }, data: { expiresAt: new Date(1000) } }),
  );
const eventsOf = ({ changeOrder }: Sent, type: string) =>
  api.platform.database.inCompany(job.owner.companyId, (tx) =>
    tx.event.findMany({ where: { subjectId: changeOrder.id, type } }),
  );

describe('a letter', () => {
  test('has an address of its own, and its cookie is a session and not the secret', async () => {
    const [a, b] = [await offer(), await offer()];
    expect(a.letter.letterId).toBe(new URL(a.link).pathname.split('/').at(-1));
    expect(a.letter.letterId).not.toBe(b.letter.letterId);
    const token = a.open.cookie.split('=')[1] ?? '';
    expect(token).not.toBe(secretOf(a));
    const { rows } = await api.platform.database.ownerPool.query(
      'select s.token_hash, s.ended_at from client_session s join client_link l on l.id = s.link_id where l.letter_id = $1',
      [a.letter.letterId],
    );
    expect(rows).toEqual([{ token_hash: createHash('sha256').update(token).digest('hex'), ended_at: null }]);
  });

  test('is shown to its own session only: letter, PDF, photos, question and answer of another are refused', async () => {
    const [a, b] = [await offer(), await offer()];
    const mixed = { path: a.open.path, cookie: b.open.cookie };
    for (const below of ['', '/pdf', `/photos/${newId()}`]) {
      const refused = await get(mixed, below).expect(401);
      expect(refused.body.type).toBe(problem('not-signed-in'));
      expect(JSON.stringify(refused.body)).not.toContain(b.letter.document.wording.headline.en);
    }
    await ask(mixed).expect(401);
    expect((await job.decide(mixed, a.letter)).status).toBe(401);
    await api.http().delete(`${a.open.path}/session`).set('cookie', b.open.cookie).expect(204);
    for (const one of [a, b]) {
      expect(await letterOf(one.open)).toMatchObject({ letterId: one.letter.letterId, state: 'open', questions: [] });
    }
  });

  test('a write names the version that was seen; another is told so and nothing is written', async () => {
    const { open, letter } = await offer();
    const asked = await ask(open, { version: 2 }).expect(409);
    expect(asked.body.type).toBe(problem('other-letter'));
    const decided = await job.decide(open, letter, { version: 2 });
    expect(decided).toMatchObject({ status: 409, body: { type: problem('other-letter') } });
    expect(await letterOf(open)).toMatchObject({ state: 'open', questions: [] });
  });

  test('an id and a secret of two letters open neither', async () => {
    const [a, b] = [await offer(), await offer()];
    const refused = await api
      .http()
      .post(`${a.open.path}/session`)
      .send({ token: secretOf(b) })
      .expect(409);
    expect(refused.body.type).toBe(problem('other-letter'));
    expect(refused.get('set-cookie')).toBeUndefined();
  });

  test('a link of the older form still opens, and its id is told', async () => {
    const sent = await offer();
    const opened = await api
      .http()
      .post(`${v1}/client/session`)
      .send({ token: secretOf(sent) })
      .expect(200);
    expect(opened.body).toEqual({ letterId: sent.letter.letterId });
    const cookie = opened.get('set-cookie')?.[0] ?? '';
    expect(cookie).toContain(`Path=${sent.open.path};`);
    await get({ path: sent.open.path, cookie: cookie.split(';')[0] ?? '' }).expect(200);
  });

  test('forgotten on a device is closed on the server, on that device alone', async () => {
    const { link, open } = await offer();
    const other = await openLink(api, link);
    const closed = await api.http().delete(`${open.path}/session`).set('cookie', open.cookie).expect(204);
    expect(closed.get('set-cookie')?.[0]).toMatch(/Path=\/api\/v1\/client\/letters\/\w{10}; Expires=Thu, 01 Jan 1970/);
    await get(open).expect(401);
    await get(other).expect(200);
  });

  test('an unknown secret is told so, and nobody reads without a session', async () => {
    const { open } = await offer();
    const unknown = await api
      .http()
      .post(`${open.path}/session`)
      .send({ token: 'x'.repeat(43) })
      .expect(410);
    expect(unknown.body.type).toBe(problem('link-unknown'));
    await api.http().get(open.path).expect(401);
    await api.http().get(`${v1}/client/letters/no-letter`).expect(401);
  });

  test('a session that has run out opens nothing', async () => {
    const { open, changeOrder } = await offer();
    await api.platform.database.ownerPool.query(
      `update client_session s set expires_at = to_timestamp(1) from client_link l
       where l.id = s.link_id and l.change_order_id = $1`,
      [changeOrder.id],
    );
    await get(open).expect(401);
  });
});

test('the next session clears away those that ran out, which alone may be cleared', async () => {
  const pool = api.platform.database.ownerPool;
  const sent = await offer();
  const count = async () =>
    (await pool.query('select count(*)::int as n from client_session where company_id = $1', [job.owner.companyId]))
      .rows[0].n as number;
  const living = () =>
    api.platform.database.inCompany(job.owner.companyId, (tx) => tx.clientSession.deleteMany({ where: {} }));
  const before = await count();
  expect(before).toBeGreaterThan(0);
  expect((await living()).count).toBe(0);
  await pool.query('update client_session set expires_at = to_timestamp(1) where company_id = $1', [
    job.owner.companyId,
  ]);
  await job.open(sent.link);
  expect(await count()).toBe(1);
});

test('a scanner that only gets leaves nothing behind, not even a session', async () => {
  const { link, open } = await offer();
  const rows = async () =>
    (await api.platform.database.ownerPool.query('select count(*)::int as n from client_session')).rows[0].n;
  const before = await rows();
  for (const path of [new URL(link).pathname, '/c', open.path, `${open.path}/pdf`, `${open.path}/session`]) {
    const answer = await api.http().get(path);
    expect(answer.get('set-cookie'), path).toBeUndefined();
  }
  expect(await rows()).toBe(before);
});

describe('questions', () => {
  test('of a letter are twenty an hour at most, answered or not', async () => {
    // A job of its own: what is written past the record makes its record not verify.
    const own = await startJob(api);
    const { companyId, memberId } = own.owner;
    const { link, changeOrder } = await own.send(await own.draft([(await own.priced()).id]));
    const open = await own.open(link);
    const asked = { companyId, changeOrderId: changeOrder.id, version: 1, name: 'Ines Wren', text: 'Why?' };
    const answered = { answer: 'Yes.', answeredAt: new Date(), answeredById: memberId, askedAt: new Date() };
    await api.platform.database.inCompany(companyId, (tx) =>
      tx.question.createMany({ data: Array.from({ length: 19 }, () => ({ ...asked, ...answered, id: randomUUID() })) }),
    );
    await ask(open).expect(201);
    const refused = await ask(open).expect(429);
    expect(refused.body.type).toBe(problem('too-many-requests'));
    expect(Number(refused.headers['retry-after'])).toBeGreaterThan(3_000);
    expect((await letterOf(open)).questions).toHaveLength(20);
  });

  test('of a letter wait ten at most, and one more is taken when one is answered', async () => {
    const sent = await offer();
    for (let round = 0; round < 10; round += 1) await ask(sent.open, { text: `Question ${round}` }).expect(201);
    const refused = await ask(sent.open).expect(409);
    expect(refused.body).toMatchObject({
      type: problem('questions-wait'),
      contact: { name: 'Brandt Remodel', phone: '555-0142', email: 'office@brandt.example' },
    });
    expect(refused.body.detail).toContain('please let them be answered first');
    const { questions } = await letterOf(sent.open);
    expect(questions).toHaveLength(10);
    await api
      .http(job.owner)
      .post(`${v1}/change-orders/${sent.changeOrder.id}/questions/${questions[0]?.id}/answer`)
      .send({ answer: 'A little.\n\nWe seal the door.' })
      .expect(200);
    await ask(sent.open).expect(201);
  });
});

describe('a revoked link', () => {
  test('is revoked once in the record, however often it is asked for', async () => {
    const sent = await offer();
    for (let round = 0; round < 3; round += 1) await revoke(sent);
    expect(await eventsOf(sent, 'change-order.link-revoked')).toHaveLength(1);
  });

  test('without an answer shows nothing, and says that no answer was given and whom to ask', async () => {
    const sent = await offer();
    await revoke(sent);
    for (const gone of [
      await get(sent.open).expect(410),
      await api
        .http()
        .post(`${sent.open.path}/session`)
        .send({ token: secretOf(sent) })
        .expect(410),
    ]) {
      expect(gone.body).toMatchObject({ type: problem('link-revoked'), contact: { phone: '555-0142' } });
      expect(gone.body.detail).toContain('No answer was given to this letter.');
    }
    expect((await job.decide(sent.open, sent.letter)).status).toBe(410);
    await ask(sent.open).expect(410);
  });
});

describe('an answered letter', () => {
  test.each([
    ['revoked', revoke],
    ['run out', expire],
  ])('stays readable when its link is %s, for its session and for who opens it anew', async (_how, end) => {
    const sent = await offer();
    expect((await job.decide(sent.open, sent.letter)).status).toBe(200);
    await end(sent);
    const again = await openLink(api, sent.link);
    for (const open of [sent.open, again]) {
      expect(await letterOf(open)).toMatchObject({ state: 'approved', decision: { signerName: 'Ines Wren' } });
      const pdf = await get(open, '/pdf?locale=en').responseType('blob').expect(200);
      expect((await readPdf(pdf.body as Buffer)).text).toContain(sent.sha256.slice(0, 8));
      const asked = await ask(open).expect(410);
      expect(asked.body.detail).toContain('was answered and stays to be read');
    }
    expect((await job.decide(again, sent.letter)).body).toMatchObject({ state: 'approved' });
    expect((await job.decide(again, sent.letter, { kind: 'declined' })).status).toBe(409);
    const order = (await api.http(job.owner).get(`${v1}/change-orders/${sent.changeOrder.id}`)).body as ChangeOrder;
    expect(order.state).toBe('approved');
  });

  test('of a second version is readable, and the first, which was replaced, is not', async () => {
    const first = await offer();
    const edited = await api
      .http(job.owner)
      .patch(`${v1}/change-orders/${first.changeOrder.id}`)
      .set('if-match', `"${first.changeOrder.version}"`)
      .send({ days: 5 })
      .expect(200);
    const second = await job.send(edited.body as ChangeOrder);
    const open = await job.open(second.link);
    await job.decide(open, await letterOf(open));
    await revoke(second);
    expect(await letterOf(open)).toMatchObject({ document: { version: 2, days: 5 }, state: 'approved' });
    const replaced = await get(first.open).expect(410);
    expect(replaced.body.type).toBe(problem('link-replaced'));
    expect(replaced.body.detail).toContain('no answer was given to it');
  });

  test('is "yours" in the session that signed it alone', async () => {
    const { link, open, letter } = await offer();
    expect(letter.answeredHere).toBe(false);
    const spouse = await openLink(api, link);
    expect((await job.decide(open, letter)).body).toMatchObject({ answeredHere: true });
    expect((await letterOf(open)).answeredHere).toBe(true);
    expect((await letterOf(spouse)).answeredHere).toBe(false);
    expect((await letterOf(await openLink(api, link))).answeredHere).toBe(false);
  });
});

describe('a name', () => {
  test.each([
    ['\u202e\u202d', 'direction marks alone'],
    ['\u200b\u2060', 'nothing that is drawn'],
    ['\u3164\u115f', 'letters that are drawn as nothing'],
    ['Ines\u202eWren', 'a direction mark within'],
    ['Ines\nWren', 'two lines'],
    ['Ines \u001b[31mWren', 'an escape'],
    ['12 .', 'no letter'],
  ])('%j, %s, signs and asks nothing', async (name) => {
    const { open, letter } = await offer();
    const signed = await job.decide(open, letter, { signerName: name, nameConfirmed: true });
    expect(signed).toMatchObject({ status: 422, body: { type: problem('invalid-input') } });
    expect(JSON.stringify(signed.body.errors)).toContain('/signerName');
    const asked = await ask(open, { name }).expect(422);
    expect(asked.body.errors[0].pointer).toBe('/name');
    expect(await letterOf(open)).toMatchObject({ state: 'open', questions: [] });
  });

  test('spelled otherwise is the same name, and nothing is asked', async () => {
    const { open, letter } = await offer();
    const answer = await job.decide(open, letter, { signerName: 'INÉS  WREN' });
    expect(answer).toMatchObject({ status: 200, body: { decision: { signerName: 'INÉS  WREN', letterFor: null } } });
  });

  test('that is another is asked about once, and both names are kept with the answer', async () => {
    const sent = await offer();
    const refused = await job.decide(sent.open, sent.letter, { signerName: 'Tom Wren' });
    expect(refused).toMatchObject({ status: 422, body: { errors: [{ pointer: '/nameConfirmed' }] } });
    expect(refused.body.detail).toContain('The letter is for Ines Wren, and Tom Wren was typed.');
    const signed = await job.decide(sent.open, sent.letter, { signerName: 'Tom Wren', nameConfirmed: true });
    expect(signed).toMatchObject({
      status: 200,
      body: { decision: { signerName: 'Tom Wren', letterFor: 'Ines Wren' } },
    });
    const [event] = await eventsOf(sent, 'change-order.decided');
    expect(JSON.parse(event?.body ?? '{}').data).toMatchObject({ signerName: 'Tom Wren', letterFor: 'Ines Wren' });
    const record = await api.http(job.owner).get(`${v1}/projects/${job.project.id}/record/verify`).expect(200);
    expect(record.body).toMatchObject({ ok: true, faults: [] });
  });

  test('texts of several lines keep their lines and tabs, and no other mark', async () => {
    const { open } = await offer();
    const asked = await ask(open, { text: 'One\n\tTwo' }).expect(201);
    expect(asked.body.text).toBe('One\n\tTwo');
    await ask(open, { text: 'One\u001b[2J' }).expect(422);
  });

  test('of a place, a project or a member is held to the same', async () => {
    const place = { kind: 'wall', name: 'North\u202e wall' };
    await api.http(job.owner).post(`${v1}/projects/${job.project.id}/locations`).send(place).expect(422);
    const member = `${v1}/members/${job.owner.memberId}`;
    await api.http(job.owner).patch(member).send({ name: '...' }).expect(422);
  });
});
