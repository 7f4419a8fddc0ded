import type { ChangeOrder, ClientLetter, Contract, DocumentPart } from '@underlath/contract';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { newId } from '../../apps/api/src/platform/ids.ts';
import { startTestApi, type TestApi } from '../support/api.ts';
import { type Job, type OpenLetter, type Sent, startJob } from '../support/offers.ts';
import { readPdf } from '../support/pdf-text.ts';
import { v1 } from '../support/site.ts';

let api: TestApi;
let job: Job;

beforeAll(async () => {
  api = await startTestApi();
  job = await startJob(api);
});
afterAll(() => api.close());

interface Offered extends Sent {
  open: OpenLetter;
  ids: string[];
  letter: ClientLetter;
  parts: DocumentPart[];
}

async function offer(count: number, days = 6): Promise<Offered> {
  const ids: string[] = [];
  for (let at = 0; at < count; at += 1) ids.push((await job.priced({ title: `Cut plate ${at + 1}` })).id);
  const sent = await job.send(await job.draft(ids, { days }), { byPart: true });
  const open = await job.open(sent.link);
  const letter = await letterOf(open);
  return { ...sent, open, ids, letter, parts: letter.document.parts ?? [] };
}
const letterOf = async (open: OpenLetter) =>
  (await api.http().get(open.path).set('cookie', open.cookie).expect(200)).body as ClientLetter;
const read = async <Body>(path: string) => (await api.http(job.owner).get(`${v1}${path}`).expect(200)).body as Body;
const contractOf = () => read<Contract>(`/projects/${job.project.id}/contract`);
const stateOf = async (id: string) => (await read<{ state: string }>(`/findings/${id}`)).state;
const partWith = ({ parts }: Offered, ids: readonly string[]): DocumentPart => {
  const part = parts.find(({ findingIds }) => String(findingIds) === String(ids));
  if (!part) throw new Error(`no part of ${ids}`);
  return part;
};
const sum = (cents: readonly number[]) => cents.reduce((a, b) => a + b, 0);

describe('a letter whose findings may be left out', () => {
  test('prices every choice with shared work counted once, and each foots', async () => {
    const offered = await offer(3);
    const { document } = offered.letter;
    expect(offered.parts).toHaveLength(6);
    for (const { findingIds, price, shares, contract, days } of offered.parts) {
      expect(price.totalCents).toBeLessThan(document.price.totalCents);
      expect(sum(price.lines.map(({ totalCents }) => totalCents))).toBe(price.subtotalCents);
      expect(shares.map(({ findingId }) => findingId)).toEqual(findingIds);
      expect(sum(shares.map(({ cents }) => cents))).toBe(price.totalCents);
      expect(contract.afterCents).toBe(contract.beforeCents + price.totalCents);
      expect(days).toBeLessThanOrEqual(document.days);
    }
    const [first = '', second = ''] = offered.ids;
    const alone = [partWith(offered, [first]), partWith(offered, [second])];
    const both = partWith(offered, [first, second]);
    expect(both.price.totalCents).toBeLessThan(sum(alone.map(({ price }) => price.totalCents)));
    expect(alone[0]?.price.totalCents).toBe(document.items[0]?.aloneCents);
  });

  test('says what leaving one out means: who decides about it, and that the wall is closed over it', async () => {
    const offered = await offer(2);
    const [first = ''] = offered.ids;
    const words = partWith(offered, [first]).cautions.map(({ en }) => en);
    expect(words.some((line) => line.includes('closes the wall over finding'))).toBe(true);
  });

  test('is not made of one finding, nor of five', async () => {
    for (const count of [1, 5]) {
      const ids = await Promise.all(Array.from({ length: count }, async () => (await job.priced()).id));
      const order = await job.draft(ids);
      const refused = await api
        .http(job.owner)
        .post(`${v1}/change-orders/${order.id}/send`)
        .set('if-match', `"${order.version}"`)
        .send({ byPart: true, withEnglish: true })
        .expect(422);
      expect(refused.body.errors).toMatchObject([{ pointer: '/byPart' }]);
    }
  });

  test('without the offer only the whole can be approved', async () => {
    const ids = [(await job.priced()).id, (await job.priced()).id];
    const sent = await job.send(await job.draft(ids));
    const open = await job.open(sent.link);
    const letter = await letterOf(open);
    expect(letter.document).not.toHaveProperty('parts');
    const answer = await job.decide(open, letter, { findingIds: ids.slice(0, 1) });
    expect(answer).toMatchObject({ status: 422, body: { errors: [{ pointer: '/findingIds' }] } });
    expect((await job.decide(open, letter, { findingIds: ids.toReversed() })).body).toMatchObject({
      state: 'approved',
      decision: { findingIds: [] },
    });
  });
});

