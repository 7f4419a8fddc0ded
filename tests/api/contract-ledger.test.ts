import type { Contract, ContractEntry, ContractTerms, LedgerEntry } from '@underlath/contract';
import { noticeMethod } from '@underlath/contract';
import { addWorkingDays, NOTICE_METHODS } from '@underlath/rules';
import fc from 'fast-check';
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { startTestApi, type TestApi } from '../support/api.ts';
import { type Job, startJob } from '../support/offers.ts';
import { someId, v1 } from '../support/site.ts';

let api: TestApi;
let job: Job;

beforeAll(async () => {
  api = await startTestApi();
});
beforeEach(async () => {
  job = await startJob(api);
});
afterAll(() => api.close());

const at = (rest = '') => `${v1}/projects/${job.project.id}/contract${rest}`;
const read = async <Body>(rest = '') => (await api.http(job.owner).get(at(rest)).expect(200)).body as Body;
const contract = () => read<Contract>();
const ledger = async () => (await read<{ items: LedgerEntry[] }>('/ledger')).items;
const save = (version: number, body: object) =>
  api.http(job.owner).put(at('/terms')).set('if-match', `"${version}"`).send(body);
const add = (body: object) => api.http(job.owner).post(at('/entries')).send(body);
const takeBack = (id: string, why = 'Wrong house') =>
  api.http(job.owner).post(`${v1}/contract-entries/${id}/take-back`).send({ why });

const plainTerms = {
  retainagePct: 10,
  netDecreaseReturnsOverheadAndProfit: false,
  dayKind: 'working',
  daysOff: [],
  noticeDays: 7,
  noticeDayKind: 'calendar',
  noticeMethods: ['e-mail', 'letter'],
  milestones: [] as { id: string; name: string; cents: number }[],
};
const paid = { kind: 'payment', name: 'Deposit', happenedOn: '2026-03-05', cents: 3_360_000 };
const completed = { kind: 'completed', name: 'March', happenedOn: '2026-03-31', cents: 5_230_000 };
const tile = {
  kind: 'allowance',
  name: 'Tile',
  happenedOn: '2026-03-20',
  allowedCents: 10_000,
  spentCents: 12_000,
  overheadProfitPct: 25,
};

async function waiting(days: number) {
  return job.send(await job.draft([(await job.priced()).id], { days }));
}
async function approved(days: number) {
  const sent = await waiting(days);
  const open = await job.open(sent.link);
  const letter = (await api.http().get(open.path).set('cookie', open.cookie).expect(200)).body;
  expect((await job.decide(open, letter)).status).toBe(200);
  return sent.changeOrder;
}

describe('terms', () => {
  test('nobody has written them at first: version 0, no retainage, working days, no payments', async () => {
    expect(await read('/terms')).toMatchObject({ version: 0, retainagePct: 0, dayKind: 'working', milestones: [] });
  });

  test('what is saved is read back, days off in order and once; the second save needs the first one’s version', async () => {
    const milestones = [{ id: someId(), name: 'Rough inspection', cents: 2_000_000 }];
    const body = { ...plainTerms, daysOff: ['2026-07-03', '2026-05-25', '2026-07-03'], milestones };
    const saved = (await save(0, body).expect(200)).body as ContractTerms;
    expect(saved).toMatchObject({ ...body, version: 1, daysOff: ['2026-05-25', '2026-07-03'] });
    expect(await read('/terms')).toEqual(saved);
    await save(0, body).expect(412);
    expect((await save(1, { ...body, retainagePct: 5 }).expect(200)).body).toMatchObject({
      version: 2,
      retainagePct: 5,
    });
    const record = await api.http(job.owner).get(`${v1}/projects/${job.project.id}/record?limit=2`).expect(200);
    expect(record.body.items).toMatchObject([
      { type: 'contract.terms-changed', data: { version: 2, retainagePct: 5 } },
      { type: 'contract.terms-changed', data: { version: 1, retainagePct: 10 } },
    ]);
  });

  test.each<[string, object, string]>([
    ['retainage over 100%', { retainagePct: 101 }, '/retainagePct'],
    ['a day there is not', { daysOff: ['2026-02-30'] }, '/daysOff/0'],
    ['a way of notice nobody knows', { noticeMethods: ['pigeon'] }, '/noticeMethods/0'],
    ['a payment of nothing', { milestones: [{ id: someId(), name: 'Start', cents: 0 }] }, '/milestones/0/cents'],
  ])('%s is refused, naming it', async (_name, change, pointer) => {
    const { body } = await save(0, { ...plainTerms, ...change }).expect(422);
    expect(body.errors.map((error: { pointer: string }) => error.pointer)).toEqual([pointer]);
  });

  test('two payments with one id are refused', async () => {
    const id = someId();
    const milestones = [
      { id, name: 'Start', cents: 1 },
      { id, name: 'Close', cents: 1 },
    ];
    const { body } = await save(0, { ...plainTerms, milestones }).expect(422);
    expect(body.errors).toMatchObject([{ pointer: '/milestones/1/id' }]);
  });

  test('the contract knows exactly the ways of notice that the rules know', () => {
    expect(noticeMethod.options).toEqual([...NOTICE_METHODS]);
  });
});

