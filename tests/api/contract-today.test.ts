import type { ChangeOrder, ClientLetter, Contract, LedgerEntry } from '@underlath/contract';
import { formatCents } from '@underlath/rules';
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { startTestApi, type TestApi } from '../support/api.ts';
import { type Job, type OpenLetter, type Sent, startJob } from '../support/offers.ts';
import { readPdf } from '../support/pdf-text.ts';
import { v1 } from '../support/site.ts';

let api: TestApi;
let job: Job;

beforeAll(async () => {
  api = await startTestApi();
});
beforeEach(async () => {
  job = await startJob(api);
});
afterAll(() => api.close());

interface Offered extends Sent {
  open: OpenLetter;
  ids: string[];
}

async function offer({ count = 1, days = 3 } = {}): Promise<Offered> {
  const ids: string[] = [];
  for (let at = 0; at < count; at += 1) ids.push((await job.priced({ title: `Cut plate ${at + 1}` })).id);
  const sent = await job.send(await job.draft(ids, { days }), { byPart: count > 1 });
  return { ...sent, ids, open: await job.open(sent.link) };
}
const letterOf = async ({ open }: Pick<Offered, 'open'>) =>
  (await api.http().get(open.path).set('cookie', open.cookie).expect(200)).body as ClientLetter;
const read = async <Body>(path: string) => (await api.http(job.owner).get(`${v1}${path}`).expect(200)).body as Body;
const contractOf = () => read<Contract>(`/projects/${job.project.id}/contract`);
const orderOf = ({ changeOrder }: Sent) => read<ChangeOrder>(`/change-orders/${changeOrder.id}`);
const approve = async (offered: Offered, more: Record<string, unknown> = {}) =>
  job.decide(offered.open, await letterOf(offered), more);

async function settleTile(spentCents: number): Promise<string> {
  const body = { kind: 'allowance', name: 'Tile', happenedOn: '2026-03-20', allowedCents: 10_000, spentCents };
  const made = await api
    .http(job.owner)
    .post(`${v1}/projects/${job.project.id}/contract/entries`)
    .send({ ...body, overheadProfitPct: 25 })
    .expect(201);
  return made.body.id;
}

/** The sum after an answer as each of the four says it. */
async function saidBy(offered: Offered): Promise<Record<'page' | 'mail' | 'pdf' | 'ledger', number | string>> {
  const letter = await letterOf(offered);
  const after = letter.decision?.contract?.afterCents ?? Number.NaN;
  const { items } = await read<{ items: LedgerEntry[] }>(`/projects/${job.project.id}/contract/ledger`);
  const entry = items.find(({ changeOrderId }) => changeOrderId === offered.changeOrder.id);
  const mails = await api.platform.database.inCompany(job.owner.companyId, (tx) =>
    tx.mail.findMany({ where: { kind: 'decisionCopy', text: { contains: letter.sha256 } } }),
  );
  const pdf = await api
    .http(job.owner)
    .get(`${v1}/change-orders/${offered.changeOrder.id}/versions/1/pdf?locale=es`)
    .buffer()
    .parse((res, done) => {
      const chunks: Buffer[] = [];
      res.on('data', (chunk: Buffer) => chunks.push(chunk));
      res.on('end', () => done(null, Buffer.concat(chunks)));
    })
    .expect(200);
  const money = formatCents(entry?.sumCents ?? 0, 'es');
  const says = (words: string | undefined) => (words?.includes(money) ? (entry?.sumCents ?? 0) : `no ${money}`);
  return {
    page: after,
    mail: says(mails[0]?.text),
    pdf: says((await readPdf(pdf.body)).text),
    ledger: entry?.sumCents ?? Number.NaN,
  };
}

// Two and three change orders are made, priced, sent and answered in each: seconds, and more on a busy machine.
const timeout = 120_000;

