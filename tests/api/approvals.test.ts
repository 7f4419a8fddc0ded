import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { Writable } from 'node:stream';
import type { ChangeOrder, ClientLetter } from '@underlath/contract';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { buildApp } from '../../apps/api/src/app.ts';
import { serverLogger } from '../../apps/api/src/server.ts';
import { startTestApi, type TestApi } from '../support/api.ts';
import { mailsGone } from '../support/mails.ts';
import { type Job, type OpenLetter, type Sent, startJob } from '../support/offers.ts';

const v1 = '/api/v1';
let api: TestApi;
let job: Job;

beforeAll(async () => {
  api = await startTestApi();
  job = await startJob(api);
});
afterAll(() => api.close());

async function offer(): Promise<Sent & { open: OpenLetter; letter: ClientLetter; findingId: string }> {
  const finding = await job.priced();
  const sent = await job.send(await job.draft([finding.id], { days: 3 }));
  const open = await job.open(sent.link);
  return { ...sent, open, letter: await letterOf(open), findingId: finding.id };
}
const letterOf = async (open: OpenLetter) =>
  (await api.http().get(open.path).set('cookie', open.cookie).expect(200)).body as ClientLetter;
const orderOf = async (id: string) =>
  (await api.http(job.owner).get(`${v1}/change-orders/${id}`).expect(200)).body as ChangeOrder;
const contractOf = async () =>
  (await api.http(job.owner).get(`${v1}/projects/${job.project.id}/contract`).expect(200)).body;
const decisionMails = { kind: { in: ['decisionTold' as const, 'decisionCopy' as const] } };
const inCompany: TestApi['platform']['database']['inCompany'] = (companyId, work) =>
  api.platform.database.inCompany(companyId, work);

test('opening a link, reading and looking at the PDF change nothing, however often', async () => {
  const { link, open, changeOrder } = await offer();
  await mailsGone(api, job.owner.companyId);
  const before = await snapshot();
  for (let round = 0; round < 3; round += 1) {
    await job.open(link);
    await letterOf(open);
    await api.http().get(`${open.path}/pdf`).set('cookie', open.cookie).expect(200);
    await api
      .http()
      .get(new URL(link).pathname)
      .expect((answer) => expect([200, 404]).toContain(answer.status));
  }
  expect(await snapshot()).toEqual(before);
  expect((await orderOf(changeOrder.id)).state).toBe('sent');

  async function snapshot() {
    return inCompany(job.owner.companyId, async (tx) => ({
      orders: await tx.changeOrder.findMany({ orderBy: { id: 'asc' } }),
      links: await tx.clientLink.findMany({ orderBy: { id: 'asc' } }),
      events: await tx.event.count(),
      mail: await tx.mail.count(),
    }));
  }
});

test('an approval changes the contract sum by exactly the printed total and the days by exactly those printed', async () => {
  const { open, letter, changeOrder, findingId } = await offer();
  const before = await contractOf();
  const answer = await job.decide(open, letter);
  expect(answer.status).toBe(200);
  expect(answer.body).toMatchObject({
    state: 'approved',
    decision: { signerName: 'Ines Wren', sha256: letter.sha256 },
  });
  const after = await contractOf();
  expect(after.currentSumCents - before.currentSumCents).toBe(letter.document.price.totalCents);
  expect(after.currentSumCents).toBe(letter.document.contract.afterCents);
  expect(after.currentDays - before.currentDays).toBe(3);
  expect(after.finishOn).toBe(letter.document.contract.finishAfter);
  expect(after.pendingCents).toBe(before.pendingCents - letter.document.price.totalCents);
  expect(await orderOf(changeOrder.id)).toMatchObject({ state: 'approved' });
  const finding = await api.http(job.owner).get(`${v1}/findings/${findingId}`).expect(200);
  expect(finding.body.state).toBe('approved');
  const record = await api.http(job.owner).get(`${v1}/projects/${job.project.id}/record/verify`).expect(200);
  expect(record.body).toMatchObject({ ok: true, faults: [] });
});