describe('entries', () => {
  test('the same id enters once, with other content it is refused', async () => {
    const id = someId();
    const first = (await add({ ...paid, id }).expect(201)).body as ContractEntry;
    expect(first).toMatchObject({ ...paid, id, milestoneId: null, changeCents: 0, takenBack: null });
    expect((await add({ ...paid, id }).expect(201)).body).toEqual(first);
    expect((await add({ ...paid, id, cents: 1 }).expect(409)).body.type).toContain('already-exists');
    expect((await read<{ items: ContractEntry[] }>('/entries')).items).toEqual([first]);
  });

  test('one taken back stays readable with its reason and counts no more; the record tells both', async () => {
    const { id } = (await add(tile).expect(201)).body as ContractEntry;
    expect((await contract()).allowancesCents).toBe(2500);
    expect((await takeBack(id).expect(200)).body).toMatchObject({ changeCents: 0, takenBack: { why: 'Wrong house' } });
    await takeBack(id).expect(409);
    expect(await contract()).toMatchObject({ allowancesCents: 0, currentSumCents: 8_400_000 });
    expect(await ledger()).toHaveLength(1);
    const record = await api.http(job.owner).get(`${v1}/projects/${job.project.id}/record?limit=2`).expect(200);
    expect(record.body.items).toMatchObject([
      { type: 'contract-entry.taken-back', subjectId: id, data: { reason: 'Wrong house' } },
      { type: 'contract-entry.added', subjectId: id, data: { kind: 'allowance', name: 'Tile' } },
    ]);
    expect((await api.http(job.owner).get(`${v1}/projects/${job.project.id}/record/verify`).expect(200)).body.ok).toBe(
      true,
    );
  });

  test('a payment settles a payment of the terms once, and the terms keep what is settled', async () => {
    const milestones = [
      { id: someId(), name: 'Start', cents: 3_360_000 },
      { id: someId(), name: 'Close', cents: 5_040_000 },
    ];
    await save(0, { ...plainTerms, milestones }).expect(200);
    const milestoneId = milestones[0]?.id;
    const { id } = (await add({ ...paid, milestoneId }).expect(201)).body as ContractEntry;
    const again = await add({ ...paid, name: 'Twice', milestoneId }).expect(409);
    expect(again.body.detail).toContain('"Start" was settled on 2026-03-05 by "Deposit"');
    const without = { ...plainTerms, milestones: milestones.slice(1) };
    expect((await save(1, without).expect(409)).body.detail).toContain('Deposit');
    await takeBack(id).expect(200);
    await save(1, without).expect(200);
    const unknown = await add({ ...paid, milestoneId }).expect(422);
    expect(unknown.body.errors).toMatchObject([{ pointer: '/milestoneId' }]);
  });

  test('what has not happened yet, or below nothing, is refused by name', async () => {
    const tomorrow = new Date(Date.now() + 86_400_000).toISOString().slice(0, 10);
    expect((await add({ ...paid, happenedOn: tomorrow }).expect(422)).body.errors).toMatchObject([
      { pointer: '/happenedOn' },
    ]);
    expect((await add({ ...paid, cents: -1 }).expect(422)).body.errors).toMatchObject([{ pointer: '/cents' }]);
    expect((await add({ ...tile, spentCents: -1 }).expect(422)).body.errors).toMatchObject([
      { pointer: '/spentCents' },
    ]);
    await add({ ...paid, kind: 'gift' }).expect(422);
  });
});