describe('a letter beside a contract that moves', { timeout }, () => {
  test('says the contract as it stands, what moved it since the letter was sent, and by how much', async () => {
    const [first, second] = [await offer({ days: 3 }), await offer({ days: 2 })];
    const before = await letterOf(first);
    expect(before.contract).toMatchObject({ hasMoved: false, moves: [], isTimeCountedAnew: false });
    expect(before.contract.whole.contract).toEqual(before.document.contract);
    expect((await approve(second)).status).toBe(200);
    await settleTile(12_000);

    const { contract, document } = await letterOf(first);
    const added = second.changeOrder.draft.price.totalCents;
    expect(contract.hasMoved).toBe(true);
    expect(contract.moves).toMatchObject([
      { kind: 'change', number: 2, cents: added, days: 2 },
      { kind: 'allowance', number: null, name: 'Tile', cents: 2500, days: 0 },
    ]);
    expect(contract.isTimeCountedAnew).toBe(false);
    const now = await contractOf();
    expect(contract.whole.contract).toMatchObject({
      beforeCents: now.currentSumCents,
      afterCents: now.currentSumCents + document.price.totalCents,
      daysBefore: now.currentDays,
      daysAfter: now.currentDays + 3,
      finishBefore: now.finishOn,
    });
    expect(document.contract.beforeCents).toBe(8_400_000);
    expect((await orderOf(first)).draft.contract).toEqual(contract.whole.contract);
  });

  test('tells what waits beside it, and the sum, days and finish if all were approved', async () => {
    const [first, second, third] = [await offer({ count: 2, days: 4 }), await offer({ days: 2 }), await offer()];
    const { contract } = await letterOf(first);
    const waiting = [second, third].map(({ changeOrder: { number, draft } }) => ({
      number,
      cents: draft.price.totalCents,
      days: draft.days,
    }));
    expect(contract.waiting).toEqual(waiting);
    const cents = waiting.reduce((sum, one) => sum + one.cents, 0);
    for (const answer of [contract.whole, ...contract.parts]) {
      expect(answer.withWaiting).toMatchObject({
        sumCents: answer.contract.afterCents + cents,
        days: answer.contract.daysAfter + 5,
      });
      expect((answer.withWaiting.finishOn ?? '') > (answer.contract.finishAfter ?? '')).toBe(true);
    }
    await approve(first);
    await approve(second);
    await approve(third);
    expect((await contractOf()).currentSumCents).toBe(contract.whole.withWaiting.sumCents);
    expect((await contractOf()).finishOn).toBe(contract.whole.withWaiting.finishOn);
  });

  test('an allowance taken back, another start and other days are each told', async () => {
    const entry = await settleTile(12_000);
    const offered = await offer();
    await api.http(job.owner).post(`${v1}/contract-entries/${entry}/take-back`).send({ why: 'Wrong' }).expect(200);
    expect((await letterOf(offered)).contract).toMatchObject({
      hasMoved: true,
      moves: [{ kind: 'allowance-taken-back', name: 'Tile', cents: -2500 }],
      isTimeCountedAnew: false,
    });
    await api
      .http(job.owner)
      .patch(`${v1}/projects/${job.project.id}`)
      .set('if-match', `"${job.project.version}"`)
      .send({ startOn: '2026-03-09' })
      .expect(200);
    expect((await letterOf(offered)).contract).toMatchObject({ hasMoved: true, isTimeCountedAnew: true });
  });
});