test('the consent text is stored in the words that were shown, with the hash of the version', async () => {
  const { open, letter, changeOrder } = await offer();
  await job.decide(open, letter, { locale: 'es' });
  const rows = await inCompany(job.owner.companyId, (tx) =>
    tx.decision.findMany({ where: { changeOrderId: changeOrder.id } }),
  );
  expect(rows).toHaveLength(1);
  expect(rows[0]).toMatchObject({ consentText: letter.document.consent.text.es, sha256: letter.sha256, locale: 'es' });
});

test('both sides get one letter with the hash and the head of the record', async () => {
  const { open, letter } = await offer();
  await job.decide(open, letter);
  const letters = await inCompany(job.owner.companyId, (tx) =>
    tx.mail.findMany({ where: { ...decisionMails, text: { contains: letter.sha256 } } }),
  );
  expect(letters.map(({ to }) => to).sort()).toEqual([job.owner.email, 'ines@wren.example'].sort());
  const head = await inCompany(job.owner.companyId, (tx) =>
    tx.event.findFirstOrThrow({ where: { type: 'change-order.decided' }, orderBy: { seq: 'desc' } }),
  );
  for (const { text } of letters) expect(text).toContain(`${job.project.id}:${head.seq}:${head.hash}`);
});

test('a decline is as easy, keeps its reason, and leaves the contract alone', async () => {
  const { open, letter, changeOrder } = await offer();
  const before = await contractOf();
  const answer = await job.decide(open, letter, { kind: 'declined', reason: 'Too much this year' });
  expect(answer.body).toMatchObject({ state: 'declined', decision: { reason: 'Too much this year' } });
  expect(answer.body).toMatchObject({ decision: { consentText: null, acknowledged: null } });
  expect((await contractOf()).currentSumCents).toBe(before.currentSumCents);
  await api
    .http(job.owner)
    .patch(`${v1}/change-orders/${changeOrder.id}`)
    .set('if-match', `"${(await orderOf(changeOrder.id)).version}"`)
    .send({ days: 1 })
    .expect(409);
});

test('another hash, another consent text and no tick are each refused and decide nothing', async () => {
  const { open, letter, changeOrder } = await offer();
  expect((await job.decide(open, { ...letter, sha256: 'f'.repeat(64) })).status).toBe(410);
  expect((await job.decide(open, letter, { consentId: 'older' })).status).toBe(422);
  const unticked = await job.decide(open, letter, { consent: false });
  expect(unticked.status).toBe(422);
  expect(unticked.body.errors).toEqual([{ pointer: '/consent', detail: 'must be ticked' }]);
  expect((await orderOf(changeOrder.id)).state).toBe('sent');
});

test('50 answers posted at once are one decision and one letter to each side', async () => {
  const { open, letter, changeOrder } = await offer();
  const answers = await Promise.all(Array.from({ length: 50 }, () => job.decide(open, letter)));
  // A post that waits longer for a connection than the server lets it is told so (503) and may be sent again.
  for (const { status } of answers) expect([200, 503]).toContain(status);
  expect((await job.decide(open, letter)).body).toMatchObject({ state: 'approved' });
  const counts = await inCompany(job.owner.companyId, async (tx) => ({
    decisions: await tx.decision.count({ where: { changeOrderId: changeOrder.id } }),
    events: await tx.event.count({ where: { subjectId: changeOrder.id, type: 'change-order.decided' } }),
    mail: await tx.mail.count({ where: { ...decisionMails, text: { contains: letter.sha256 } } }),
  }));
  expect(counts).toEqual({ decisions: 1, events: 1, mail: 2 });
});

test('a second, different answer is told what stands', async () => {
  const { open, letter } = await offer();
  await job.decide(open, letter);
  const other = await job.decide(open, letter, { kind: 'declined' });
  expect(other.status).toBe(409);
  expect(other.body.detail).toContain('was approved by Ines Wren');
});

test('a question reaches the office, decides nothing, and its answer reaches the client', async () => {
  const { open, changeOrder } = await offer();
  const asked = await api
    .http()
    .post(`${open.path}/questions`)
    .set('cookie', open.cookie)
    .send({ version: 1, name: 'Ines Wren', text: 'Is there dust?' })
    .expect(201);
  const order = await orderOf(changeOrder.id);
  expect(order).toMatchObject({ state: 'sent', openQuestions: 1 });
  const answer = `${v1}/change-orders/${order.id}/questions/${asked.body.id}/answer`;
  await api.http(job.owner).post(answer).send({ answer: 'A little; we seal the door.' }).expect(200);
  expect((await letterOf(open)).questions[0]?.answer).toBe('A little; we seal the door.');
  await api.http(job.owner).post(answer).send({ answer: 'Another' }).expect(409);
});

