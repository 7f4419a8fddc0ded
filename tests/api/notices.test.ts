import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Finding, Notice, NoticeClock, NoticeDraft, Todo } from '@underlath/contract';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { startTestApi, type TestApi } from '../support/api.ts';
import { fixture, type Site, someId, startSite, uncutPlate, v1 } from '../support/site.ts';

let api: TestApi;
let site: Site;

beforeAll(async () => {
  api = await startTestApi();
});
afterAll(() => api.close());

const dayMs = 86_400_000;
/** Noon in the middle of the country, so that no zone of a state puts it on another day. */
const noon = (daysAgo: number) => `${dayAgo(daysAgo)}T18:00:00Z`;
const dayAgo = (days: number) => new Date(Date.now() - days * dayMs).toISOString().slice(0, 10);

/** Days between two dates, so that a test at any hour of the day may compare with today at the site. */
const between = (from: string, to: string) => Math.round((Date.parse(to) - Date.parse(from)) / dayMs);

async function fresh(terms?: { noticeDays: number | null; noticeMethods?: string[]; noticeDayKind?: string }) {
  site = await startSite(api);
  await api.http(site.owner).patch(`${v1}/projects/${site.project.id}`).set('if-match', '"1"').send({
    clientEmail: 'dana@okafor.example',
    clientLocale: 'es',
  });
  if (terms) {
    const { companyId } = site.owner;
    await api.platform.database.inCompany(companyId, (tx) =>
      tx.contractTerms.create({ data: { companyId, projectId: site.project.id, ...terms, changedAt: new Date() } }),
    );
  }
}

type Told = { clock: NoticeClock; sent: Notice[]; draft: NoticeDraft };
const read = async ({ id }: Pick<Finding, 'id'>, person = site.owner): Promise<Told> =>
  (await api.http(person).get(`${v1}/findings/${id}/notice`).expect(200)).body;
const send = ({ id }: Pick<Finding, 'id'>, body: object, person = site.owner) =>
  api.http(person).post(`${v1}/findings/${id}/notices`).send(body);
const noted = { how: 'noted', method: 'letter', sentOn: dayAgo(1), to: 'Dana Okafor', text: 'Tracking number 0417' };
const todo = async (): Promise<Todo[]> =>
  (await api.http(site.owner).get(`${v1}/projects/${site.project.id}/overview`).expect(200)).body.todo;

test('the terms of the contract set the last day, counted from the day it was first seen', async () => {
  await fresh({ noticeDays: 14 });
  const finding = await site.finding({ seenAt: noon(3) });
  const { clock, sent } = await read(finding, site.crew);
  expect(clock).toMatchObject({
    asked: true,
    firstSeenOn: dayAgo(3),
    state: 'open',
    sentOn: null,
    terms: { days: 14, dayKind: 'calendar', methods: [] },
  });
  expect(between(clock.firstSeenOn, clock.dueOn ?? '')).toBe(14);
  expect(clock.daysLeft).toBe(between(clock.today, clock.dueOn ?? ''));
  expect(sent).toEqual([]);
});

test('a project without terms is held to promptly, with any method', async () => {
  await fresh();
  const finding = await site.finding({ seenAt: noon(40) });
  const { clock } = await read(finding);
  expect(clock).toMatchObject({ dueOn: null, daysLeft: null, state: 'open', terms: { days: null, methods: [] } });
  expect(clock.cautions[0]?.en).toContain('at once');
  await send(finding, noted).expect(201);
  expect((await read(finding)).clock).toMatchObject({ state: 'sent', sentOn: noted.sentOn });
});

test('the notice is ready in both languages, says what, where and when, and names no price', async () => {
  await fresh({ noticeDays: 14 });
  const { draft } = await read(await site.finding({ seenAt: '2026-03-03T18:05:00Z' }));
  expect(draft).toMatchObject({ to: 'dana@okafor.example', locale: 'es' });
  for (const { text } of Object.values(draft.letters)) {
    expect(text).not.toContain('$');
    expect(text).toContain('12 Alder Street');
    expect(text).toContain('North wall');
    // No photo tells the zone, so no hour is claimed.
    expect(text).not.toContain(':05');
  }
  expect(draft.letters.en.text).toMatch(/March 3, 2026/);
  expect(draft.letters.en.text).toContain('2" of a 3 1/2" wide board');
  expect(draft.letters.en.text).toContain('undisturbed as far as that is safe');
  expect(draft.letters.en.text).toContain('Your contract may have its own rules for notices; they hold.');
  expect(draft.letters.es.text).toMatch(/3 de marzo de 2026/);
  expect(draft.letters.es.text).toContain('sin mover, hasta donde sea seguro');
});