describe('an approval of a contract that moved since it was shown', { timeout }, () => {
  test('is refused, decides nothing, and stands once the new sum was seen', async () => {
    const [first, second] = [await offer(), await offer()];
    const shown = await letterOf(first);
    await approve(second);
    const refused = await job.decide(first.open, shown);
    expect(refused).toMatchObject({ status: 409, body: { type: expect.stringContaining('contract-moved') } });
    expect((await orderOf(first)).state).toBe('sent');
    const again = await letterOf(first);
    expect(again.contract.ledger).not.toBe(shown.contract.ledger);
    expect((await job.decide(first.open, again)).status).toBe(200);
  });

  test('a payment, a letter newly sent and a declined one move nothing', async () => {
    const [first, second] = [await offer(), await offer()];
    const shown = await letterOf(first);
    await offer();
    await approve(second, { kind: 'declined' });
    await api
      .http(job.owner)
      .post(`${v1}/projects/${job.project.id}/contract/entries`)
      .send({ kind: 'payment', name: 'Deposit', happenedOn: '2026-03-05', cents: 100_000 })
      .expect(201);
    expect((await job.decide(first.open, shown)).status).toBe(200);
  });

  test('a refusal needs no newer sum, and the same approval sent again is told what stands', async () => {
    const [first, second, third] = [await offer(), await offer(), await offer()];
    const [shown, shownSecond] = [await letterOf(first), await letterOf(second)];
    await approve(third);
    expect((await job.decide(first.open, shown, { kind: 'declined' })).body).toMatchObject({ state: 'declined' });
    const seen = await letterOf(second);
    await job.decide(second.open, seen);
    expect((await job.decide(second.open, shownSecond)).body).toMatchObject({ state: 'approved' });
  });

  test('of two approvals of two letters at the same moment one stands, and the other after its new sum was seen', async () => {
    for (let round = 0; round < 2; round += 1) {
      const pair = [await offer(), await offer()] as const;
      const shown = [await letterOf(pair[0]), await letterOf(pair[1])] as const;
      const answers = await Promise.all(pair.map(({ open }, at) => job.decide(open, shown[at] as ClientLetter)));
      expect(answers.map(({ status }) => status).sort()).toEqual([200, 409]);
      const loser = pair[answers.findIndex(({ status }) => status === 409)] as Offered;
      expect((await approve(loser)).status).toBe(200);
      const ledger = await read<{ items: LedgerEntry[] }>(`/projects/${job.project.id}/contract/ledger`);
      for (const offered of pair) {
        const entry = ledger.items.find(({ changeOrderId }) => changeOrderId === offered.changeOrder.id);
        const { sumCents, days, finishOn } = entry ?? {};
        expect((await letterOf(offered)).decision?.contract).toMatchObject({
          afterCents: sumCents,
          daysAfter: days,
          finishAfter: finishOn,
        });
      }
    }
  });
});

describe('after an answer', { timeout }, () => {
  test('page, mail, PDF and ledger say one sum, for two approvals in a row of letters that were out together', async () => {
    const [first, second] = [await offer({ days: 1 }), await offer({ days: 2 })];
    await approve(second);
    await approve(first);
    const said = await Promise.all([first, second].map(saidBy));
    for (const one of said) expect(new Set(Object.values(one)).size, JSON.stringify(one)).toBe(1);
    expect(said[0]?.ledger).toBe((await contractOf()).currentSumCents);
    expect((await orderOf(first)).draft.contract.afterCents).toBe(said[0]?.ledger);
    const { decision } = await letterOf(first);
    expect(decision?.contract).toMatchObject({ daysBefore: 62, daysAfter: 63 });
    expect(decision?.contract?.finishAfter).toBe((await contractOf()).finishOn);
  });

  test('a part says its own sum, and every one keeps saying it when the contract moves on', async () => {
    const [parted, other, last] = [await offer({ count: 2 }), await offer(), await offer()];
    await approve(other);
    const answer = await approve(parted, { findingIds: parted.ids.slice(0, 1) });
    expect(answer.body).toMatchObject({ state: 'part-approved' });
    const said = await saidBy(parted);
    expect(new Set(Object.values(said)).size, JSON.stringify(said)).toBe(1);
    await approve(last);
    expect(await saidBy(parted)).toEqual(said);
    expect((await contractOf()).currentSumCents).toBeGreaterThan(said.ledger as number);
  });

  test('a refusal leaves the sum of that moment', async () => {
    const [first, second] = [await offer(), await offer()];
    await approve(second);
    await approve(first, { kind: 'declined' });
    const now = await contractOf();
    const { decision } = await letterOf(first);
    expect(decision?.contract).toMatchObject({
      thisChangeCents: 0,
      beforeCents: now.currentSumCents,
      afterCents: now.currentSumCents,
      finishAfter: now.finishOn,
    });
    const record = await read(`/projects/${job.project.id}/record/verify`);
    expect(record).toMatchObject({ ok: true, faults: [] });
  });
});
