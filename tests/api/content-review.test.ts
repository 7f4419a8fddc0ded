import type { ChangeOrder, ChangeOrderDocument } from '@underlath/contract';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { startTestApi, type TestApi } from '../support/api.ts';
import { type Job, startJob } from '../support/offers.ts';
import { someId } from '../support/site.ts';

const v1 = '/api/v1';
let api: TestApi;
let job: Job;

beforeAll(async () => {
  api = await startTestApi();
});
afterAll(() => api.close());

/** A draft change order of a site in a state, whose contract has these payments. */
async function draftIn(state: string | null, more: { clientName?: string; payments?: number[] } = {}) {
  const { payments = [], ...change } = more;
  job = await startJob(api);
  const path = `${v1}/projects/${job.project.id}`;
  await api
    .http(job.owner)
    .patch(path)
    .set('if-match', '"1"')
    .send({ siteState: state, ...change })
    .expect(200);
  if (payments.length > 0) {
    const milestones = payments.map((cents, at) => ({ id: someId(), name: `Part ${at + 1}`, cents }));
    const terms = {
      retainagePct: 0,
      netDecreaseReturnsOverheadAndProfit: false,
      dayKind: 'working',
      daysOff: [],
      noticeDays: null,
      noticeDayKind: 'calendar',
      noticeMethods: [],
      milestones,
    };
    await api.http(job.owner).put(`${path}/contract/terms`).set('if-match', '"0"').send(terms).expect(200);
  }
  const finding = await job.priced();
  return { finding, order: await job.draft([finding.id]) };
}

const missingOf = ({ contentReview }: ChangeOrder) =>
  contentReview?.missing.map(({ anyOf, weight }) => `${anyOf.join('|')} ${weight}`);
const send = ({ id, version }: ChangeOrder, body: object = {}) =>
  api
    .http(job.owner)
    .post(`${v1}/change-orders/${id}/send`)
    .set('if-match', `"${version}"`)
    .send({ withEnglish: true, ...body });
const again = async ({ id }: ChangeOrder): Promise<ChangeOrder> =>
  (await api.http(job.owner).get(`${v1}/change-orders/${id}`).expect(200)).body;
/** The mails of sending are noted whenever the queue gets to them. */
const lastEvent = async () => {
  const { body } = await api.http(job.owner).get(`${v1}/projects/${job.project.id}/record?limit=50`).expect(200);
  return body.items.find(({ type }: { type: string }) => !type.startsWith('mail.'));
};

test('what California asks of a change and this one lacks is told with its source, the day it was read, and counsel', async () => {
  const { order } = await draftIn('CA');
  expect(missingOf(order)).toEqual(['payment-effect law']);
  expect(order.contentReview).toMatchObject({ state: 'CA', stateName: 'California' });
  expect(order.contentReview?.checkedOn).toMatch(/^\d{4}-\d{2}-\d{2}$/);
  expect(order.contentReview?.missing[0]?.source.section).toContain('7159');
  const words = order.contentReview?.cautions.map(({ en }) => en) ?? [];
  expect(words.at(-1)).toContain('Check with counsel');
  expect(words.join(' ')).not.toMatch(/is valid|complies/i);
});

test('without a reason it does not go out, with one it does, and the record keeps both', async () => {
  const { order } = await draftIn('CA');
  for (const body of [{}, { missingReason: '   ' }]) {
    const refused = await send(order, body).expect(422);
    expect(refused.body.errors).toMatchObject([{ pointer: '/missingReason' }]);
    expect(refused.body.detail).toContain('What it does to the payments');
    expect(refused.body.detail).toContain('7159');
  }
  expect((await again(order)).state).toBe('draft');
  const missingReason = 'The payments stand in a separate signed schedule';
  const sent = (await send(order, { missingReason }).expect(200)).body.changeOrder as ChangeOrder;
  expect(sent).toMatchObject({ state: 'sent', contentReview: null });
  expect(await lastEvent()).toMatchObject({
    type: 'change-order.sent',
    data: {
      missingReason,
      contentReview: {
        state: 'CA',
        missing: [{ anyOf: ['payment-effect'], weight: 'law', source: expect.stringContaining('7159') }],
      },
    },
  });
});