describe('the contract', () => {
  test('worked example B: 52,300.00 done with 10% retained and 33,600.00 paid leaves 13,470.00 due', async () => {
    await save(0, plainTerms).expect(200);
    await add(paid).expect(201);
    await add(completed).expect(201);
    expect((await contract()).money).toEqual({
      completedCents: 5_230_000,
      retainageCents: 523_000,
      earnedLessRetainageCents: 4_707_000,
      paidCents: 3_360_000,
      dueCents: 1_347_000,
      balanceToFinishCents: 8_400_000 - 4_707_000,
    });
  });

  test('an allowance overspent by 20.00 with 25% on it adds 25.00; a saving gives the percent back only where the terms say so', async () => {
    await add(tile).expect(201);
    await add({ ...tile, name: 'Lamps', spentCents: 8000 }).expect(201);
    expect(await contract()).toMatchObject({
      allowancesCents: 2500 - 2000,
      approvedChangesCents: 0,
      currentSumCents: 8_400_500,
    });
    await save(0, { ...plainTerms, netDecreaseReturnsOverheadAndProfit: true }).expect(200);
    expect((await contract()).allowancesCents).toBe(2500 - 2500);
  });

  test('days are counted as the terms say, a day off among working days moves the finish on', async () => {
    const start = '2026-03-02';
    expect((await contract()).finishOn).toBe(addWorkingDays(start, 60));
    await save(0, { ...plainTerms, daysOff: ['2026-03-31', '2026-03-28'] }).expect(200);
    expect((await contract()).finishOn).toBe(addWorkingDays(start, 61));
    await save(1, { ...plainTerms, dayKind: 'calendar', daysOff: ['2026-03-31'] }).expect(200);
    expect(await contract()).toMatchObject({ finishOn: '2026-05-01', dayKind: 'calendar' });
  });

  test('the letter of the next change starts from the sum with its allowances, and counts days as the terms do', async () => {
    await save(0, { ...plainTerms, dayKind: 'calendar' }).expect(200);
    await add(tile).expect(201);
    const { draft } = await job.draft([(await job.priced()).id], { days: 4 });
    expect(draft.contract).toMatchObject({
      previousChangesCents: 0,
      allowancesCents: 2500,
      dayKind: 'calendar',
      beforeCents: 8_402_500,
      afterCents: 8_402_500 + draft.price.totalCents,
      finishBefore: '2026-05-01',
      finishAfter: '2026-05-05',
    });
  });

  test('days that are suggested are counted as the terms do', async () => {
    const { id } = await job.priced();
    const working = await job.draft([id]);
    await save(0, { ...plainTerms, dayKind: 'calendar' }).expect(200);
    const calendar = await job.draft([(await job.priced()).id]);
    expect(calendar.days).toBe(Math.ceil((working.days * 7) / 5));
    expect(calendar.wording.note.en).toContain(`${calendar.days} days of the calendar`);
    expect(working.wording.note.en).not.toContain('calendar');
  });

  test('the contingency is drawn down by approved changes and overspent allowances, and says when it is overrun', async () => {
    const http = api.http(job.owner);
    const change = { contingencyCents: 3000 };
    await http.patch(`${v1}/projects/${job.project.id}`).set('if-match', `"${job.project.version}"`).send(change);
    await add(tile).expect(201);
    expect((await contract()).contingency).toMatchObject({ usedCents: 2500, leftCents: 500, overrunCents: 0 });
    const order = await approved(0);
    const { contingency } = await contract();
    expect(contingency).toMatchObject({
      usedCents: 2500 + order.totalCents,
      leftCents: 0,
      overrunCents: order.totalCents - 500,
    });
    expect(contingency.draws).toMatchObject([
      { what: 'Tile', drawnCents: 2500, leftCents: 500 },
      { changeOrderId: order.id, drawnCents: order.totalCents, leftCents: 500 - order.totalCents },
    ]);
  });

  test('each change order that waits or is a draft says what it adds to the payments still to come and to the finish', async () => {
    const milestones = [
      { id: someId(), name: 'Start', cents: 3_000_000 },
      { id: someId(), name: 'Rough inspection', cents: 2_000_000 },
      { id: someId(), name: 'Close', cents: 2_000_000 },
    ];
    await save(0, { ...plainTerms, milestones }).expect(200);
    await add({ ...paid, milestoneId: milestones[0]?.id }).expect(201);
    const sent = (await waiting(3)).changeOrder;
    const draft = await job.draft([(await job.priced()).id], { days: 1 });
    const now = await contract();
    expect(now.unscheduledCents).toBe(1_400_000);
    expect(now.payments.map(({ name, settledOn }) => [name, settledOn])).toEqual([
      ['Start', '2026-03-05'],
      ['Rough inspection', null],
      ['Close', null],
    ]);
    const half = Math.ceil(sent.totalCents / 2);
    expect(now.effects).toMatchObject([
      {
        changeOrderId: sent.id,
        state: 'sent',
        payments: [
          { milestoneId: milestones[1]?.id, cents: half },
          { milestoneId: milestones[2]?.id, cents: sent.totalCents - half },
        ],
        finishOn: addWorkingDays('2026-03-02', 63),
      },
      {
        changeOrderId: draft.id,
        state: 'draft',
        cents: draft.draft.price.totalCents,
        finishOn: addWorkingDays('2026-03-02', 61),
      },
    ]);
  });

  test('with every payment settled a change is one final payment', async () => {
    const milestones = [{ id: someId(), name: 'All of it', cents: 8_400_000 }];
    await save(0, { ...plainTerms, milestones }).expect(200);
    await add({ ...paid, milestoneId: milestones[0]?.id }).expect(201);
    const sent = (await waiting(0)).changeOrder;
    expect((await contract()).effects).toMatchObject([{ payments: [{ milestoneId: null, cents: sent.totalCents }] }]);
  });
});