test('an expired link answers 410 and says whom to ask', async () => {
  const { open, changeOrder } = await offer();
  await inCompany(job.owner.companyId, (tx) =>
    tx.clientLink.updateMany({ where: { changeOrderId: changeOrder.id }, data: { expiresAt: new Date(0) } }),
  );
  const gone = await api.http().get(open.path).set('cookie', open.cookie).expect(410);
  expect(gone.body).toMatchObject({ type: 'urn:underlath:problem:link-expired' });
  expect(gone.body.detail).toContain('Ask Brandt Remodel');
});

test('no token of a link stands in any file the server wrote outside the letter itself', async () => {
  const { link } = await offer();
  const token = new URL(link).hash.slice(1);
  const names = readdirSync(api.dataDir, { recursive: true, withFileTypes: true });
  const files = names.filter((entry) => entry.isFile() && !entry.name.endsWith('.eml'));
  for (const { parentPath, name } of files) {
    expect(readFileSync(join(parentPath, name)).includes(token), name).toBe(false);
  }
});

test('no token of a link stands in the log, whatever is asked with it', async () => {
  const { link, open } = await offer();
  const token = new URL(link).hash.slice(1);
  const lines: string[] = [];
  const stream = new Writable({
    write(chunk, _encoding, done) {
      lines.push(String(chunk));
      done();
    },
  });
  const logger = { ...(serverLogger as object), level: 'trace', stream };
  const app = await buildApp(api.platform, api.deps, { logger });
  app.log.info('the log is on');
  await app.inject({ method: 'POST', url: `${v1}/client/session`, payload: { token } });
  await app.inject({ method: 'POST', url: `${v1}/client/session`, payload: { token: [token] } });
  const { pathname } = new URL(link);
  await app.inject({ method: 'POST', url: `${open.path}/session`, payload: { token } });
  await app.inject({ method: 'GET', url: open.path, headers: { cookie: open.cookie } });
  await app.inject({ method: 'GET', url: pathname });
  await app.inject({ method: 'GET', url: `/c/${token}` });
  await app.inject({ method: 'GET', url: `${v1}/client/${token}` });
  await app.close();
  expect(lines.join('')).toContain('the log is on');
  expect(lines.join('')).not.toContain(token);
});

test('a document or a decision that someone changed in the database is found by the verification', async () => {
  const { open, letter, changeOrder } = await offer();
  await job.decide(open, letter);
  const verify = async () =>
    (await api.http(job.owner).get(`${v1}/projects/${job.project.id}/record/verify`).expect(200)).body;
  expect(await verify()).toMatchObject({ ok: true });
  const dearer = (await documentOf()).replace('"days":3', '"days":4');
  await tamper('update change_order_version set document = $2 where change_order_id = $1', dearer);
  expect((await verify()).faults.map(({ what }: { what: string }) => what).join()).toContain('document of version 1');
  await tamper(
    'update change_order_version set document = $2 where change_order_id = $1',
    dearer.replace('"days":4', '"days":3'),
  );
  await tamper('update decision set signer_name = $2 where change_order_id = $1', 'Somebody Else');
  expect((await verify()).faults.map(({ what }: { what: string }) => what).join()).toContain(
    'signerName is not the recorded one',
  );
  await tamper('update decision set signer_name = $2 where change_order_id = $1', 'Ines Wren');
  expect(await verify()).toMatchObject({ ok: true });

  async function documentOf(): Promise<string> {
    const text = `select document from change_order_version where change_order_id = $1`;
    const { rows } = await api.platform.database.ownerPool.query(text, [changeOrder.id]);
    return rows[0].document;
  }
  /** As someone who owns the whole server could. */
  async function tamper(text: string, value: string): Promise<void> {
    const client = await api.platform.database.ownerPool.connect();
    try {
      await client.query('begin');
      await client.query('set local session_replication_role = replica');
      await client.query(text, [changeOrder.id, value]);
      await client.query('commit');
    } finally {
      client.release();
    }
  }
});