test('where the payments of the contract are written down, the letter says what is added to each, to the cent', async () => {
  const { order } = await draftIn('CA', { payments: [2_800_000, 2_800_000, 2_800_001] });
  expect(missingOf(order)).toEqual([]);
  const payments = order.draft.contract.payments ?? [];
  expect(payments.map(({ name }) => name.en)).toEqual(['Part 1', 'Part 2', 'Part 3']);
  expect(payments.reduce((sum, { cents }) => sum + cents, 0)).toBe(order.totalCents);
  await send(order).expect(200);
  expect((await lastEvent()).data).not.toHaveProperty('contentReview');
  const { body } = await api.http(job.owner).get(`${v1}/change-orders/${order.id}/versions/1`).expect(200);
  expect((body as ChangeOrderDocument).contract.payments).toEqual(payments);
});

test('one signature is not everyone where the client is two people', async () => {
  const both = { clientName: 'Ines and Tomas Wren' };
  expect(missingOf((await draftIn('NY', both)).order)).toContain('signed-by-all law');
  expect(missingOf((await draftIn('NY')).order)).toEqual(['payment-effect care']);
});

test('a photo of work before the signature is work that has begun', async () => {
  const { finding, order } = await draftIn('CA', { payments: [8_400_000] });
  expect(missingOf(order)).toEqual([]);
  const { companyId, memberId } = job.owner;
  await api.platform.database.inCompany(companyId, async (tx) => {
    const id = someId();
    const file = {
      sha256: '2'.repeat(64),
      byteCount: 1,
      mediaType: 'image/png',
      widthPx: 1,
      heightPx: 1,
      fileKey: 'x',
    };
    await tx.photo.create({
      data: { companyId, id, projectId: job.project.id, stage: 'during', ...file, uploadedById: memberId },
    });
    await tx.findingPhoto.create({ data: { companyId, findingId: finding.id, photoId: id } });
  });
  expect(missingOf(await again(order))).toEqual(['signed-before-work law']);
});

test('a site whose state is not said is held to what changes commonly carry, and goes out without a reason', async () => {
  const { order } = await draftIn(null);
  expect(order.contentReview).toMatchObject({ state: null, stateName: null, checkedOn: null });
  expect(missingOf(order)).toEqual(['payment-effect care']);
  expect(order.contentReview?.cautions[0]?.en).toContain('state of the site is not said');
  await send(order).expect(200);
  expect((await lastEvent()).data).toMatchObject({
    contentReview: { state: null, missing: [{ anyOf: ['payment-effect'], weight: 'care' }] },
  });
});

test('nothing is mailed where no address is given on purpose, and then no copy is known to reach the owner', async () => {
  const { order } = await draftIn('NJ', { payments: [8_400_000] });
  const { companyId } = job.owner;
  await send(order, { clientEmail: null }).expect(200);
  expect(await api.platform.database.inCompany(companyId, (tx) => tx.mail.count())).toBe(0);
  expect((await lastEvent()).data).toMatchObject({
    clientEmail: null,
    contentReview: { missing: [{ anyOf: ['copy-to-owner'], weight: 'care' }] },
  });
});

test('a project whose client has no address yet lacks the copy, not the law', async () => {
  const { order } = await draftIn('NJ', { payments: [8_400_000] });
  const path = `${v1}/projects/${job.project.id}`;
  await api.http(job.owner).patch(path).set('if-match', '"2"').send({ clientEmail: null, startOn: null }).expect(200);
  expect(missingOf(await again(order))).toEqual(['finish-effect care', 'copy-to-owner care']);
});

test('a state that there is not is refused', async () => {
  job = await startJob(api);
  const path = `${v1}/projects/${job.project.id}`;
  const refused = await api.http(job.owner).patch(path).set('if-match', '"1"').send({ siteState: 'ZZ' }).expect(422);
  expect(refused.body.errors).toMatchObject([{ pointer: '/siteState' }]);
});