describe('the ledger', () => {
  test('its last line is where the contract stands, whatever was entered and taken back in whatever order', async () => {
    const first = await approved(2);
    const day = fc.integer({ min: 1, max: 28 }).map((date) => `2026-03-${String(date).padStart(2, '0')}`);
    const cents = fc.integer({ min: 1, max: 900_000 });
    const any = fc.oneof(
      fc.record({ kind: fc.constantFrom('payment', 'completed'), name: fc.constant('One'), happenedOn: day, cents }),
      fc.record({
        kind: fc.constant('allowance'),
        name: fc.constant('One'),
        happenedOn: day,
        allowedCents: cents,
        spentCents: cents,
        overheadProfitPct: fc.constantFrom(0, 12.5, 25),
      }),
    );
    await save(0, { ...plainTerms, retainagePct: 7.5 }).expect(200);
    const steps = fc.array(fc.record({ entry: any, back: fc.boolean() }), { minLength: 1, maxLength: 4 });
    // Each run adds to what the runs before left, over the network; 8 runs leave up to 32 entries.
    await fc.assert(
      fc.asyncProperty(steps, async (rows) => {
        for (const { entry, back } of rows) {
          const { id } = (await add(entry).expect(201)).body as ContractEntry;
          if (back) await takeBack(id).expect(200);
        }
        const now = await contract();
        const entries = await ledger();
        const last = entries.at(-1);
        expect(last).toMatchObject({
          sumCents: now.currentSumCents,
          days: now.currentDays,
          finishOn: now.finishOn,
          pendingCents: now.pendingCents,
          ...now.money,
        });
        expect(now.originalSumCents + entries.reduce((sum, { changeCents }) => sum + changeCents, 0)).toBe(
          now.currentSumCents,
        );
        const standing = (await read<{ items: ContractEntry[] }>('/entries')).items.filter((one) => !one.takenBack);
        expect(entries.flatMap(({ entryId }) => entryId ?? []).sort()).toEqual(standing.map(({ id }) => id).sort());
      }),
      { numRuns: 8 },
    );
    expect((await ledger()).filter(({ changeOrderId }) => changeOrderId === first.id)).toMatchObject([
      { kind: 'change', state: 'approved', changeCents: first.totalCents, changeDays: 2 },
    ]);
  });

  test('as CSV it is the same, in dollars, with numbers below zero as numbers and words that could run as words', async () => {
    await save(0, plainTerms).expect(200);
    await add({ ...tile, name: '=1+1', spentCents: 8000 }).expect(201);
    await add(paid).expect(201);
    const answer = await api.http(job.owner).get(at('/ledger/csv')).expect(200);
    expect(answer.headers['content-type']).toBe('text/csv; charset=utf-8');
    expect(answer.headers['content-disposition']).toContain('contract-ledger.csv');
    const [header, ...rows] = answer.text
      .trim()
      .split('\r\n')
      .map((line) => line.split(','));
    const column = (name: string) => rows.map((cells) => cells[(header ?? []).indexOf(name)]);
    expect(column('what')).toEqual(['Original contract', 'Deposit', "'=1+1"]);
    expect(column('change_of_sum_usd')).toEqual(['0.00', '0.00', '-20.00']);
    expect(column('sum_usd')).toEqual(['84000.00', '84000.00', '83980.00']);
    expect(column('due_usd')).toEqual(['0.00', '-33600.00', '-33600.00']);
    expect(column('id').slice(1)).toEqual((await ledger()).slice(1).map(({ entryId }) => entryId));
  });

  test('someone else’s contract, terms, entries and ledger are not found', async () => {
    const stranger = await api.signIn();
    const { id } = (await add(paid).expect(201)).body as ContractEntry;
    for (const rest of ['/terms', '/entries', '/ledger', '/ledger/csv'])
      await api.http(stranger).get(at(rest)).expect(404);
    await api.http(stranger).post(at('/entries')).send(paid).expect(404);
    await api.http(stranger).post(`${v1}/contract-entries/${id}/take-back`).send({ why: 'Mine' }).expect(404);
    await api.http(stranger).put(at('/terms')).set('if-match', '"0"').send(plainTerms).expect(404);
  });
});