test('the hour is that of the phone at the site, and danger is said', async () => {
  await fresh();
  const unsafe = { context: { role: 'gravity', memberKind: 'beam', occupiedBelow: true, shored: false } };
  const finding = await site.finding({ seenAt: '2026-03-04T01:05:00Z', ...unsafe });
  await site.upload(fixture('sideways-with-gps.jpg'), { findingId: finding.id });
  const { draft, clock } = await read(finding);
  expect(clock).toMatchObject({ offsetFrom: 'photo', firstSeenOn: '2026-03-03' });
  const hour = 25 + Number(clock.utcOffset.slice(0, 3));
  expect(draft.letters.en.text).toContain(`March 3, 2026, ${hour}:05`);
  expect(draft.letters.en.text.includes('keep everyone away')).toBe(finding.severity === 'make-safe');
});

test('mailed: the words go out as they were typed, the clock stops, the record keeps the hash', async () => {
  await fresh({ noticeDays: 14, noticeMethods: ['e-mail'] });
  const finding = await site.finding({ seenAt: noon(0) });
  const words = 'Hello Dana. We found a cut plate. Nothing is agreed by this.';
  const body = { how: 'mail', to: 'dana@okafor.example', locale: 'en', text: words };
  const notice = (await send(finding, body, site.estimator).expect(201)).body as Notice;
  expect(notice).toMatchObject({ method: 'e-mail', sentTo: 'dana@okafor.example', text: words });
  expect(notice.enteredBy.name).toBe('Ed Sorrel');
  await expect.poll(async () => (await read(finding)).sent[0]?.mail, { timeout: 20_000 }).toBe('filed');
  const { clock } = await read(finding);
  expect(clock).toMatchObject({ state: 'sent', sentOn: clock.today });
  const letters = readdirSync(join(api.dataDir, 'mail')).map((name) =>
    readFileSync(join(api.dataDir, 'mail', name), 'utf8'),
  );
  expect(letters.filter((letter) => letter.includes('We found a cut plate'))).toHaveLength(1);
  const record = await api.http(site.owner).get(`${v1}/projects/${site.project.id}/record?limit=2`).expect(200);
  expect(record.body.items).toMatchObject([
    { type: 'mail.filed', subjectId: notice.id, data: { kind: 'notice', to: 'dana@okafor.example' } },
    {
      type: 'notice.mailed',
      subjectId: notice.id,
      data: { number: finding.number, method: 'e-mail', sentTo: 'dana@okafor.example' },
    },
  ]);
  expect(record.body.items[1].data.textSha256).toMatch(/^[0-9a-f]{64}$/);
});

test('a mail that could not go out stops no clock, and is told', async () => {
  await fresh({ noticeDays: 14 });
  const finding = await site.finding({ seenAt: noon(20) });
  const mail = { how: 'mail', to: 'dana@okafor.example', locale: 'en', text: 'Heads-up' };
  const { id } = (await send(finding, mail).expect(201)).body as Notice;
  await expect.poll(async () => (await read(finding)).sent[0]?.mail, { timeout: 20_000 }).toBe('filed');
  const { companyId } = site.owner;
  await api.platform.database.inCompany(companyId, async (tx) => {
    const { mailId } = await tx.notice.findUniqueOrThrow({ where: { companyId_id: { companyId, id } } });
    await tx.mail.updateMany({ where: { companyId, id: mailId ?? '' }, data: { state: 'refused' } });
  });
  const { clock, sent } = await read(finding);
  expect(clock).toMatchObject({ state: 'overdue', sentOn: null });
  expect(clock.cautions[0]?.en).toContain('did not go out');
  expect(sent[0]?.mail).toBe('refused');
});

