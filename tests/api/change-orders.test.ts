import { createHash } from 'node:crypto';
import type { ChangeOrder, Finding } from '@underlath/contract';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { newId } from '../../apps/api/src/platform/ids.ts';
import { startTestApi, type TestApi } from '../support/api.ts';
import { type Job, startJob } from '../support/offers.ts';

const v1 = '/api/v1';
let api: TestApi;
let job: Job;

beforeAll(async () => {
  api = await startTestApi();
  job = await startJob(api);
});
afterAll(() => api.close());

const get = async (id: string) =>
  (await api.http(job.owner).get(`${v1}/change-orders/${id}`).expect(200)).body as ChangeOrder;
const edit = (order: Pick<ChangeOrder, 'id' | 'version'>, body: object) =>
  api.http(job.owner).patch(`${v1}/change-orders/${order.id}`).set('if-match', `"${order.version}"`).send(body);
const stateOf = async (findingId: string) =>
  (await api.http(job.owner).get(`${v1}/findings/${findingId}`).expect(200)).body.state as string;

describe('a draft', () => {
  test('starts with the words of the checks in both languages and days worked out from the hours', async () => {
    const finding = await job.priced();
    const order = await job.draft([finding.id]);
    expect(order.state).toBe('draft');
    expect(order.wording.found).toEqual(finding.client?.found);
    expect(order.wording.why.es).toBe(finding.client?.why.es);
    expect(order.days).toBe(Math.ceil(order.draft.price.hours / 16));
    expect(order.wording.note.en).toContain('2 people at 8 hours a day');
    expect(order.blocks).toEqual([]);
    expect(order.draft.cautions.some(({ en }) => en.includes('has no photo'))).toBe(true);
  });

  test('foots: lines to subtotal, subtotal to total, shares to total, total to the contract', async () => {
    const findings = [await job.priced(), await job.priced(), await job.priced()];
    const { draft } = await job.draft(findings.map(({ id }) => id));
    const { price, items, contract } = draft;
    const sum = (cents: number[]) => cents.reduce((a, b) => a + b, 0);
    expect(sum(price.lines.map(({ totalCents }) => totalCents))).toBe(price.subtotalCents);
    expect(price.subtotalCents + price.overheadCents + price.profitCents).toBe(price.totalCents);
    expect(sum(items.map(({ shareCents }) => shareCents))).toBe(price.totalCents);
    expect(contract.beforeCents + price.totalCents).toBe(contract.afterCents);
    expect(price.totalCents).toBeGreaterThan(0);
  });

  test('counts work that findings of one place share once, and again for another place', async () => {
    const other = await api
      .http(job.owner)
      .post(`${v1}/projects/${job.project.id}/locations`)
      .send({ kind: 'wall', name: 'South wall', widthIn: 144, heightIn: 97.125 })
      .expect(201);
    const protectLines = ({ draft }: ChangeOrder) =>
      draft.price.lines.filter(({ operation }) => operation === 'protect-place');
    const here = await job.draft([(await job.priced()).id, (await job.priced()).id]);
    expect(protectLines(here)).toHaveLength(1);
    expect(protectLines(here)[0]?.findingIds).toHaveLength(2);
    const apart = await job.draft([(await job.priced()).id, (await job.priced({ locationId: other.body.id })).id]);
    expect(protectLines(apart)).toHaveLength(2);
  });

  test('takes only priced findings of its project that are in no other one, and points at each that does not fit', async () => {
    const [judged, priced] = [await job.note(), await job.priced()];
    await job.draft([priced.id]);
    const answer = await api
      .http(job.owner)
      .post(`${v1}/projects/${job.project.id}/change-orders`)
      .send({ findingIds: [judged.id, priced.id, newId()] })
      .expect(422);
    expect(answer.body.errors.map(({ pointer }: { pointer: string }) => pointer)).toEqual([
      '/findingIds/0',
      '/findingIds/1',
      '/findingIds/2',
    ]);
    expect(answer.body.detail).toContain('only a priced finding can be offered');
  });

  test('made twice under one id with the same content is one change order', async () => {
    const [finding, id] = [await job.priced(), newId()];
    const make = () =>
      api
        .http(job.owner)
        .post(`${v1}/projects/${job.project.id}/change-orders`)
        .send({ id, findingIds: [finding.id] });
    const [first, second] = await Promise.all([make(), make()]);
    expect([first.status, second.status]).toEqual([201, 201]);
    expect(second.body.number).toBe(first.body.number);
    const other = await make().send({ id, findingIds: [finding.id], days: 3 });
    expect(other.status).toBe(409);
  });

  test('words nobody touched follow the findings; edited words stay', async () => {
    const [one, two] = [await job.priced({ title: 'First cut' }), await job.priced({ title: 'Second cut' })];
    const order = await job.draft([one.id]);
    const both = (await edit(order, { findingIds: [one.id, two.id] }).expect(200)).body as ChangeOrder;
    expect(both.wording.headline.en).toContain('2 things we found');
    const wording = { ...both.wording, headline: { en: 'In my own words', es: 'En mis palabras' } };
    const worded = (await edit(both, { wording }).expect(200)).body as ChangeOrder;
    const fewer = (await edit(worded, { findingIds: [two.id] }).expect(200)).body as ChangeOrder;
    expect(fewer.wording.headline.en).toBe('In my own words');
    await edit(order, { days: 9 }).expect(412);
  });

  test('with an empty word says in words why it cannot be sent', async () => {
    const finding = await job.priced();
    const order = await job.draft([finding.id]);
    const wording = { ...order.wording, why: { en: '', es: '' } };
    const blocked = (await edit(order, { wording }).expect(200)).body as ChangeOrder;
    expect(blocked.blocks).toEqual(['The words for "why it matters" are empty in English.']);
    const refused = await api
      .http(job.owner)
      .post(`${v1}/change-orders/${order.id}/send`)
      .set('if-match', `"${blocked.version}"`)
      .send({})
      .expect(409);
    expect(refused.body.detail).toContain('empty in English');
  });
});

