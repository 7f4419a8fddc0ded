import type { ClientLetter, Contract, LedgerEntry, NoticeClock, Project } from '@underlath/contract';
import { afterAll, afterEach, beforeAll, describe, expect, test, vi } from 'vitest';
import { formatDate } from '../../apps/dashboard/src/shared/i18n/format.ts';
import { startTestApi, type TestApi } from '../support/api.ts';
import { type Job, startJob } from '../support/offers.ts';
import { readPdf } from '../support/pdf-text.ts';
import { v1 } from '../support/site.ts';

let api: TestApi;

beforeAll(async () => {
  api = await startTestApi();
});
afterEach(() => vi.restoreAllMocks());
afterAll(() => api.close());

/** The moment that the server's own clock shows. */
const setClock = (instant: string) => vi.spyOn(api.platform.clock, 'now').mockReturnValue(new Date(instant));

async function change(job: Job, body: object) {
  const { version } = (await api.http(job.owner).get(`${v1}/projects/${job.project.id}`).expect(200)).body as Project;
  return api.http(job.owner).patch(`${v1}/projects/${job.project.id}`).set('if-match', `"${version}"`).send(body);
}

describe('the time zone of a project', () => {
  test('is that of its state; where a state keeps two clocks nobody has said it until it is chosen', async () => {
    const job = await startJob(api);
    expect(job.project.timeZone).toBeNull();
    expect((await change(job, { siteState: 'CA' })).body.timeZone).toBe('America/Los_Angeles');
    expect((await change(job, { siteState: 'TN' })).body.timeZone).toBeNull();
    expect((await change(job, { timeZone: 'America/New_York' })).body.timeZone).toBe('America/New_York');
    expect((await change(job, { siteState: 'FL' })).body.timeZone).toBe('America/New_York');
    expect((await change(job, { siteState: 'TX' })).body.timeZone).toBeNull();
    expect((await change(job, { siteState: null })).body.timeZone).toBeNull();
  });

  test.each([
    ['of another state', { siteState: 'CA', timeZone: 'America/New_York' }],
    ['without a state', { timeZone: 'America/New_York' }],
    ['that is none', { siteState: 'TX', timeZone: 'Mars/Olympus' }],
  ])('one %s is refused by name', async (_name, body) => {
    const job = await startJob(api);
    const refused = await change(job, body);
    expect(refused).toMatchObject({ status: 422, body: { errors: [{ pointer: '/timeZone' }] } });
  });
});

describe('a new project', () => {
  test('that says how its days are counted has it in its terms; one that does not has no terms yet', async () => {
    const job = await startJob(api);
    const {
      id: _id,
      version: _version,
      currency: _currency,
      createdAt: _made,
      updatedAt: _at,
      ...fields
    } = job.project;
    const made = await api
      .http(job.owner)
      .post(`${v1}/projects`)
      .send({ ...fields, dayKind: 'calendar' })
      .expect(201);
    const termsOf = async (id: string) =>
      (await api.http(job.owner).get(`${v1}/projects/${id}/contract/terms`).expect(200)).body;
    expect(await termsOf(made.body.id)).toMatchObject({ version: 1, dayKind: 'calendar', milestones: [] });
    expect(await termsOf(job.project.id)).toMatchObject({ version: 0, dayKind: 'working' });
  });
});