test('one by a method that the contract does not name leaves the clock running', async () => {
  await fresh({ noticeDays: 14, noticeMethods: ['certified-mail'] });
  const finding = await site.finding({ seenAt: noon(20) });
  await send(finding, { ...noted, method: 'in-person', sentOn: dayAgo(19) }).expect(201);
  const { clock } = await read(finding);
  expect(clock).toMatchObject({ state: 'overdue', sentOn: null });
  expect(clock.cautions[0]?.en).toContain('a method the contract does not name');
  await send(finding, { ...noted, method: 'certified-mail', sentOn: dayAgo(18) }).expect(201);
  expect((await read(finding)).clock).toMatchObject({ state: 'sent', sentOn: dayAgo(18) });
  const late = await site.finding({ seenAt: noon(20) });
  await send(late, { ...noted, method: 'certified-mail', sentOn: dayAgo(1) }).expect(201);
  expect((await read(late)).clock).toMatchObject({ state: 'sent-late', sentOn: dayAgo(1) });
});

test('what to do names a notice with its last day, an overdue one before everything but danger', async () => {
  await fresh({ noticeDays: 14 });
  const due = await site.finding({ seenAt: noon(2), title: 'Due' });
  const overdue = await site.finding({ seenAt: noon(20), title: 'Overdue' });
  const told = await site.finding({ seenAt: noon(2), title: 'Told' });
  const sound = await site.finding({ seenAt: noon(20), title: 'Sound', inputs: uncutPlate });
  await send(told, noted).expect(201);
  const items = (await todo()).filter(({ kind }) => kind.startsWith('notice'));
  expect(items.map(({ kind, findingId }) => [kind, findingId])).toEqual([
    ['notice-overdue', overdue.id],
    ['notice', due.id],
  ]);
  expect(between(dayAgo(20), items[0]?.dueOn ?? '')).toBe(14);
  expect((await read(sound)).clock.asked).toBe(false);
  expect((await todo())[0]?.kind).toBe('notice-overdue');
});

test('photos of work at the place before the notice are told as a caution', async () => {
  await fresh({ noticeDays: 14 });
  const finding = await site.finding({ seenAt: noon(1) });
  const { companyId } = site.owner;
  await api.platform.database.inCompany(companyId, async (tx) => {
    const photo = { companyId, id: someId(), projectId: site.project.id, stage: 'during' as const };
    const file = {
      sha256: '1'.repeat(64),
      byteCount: 1,
      mediaType: 'image/png',
      widthPx: 1,
      heightPx: 1,
      fileKey: 'x',
    };
    await tx.photo.create({ data: { ...photo, ...file, uploadedById: site.owner.memberId } });
    await tx.findingPhoto.create({ data: { companyId, findingId: finding.id, photoId: photo.id } });
  });
  expect((await read(finding)).clock.cautions.map(({ en }) => en)[0]).toContain('disturbed before the notice');
});

test('the same id sends once; with other words it is refused; no notice is changed afterwards', async () => {
  await fresh();
  const finding = await site.finding();
  const id = someId();
  const first = await send(finding, { ...noted, id }).expect(201);
  expect((await send(finding, { ...noted, id }).expect(201)).body).toEqual(first.body);
  await send(finding, { ...noted, id, text: 'Another' }).expect(409);
  expect((await read(finding)).sent).toHaveLength(1);
  const { companyId } = site.owner;
  await expect(
    api.platform.database.ownerPool.query(`update notice set text = 'no' where company_id = '${companyId}'`),
  ).rejects.toThrow();
});

test('a day to come, an empty notice, a withdrawn finding and the crew are refused', async () => {
  await fresh();
  const finding = await site.finding();
  const early = await send(finding, { ...noted, sentOn: dayAgo(-2) }).expect(422);
  expect(early.body.errors).toMatchObject([{ pointer: '/sentOn' }]);
  await send(finding, { ...noted, text: ' ' }).expect(422);
  await send(finding, { how: 'mail', to: 'nobody', locale: 'en', text: 'x' }).expect(422);
  await send(finding, noted, site.crew).expect(403);
  await send({ id: someId() }, noted).expect(404);
  await api
    .http(site.owner)
    .post(`${v1}/findings/${finding.id}/state`)
    .set('if-match', `"${finding.version}"`)
    .send({ state: 'withdrawn', reason: 'Wrong wall' })
    .expect(200);
  expect((await send(finding, noted).expect(409)).body.detail).toContain('withdrawn');
  expect((await read(finding)).clock.asked).toBe(false);
});