describe('sending', () => {
  test('freezes exactly the bytes whose SHA-256 is told, offers the findings and leaves one letter with the link', async () => {
    const finding = await job.priced();
    const order = await job.draft([finding.id], { days: 2 });
    const sent = await job.send(order);
    expect(sent.link).toMatch(/\/c\/[0-9A-HJKMNP-TV-Z]{10}#[A-Za-z0-9_-]{43}$/);
    expect(sent.changeOrder.state).toBe('sent');
    expect(sent.changeOrder.versions[0]?.linkState).toBe('live');
    expect(await stateOf(finding.id)).toBe('offered');
    const document = await api.http(job.owner).get(`${v1}/change-orders/${order.id}/versions/1`).expect(200);
    expect(createHash('sha256').update(document.text).digest('hex')).toBe(sent.sha256);
    expect(document.headers.etag).toBe(`"${sent.sha256}"`);
    const mails = await api.platform.database.inCompany(job.owner.companyId, (tx) =>
      tx.mail.findMany({ where: { to: 'ines@wren.example', subject: { contains: `cambio ${order.number} ` } } }),
    );
    expect(mails).toHaveLength(1);
  });

  test('keeps only the hash of the link, and the record speaks of the version and its hash', async () => {
    const order = await job.draft([(await job.priced()).id]);
    const { link, sha256 } = await job.send(order);
    const token = new URL(link).hash.slice(1);
    const rows = await api.platform.database.inCompany(job.owner.companyId, (tx) =>
      tx.clientLink.findMany({ where: { changeOrderId: order.id } }),
    );
    expect(rows.map(({ tokenHash }) => tokenHash)).toEqual([createHash('sha256').update(token).digest('hex')]);
    const record = await api.http(job.owner).get(`${v1}/projects/${job.project.id}/record?limit=50`).expect(200);
    const event = record.body.items.find(({ type }: { type: string }) => type === 'change-order.sent');
    expect(event.data).toMatchObject({ version: 1, sha256, clientEmail: 'ines@wren.example' });
    expect(JSON.stringify(record.body)).not.toContain(token);
  });

  test('an edit afterwards makes a draft again, kills the link at once, and the next version counts on', async () => {
    const finding = await job.priced();
    const order = await job.draft([finding.id]);
    const first = await job.send(order);
    const open = await job.open(first.link);
    const again = (await edit(first.changeOrder, { days: 7 }).expect(200)).body as ChangeOrder;
    expect(again).toMatchObject({ state: 'draft', sentVersion: null, days: 7 });
    expect(await stateOf(finding.id)).toBe('priced');
    const dead = await api.http().get(open.path).set('cookie', open.cookie).expect(410);
    expect(dead.body.type).toBe('urn:underlath:problem:link-replaced');
    await api
      .http()
      .post(`${v1}/client/session`)
      .send({ token: new URL(first.link).hash.slice(1) })
      .expect(410);
    const second = await job.send(again);
    expect(second.changeOrder.versions.map(({ version, state }) => [version, state])).toEqual([
      [2, 'sent'],
      [1, 'replaced'],
    ]);
    expect(second.changeOrder.draft.days).toBe(7);
  });

  test('a renewed link works and the earlier one does not; a revoked one neither', async () => {
    const order = await job.draft([(await job.priced()).id]);
    const sent = await job.send(order);
    const old = await job.open(sent.link);
    const renewed = await api.http(job.owner).post(`${v1}/change-orders/${order.id}/link`).send({}).expect(200);
    await api.http().get(old.path).set('cookie', old.cookie).expect(410);
    const open = await job.open(renewed.body.link);
    await api.http().get(open.path).set('cookie', open.cookie).expect(200);
    await api.http(job.owner).delete(`${v1}/change-orders/${order.id}/link`).expect(204);
    const gone = await api.http().get(open.path).set('cookie', open.cookie).expect(410);
    expect(gone.body.type).toBe('urn:underlath:problem:link-revoked');
    expect(gone.body.detail).toContain('Ask Brandt Remodel');
    expect((await get(order.id)).versions[0]?.linkState).toBe('revoked');
  });

  test('crew may neither see nor send one, and another company finds nothing', async () => {
    const order = await job.draft([(await job.priced()).id]);
    const crew = await api.signIn({ role: 'crew', companyId: job.owner.companyId });
    await api.http(crew).get(`${v1}/change-orders/${order.id}`).expect(403);
    await api
      .http(await api.signIn())
      .get(`${v1}/change-orders/${order.id}`)
      .expect(404);
  });
});

describe('a repeated sending', () => {
  test('answers the same link again, of which the database can read neither token nor key', async () => {
    const order = await job.draft([(await job.priced()).id]);
    const key = 'send-the-wall-once';
    const send = () =>
      api
        .http(job.owner)
        .post(`${v1}/change-orders/${order.id}/send`)
        .set('if-match', `"${order.version}"`)
        .set('idempotency-key', key)
        .send({ expiresInDays: 14, withEnglish: true })
        .expect(200);
    const first = await send();
    const again = await send();
    expect(again.body).toEqual(first.body);
    expect(again.headers['idempotency-replayed']).toBe('true');
    const { rows } = await api.platform.database.ownerPool.query<{ row: string }>(
      'select k::text as row from idempotency_key k',
    );
    const kept = rows.map(({ row }) => row).join('\n');
    expect(kept).toContain(createHash('sha256').update(key).digest('hex'));
    expect(kept).not.toContain(key);
    expect(kept).not.toContain(new URL(first.body.link).hash.slice(1));
    expect(kept).not.toContain(first.body.sha256);
  });
});

describe('what is drawn at one place', () => {
  const sum = (cents: readonly number[]) => cents.reduce((total, one) => total + one, 0);
  const panelSplit = { repairId: 'panel-replace', quantities: {} };
  /** A finding drawn on the job's wall (144 in of studs at 16 in) with this repair saved. */
  const drawn = async (extent: object, repairs: object[] = [panelSplit]): Promise<Finding> => {
    const { id, version } = await job.note();
    const moved = await api
      .http(job.owner)
      .patch(`${v1}/findings/${id}`)
      .set('if-match', `"${version}"`)
      .send({ extent })
      .expect(200);
    await api
      .http(job.owner)
      .put(`${v1}/findings/${id}/estimate`)
      .set('if-match', `"${moved.body.version}"`)
      .send({ choices: repairs })
      .expect(200);
    return (await api.http(job.owner).get(`${v1}/findings/${id}`).expect(200)).body;
  };
  const opened = (order: ChangeOrder) =>
    order.draft.price.lines.find(({ operation }) => operation === 'open-finish')?.quantity;

  test('is opened once as its exact union; each finding shows its price alone and its share', async () => {
    const a = await drawn({ xIn: 16, yIn: 0, widthIn: 32, heightIn: 97.125 });
    const b = await drawn({ xIn: 32, yIn: 0, widthIn: 32, heightIn: 97.125 });
    const only = await job.draft([a.id]);
    // With 12 in of room on both sides, stud to stud: 0 to 64 in.
    expect(opened(only)).toBeCloseTo((64 * 97.125) / 144, 9);
    const order = (await edit(only, { findingIds: [a.id, b.id] }).expect(200)).body as ChangeOrder;
    expect(opened(order)).toBeCloseTo((80 * 97.125) / 144, 9);
    const { items, price } = order.draft;
    const [alone, shares] = [items.map((item) => item.aloneCents ?? 0), items.map((item) => item.shareCents)];
    expect(sum(shares)).toBe(price.totalCents);
    expect(sum(alone)).toBeGreaterThan(price.totalCents);
    for (const [at, share] of shares.entries()) expect(share).toBeLessThanOrEqual(alone[at] ?? 0);
    expect(order.conflicts).toEqual([]);
  });

  test('a declined finding that approved work would close in is said, one beside it is not', async () => {
    const fresh = await startJob(api);
    job = fresh;
    const declined = await drawn({ xIn: 20, yIn: 10, widthIn: 8, heightIn: 8 });
    const sent = await fresh.send(await fresh.draft([declined.id]));
    const open = await fresh.open(sent.link);
    const letter = (await api.http().get(open.path).set('cookie', open.cookie).expect(200)).body;
    await fresh.decide(open, letter, { kind: 'declined' });
    const over = await drawn({ xIn: 16, yIn: 0, widthIn: 32, heightIn: 97.125 });
    const beside = await drawn({ xIn: 112, yIn: 0, widthIn: 16, heightIn: 97.125 });
    const covering = await fresh.draft([over.id]);
    expect(covering.conflicts).toHaveLength(1);
    expect(covering.conflicts[0]).toContain('was declined');
    expect((await fresh.draft([beside.id])).conflicts).toEqual([]);
  });
});