/** Everything that tells the day of an answer. */
async function answeredAt(instant: string, siteState: string | null) {
  setClock(instant);
  const job = await startJob(api);
  if (siteState) expect((await change(job, { siteState })).status).toBe(200);
  const order = await job.draft([(await job.priced()).id], { days: 1 });
  const sent = await job.send(order, { missingReason: 'Only its days are looked at here' });
  const open = await job.open(sent.link);
  const read = async <Body>(path: string) => (await api.http(job.owner).get(`${v1}${path}`).expect(200)).body as Body;
  const letter = (await api.http().get(open.path).set('cookie', open.cookie).expect(200)).body as ClientLetter;
  expect((await job.decide(open, letter, { locale: 'en' })).status).toBe(200);
  const answered = (await api.http().get(open.path).set('cookie', open.cookie).expect(200)).body as ClientLetter;
  const pdf = await api
    .http(job.owner)
    .get(`${v1}/change-orders/${sent.changeOrder.id}/versions/1/pdf?locale=en`)
    .buffer()
    .parse((res, done) => {
      const chunks: Buffer[] = [];
      res.on('data', (chunk: Buffer) => chunks.push(chunk));
      res.on('end', () => done(null, Buffer.concat(chunks)));
    })
    .expect(200);
  const mails = await api.platform.database.inCompany(job.owner.companyId, (tx) =>
    tx.mail.findMany({ where: { to: job.owner.email, text: { contains: sent.sha256 } } }),
  );
  const contract = `/projects/${job.project.id}/contract`;
  const { items } = await read<{ items: LedgerEntry[] }>(`${contract}/ledger`);
  const csv = await api.http(job.owner).get(`${v1}${contract}/ledger/csv`).expect(200);
  return {
    page: formatDate(answered.decision?.decidedAt ?? '', 'en-US', 'long-day', answered.timeZone ?? 'UTC'),
    pdf: (await readPdf(pdf.body)).text.replace(/\s+/g, ' '),
    mail: (mails[0]?.text ?? '').replace(/\s+/g, ' '),
    ledger: items.find(({ changeOrderId }) => changeOrderId === order.id)?.on,
    csv: csv.text.split('\r\n').find((line) => line.includes(order.id)),
    contract: await read<Contract>(contract),
    job,
  };
}

// A letter is made, priced, sent, answered and printed in each: seconds, and more on a busy machine.
describe('the day of a signature', { timeout: 120_000 }, () => {
  test.each([
    ['half past eleven at night on the Pacific', '2026-11-30T07:30:00Z', 'CA', '2026-11-29', '29', '11:30 PM PST'],
    ['half past midnight there', '2026-11-30T08:30:00Z', 'CA', '2026-11-30', '30', '12:30 AM PST'],
    ['the same moment in Hawaii', '2026-11-30T08:30:00Z', 'HI', '2026-11-29', '29', '10:30 PM HST'],
    ['and in New York', '2026-11-30T08:30:00Z', 'NY', '2026-11-30', '30', '3:30 AM EST'],
  ])('%s is one day on page, mail, PDF, ledger and CSV', async (_name, instant, state, day, date, time) => {
    const told = await answeredAt(instant, state);
    const words = `November ${date}, 2026`;
    expect(told.page).toBe(words);
    expect(told.pdf).toContain(`${words} at ${time}`);
    expect(told.mail).toContain(`${words} at ${time}`);
    expect(told.pdf).not.toContain('UTC');
    expect(told.ledger).toBe(day);
    expect(told.csv?.startsWith(`${day},`)).toBe(true);
  });

  test('where the site’s clock is not known is told in UTC, and says so', async () => {
    const told = await answeredAt('2026-11-30T07:30:00Z', null);
    expect(told.page).toBe('November 30, 2026 (UTC)');
    expect(told.pdf).toContain('November 30, 2026 at 7:30 AM UTC');
    expect(told.mail).toContain('November 30, 2026 at 7:30 AM UTC');
  });
});

describe('what happens at the site', () => {
  test('is of the site’s day: at eleven at night on the Pacific tomorrow has not come', async () => {
    setClock('2026-11-30T07:00:00Z');
    const job = await startJob(api);
    await change(job, { siteState: 'CA' });
    const pay = (happenedOn: string) =>
      api
        .http(job.owner)
        .post(`${v1}/projects/${job.project.id}/contract/entries`)
        .send({ kind: 'payment', name: 'Deposit', cents: 1000, happenedOn });
    await pay('2026-11-30').expect(422);
    await pay('2026-11-29').expect(201);
    const finding = await job.note();
    const { clock } = (await api.http(job.owner).get(`${v1}/findings/${finding.id}/notice`).expect(200)).body as {
      clock: NoticeClock;
    };
    expect(clock).toMatchObject({
      today: '2026-11-29',
      timeZone: 'America/Los_Angeles',
      utcOffset: '-08:00',
      offsetFrom: 'project',
      firstSeenOn: '2026-03-03',
    });
  });
});
