import type { ClientLetter, Finding } from '@underlath/contract';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { startTestApi, type TestApi } from '../support/api.ts';
import { type Job, type OpenLetter, type Sent, startJob } from '../support/offers.ts';
import { v1 } from '../support/site.ts';

let api: TestApi;
let job: Job;

beforeAll(async () => {
  api = await startTestApi();
  job = await startJob(api);
});
afterAll(() => api.close());

const engineerDecides = {
  checkId: 'cut.top-plate',
  inputs: { widthIn: 3.5, cutIn: 2, code: 'irc', bearingOrBraced: true, inShearWall: true },
};
const unsafe = { checkId: 'bearing.seat', inputs: { bearingLengthIn: 0, positiveConnection: false } };

async function priced(check: { checkId: string; inputs: object }): Promise<Finding> {
  const http = api.http(job.owner);
  const body = { locationId: job.wallId, title: `About ${check.checkId}`, seenAt: '2026-03-03T17:05:00Z', ...check };
  const made = (await http.post(`${v1}/projects/${job.project.id}/findings`).send(body).expect(201)).body as Finding;
  const { choices } = (await http.get(`${v1}/findings/${made.id}/estimate`).expect(200)).body;
  await http
    .put(`${v1}/findings/${made.id}/estimate`)
    .set('if-match', `"${made.version}"`)
    .send({ choices })
    .expect(200);
  return made;
}

async function offer(findings: readonly Finding[]): Promise<Sent & { open: OpenLetter; letter: ClientLetter }> {
  const sent = await job.send(await job.draft(findings.map(({ id }) => id)));
  const open = await job.open(sent.link);
  const letter = (await api.http().get(open.path).set('cookie', open.cookie).expect(200)).body;
  return { ...sent, open, letter };
}

const decisionOf = (changeOrderId: string) =>
  api.platform.database.inCompany(job.owner.companyId, (tx) => tx.decision.findFirst({ where: { changeOrderId } }));

test('a refusal takes a name, keeps no consent, and its record is as it was written', async () => {
  const { open, letter, changeOrder } = await offer([await job.priced()]);
  const answer = await job.decide(open, letter, { kind: 'declined', acknowledged: false });
  expect(answer.status).toBe(200);
  expect(await decisionOf(changeOrder.id)).toMatchObject({
    signerName: 'Ines Wren',
    ...{ consentId: null, consentText: null, acknowledged: null },
  });
  await expectRecordHolds();
});

test('a refusal that comes with a consent is sent back', async () => {
  const { open, letter, changeOrder } = await offer([await job.priced()]);
  const consent = { consent: true, consentId: letter.document.consent.id };
  const answer = await job.decide(open, letter, { kind: 'declined', ...consent });
  expect([answer.status, answer.body.errors]).toMatchObject([422, [{ pointer: '/consent' }]]);
  expect(await decisionOf(changeOrder.id)).toBeNull();
});

test('an approval without a consent is sent back', async () => {
  const { open, letter } = await offer([await job.priced()]);
  const answer = await job.decide(open, letter, { consent: undefined });
  expect([answer.status, answer.body.errors]).toEqual([422, [{ pointer: '/consent', detail: 'must be ticked' }]]);
});

describe.each([
  ['has to be made safe', [unsafe], ['no es seguro']],
  ['an engineer decides about', [engineerDecides], ['ningún ingeniero']],
  [
    'has to be made safe, beside one an engineer decides about,',
    [unsafe, engineerDecides],
    ['no es seguro', 'ingeniero'],
  ],
])('a refusal of what %s', (_what, checks, said) => {
  test('is taken with its acknowledgement, whose words stay in the decision and its event', async () => {
    const { open, letter, changeOrder } = await offer(await Promise.all(checks.map(priced)));
    const unticked = await job.decide(open, letter, { kind: 'declined', acknowledged: false });
    expect(unticked.body.errors).toEqual([{ pointer: '/acknowledged', detail: 'must be ticked' }]);
    expect((await job.decide(open, letter, { kind: 'declined', acknowledged: true })).status).toBe(200);
    const decision = await decisionOf(changeOrder.id);
    for (const words of said) expect(decision?.acknowledged).toContain(words);
    const event = await api.platform.database.inCompany(job.owner.companyId, (tx) =>
      tx.event.findFirstOrThrow({
        orderBy: { seq: 'desc' },
        where: { projectId: job.project.id, type: 'change-order.decided' },
      }),
    );
    const { data } = JSON.parse(event.body);
    expect(data).toMatchObject({ kind: 'declined', acknowledged: decision?.acknowledged });
    expect(data).not.toHaveProperty('consentId');
    await expectRecordHolds();
  });
});

async function expectRecordHolds(): Promise<void> {
  const { body } = await api.http(job.owner).get(`${v1}/projects/${job.project.id}/record/verify`).expect(200);
  expect(body).toMatchObject({ ok: true, faults: [] });
}