describe('an approval of a part', () => {
  test('adds exactly its own total and days to the contract; what was left out is declined', async () => {
    const before = await contractOf();
    const offered = await offer(3);
    const [first = '', second = '', third = ''] = offered.ids;
    const part = partWith(offered, [first, third]);
    const answer = await job.decide(offered.open, offered.letter, { findingIds: [third, first] });
    expect(answer).toMatchObject({
      status: 200,
      body: { state: 'part-approved', decision: { kind: 'approved', findingIds: [first, third] } },
    });
    expect(await Promise.all(offered.ids.map(stateOf))).toEqual(['approved', 'declined', 'approved']);
    const after = await contractOf();
    expect(after.currentSumCents).toBe(before.currentSumCents + part.price.totalCents);
    expect(after.currentDays).toBe(before.currentDays + part.days);
    expect(after.approved.at(-1)).toMatchObject({ state: 'part-approved', cents: part.price.totalCents });
    const order = await read<ChangeOrder>(`/change-orders/${offered.changeOrder.id}`);
    expect(order).toMatchObject({ state: 'part-approved', totalCents: part.price.totalCents, days: part.days });
    expect(order.draft.items.map(({ findingId }) => findingId)).toEqual([first, third]);
    expect(order.versions[0]).toMatchObject({ state: 'part-approved', sha256: offered.sha256 });

    const pdf = await api
      .http(job.owner)
      .get(`${v1}/change-orders/${offered.changeOrder.id}/versions/1/pdf?locale=en`)
      .responseType('blob');
    const { text } = await readPdf(pdf.body);
    for (const words of ['What you may leave out', 'Approved in part', 'Left out']) expect(text).toContain(words);

    const mails = await api.platform.database.inCompany(job.owner.companyId, (tx) =>
      tx.mail.findMany({ where: { subject: { contains: 'part' } }, select: { subject: true, text: true } }),
    );
    const left = offered.letter.document.items.find(({ findingId }) => findingId === second);
    expect(mails.map(({ subject }) => subject).sort()).toEqual([
      expect.stringContaining('approved in part'),
      expect.stringContaining('aprobada en parte'),
    ]);
    for (const { text: words } of mails) expect(words).toContain(`${left?.number}. ${left?.title}`);
    expect((await read<{ ok: boolean }>(`/projects/${job.project.id}/record/verify`)).ok).toBe(true);
  });

  test('is told what stands when it is sent again, and another choice is refused', async () => {
    const offered = await offer(2);
    const [first = '', second = ''] = offered.ids;
    const decide = (findingIds?: string[]) =>
      job.decide(offered.open, offered.letter, findingIds ? { findingIds } : {});
    expect((await decide([first])).status).toBe(200);
    expect((await decide([first])).body).toMatchObject({ state: 'part-approved' });
    for (const other of [[second], undefined]) expect((await decide(other)).status).toBe(409);
    expect(await Promise.all(offered.ids.map(stateOf))).toEqual(['approved', 'declined']);
  });

  test.each<[string, (offered: Offered) => Record<string, unknown>]>([
    ['a finding that is not in it', () => ({ findingIds: [newId()] })],
    ['all of them and one that is not in it', ({ ids }) => ({ findingIds: [...ids, newId()] })],
    ['one finding named twice', ({ ids }) => ({ findingIds: [ids[0], ids[0]] })],
    ['a refusal with a choice', ({ ids }) => ({ kind: 'declined', findingIds: ids.slice(0, 1) })],
    ['no finding at all', () => ({ findingIds: [] })],
  ])('%s is refused and changes nothing', async (_name, more) => {
    const offered = await offer(2);
    const refused = await job.decide(offered.open, offered.letter, more(offered));
    expect(refused.status).toBe(422);
    expect(JSON.stringify(refused.body)).toContain('/findingIds');
    expect(await Promise.all(offered.ids.map(stateOf))).toEqual(['offered', 'offered']);
  });

  test('a choice that was changed in the table is found by the record', async () => {
    const offered = await offer(2);
    const [first = '', second = ''] = offered.ids;
    await job.decide(offered.open, offered.letter, { findingIds: [first] });
    const tampered = await api.platform.database.ownerPool.connect();
    try {
      await tampered.query('begin');
      await tampered.query("set local session_replication_role = 'replica'");
      await tampered.query('update decision set finding_ids = $1 where change_order_id = $2', [
        [second],
        offered.changeOrder.id,
      ]);
      await tampered.query('commit');
    } finally {
      tampered.release();
    }
    const verified = await read<{ ok: boolean; faults: { detail?: string }[] }>(
      `/projects/${job.project.id}/record/verify`,
    );
    expect(verified.ok).toBe(false);
    expect(JSON.stringify(verified.faults)).toContain('findingIds is not the recorded one');
  });
});
