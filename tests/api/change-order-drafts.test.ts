import type { ChangeOrder, Estimate, Finding, FindingRow } from '@underlath/contract';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { newId } from '../../apps/api/src/platform/ids.ts';
import { startTestApi, type TestApi } from '../support/api.ts';
import { type Job, startJob } from '../support/offers.ts';
import { v1 } from '../support/site.ts';

let api: TestApi;
let job: Job;

beforeAll(async () => {
  api = await startTestApi();
  job = await startJob(api);
});
afterAll(() => api.close());

type Seen = Pick<ChangeOrder, 'id' | 'version'>;

const read = async <Body>(path: string) => (await api.http(job.owner).get(`${v1}${path}`).expect(200)).body as Body;
const edit = async ({ id, version }: Seen, body: object) =>
  (await api.http(job.owner).patch(`${v1}/change-orders/${id}`).set('if-match', `"${version}"`).send(body).expect(200))
    .body as ChangeOrder;
const setAside = ({ id, version }: Seen) =>
  api.http(job.owner).delete(`${v1}/change-orders/${id}`).set('if-match', `"${version}"`);
const sendRefused = async ({ id, version }: Seen) =>
  (
    await api
      .http(job.owner)
      .post(`${v1}/change-orders/${id}/send`)
      .set('if-match', `"${version}"`)
      .send({})
      .expect(409)
  ).body as { detail: string; errors?: { pointer: string; detail: string }[] };
const stateOf = async (id: string) => (await read<Finding>(`/findings/${id}`)).state;

async function several(count: number) {
  const findings: Finding[] = [];
  for (let at = 0; at < count; at += 1) findings.push(await job.priced({ title: `Cut plate ${'ABCDE'[at]}` }));
  const ids = findings.map(({ id }) => id);
  return { findings, ids, order: await job.draft(ids) };
}

describe('a draft whose findings change', () => {
  test('has words and days of the findings left, where nobody typed them', async () => {
    const { order, ids } = await several(3);
    const fewer = await edit(order, { findingIds: ids.slice(0, 1) });
    const alone = await job.draft([(await job.priced({ title: 'Cut plate A' })).id]);
    expect(fewer.typed).toEqual([]);
    expect(fewer.wording).toEqual(alone.wording);
    expect(fewer.days).toBe(alone.days);
    expect(fewer.headline).toBe(alone.headline);
  });

  test('keeps what was typed and gives back what is no longer typed', async () => {
    const { order, ids } = await several(2);
    const why = { en: 'It holds the roof.', es: 'Sostiene el techo.' };
    const typed = await edit(order, { wording: { why }, days: 9 });
    expect(typed.typed.toSorted()).toEqual(['days', 'why']);
    expect(typed.wording.note.en).toBe('');
    const fewer = await edit(typed, { findingIds: ids.slice(0, 1) });
    expect(fewer.wording.why).toEqual(why);
    expect(fewer.days).toBe(9);
    const given = await edit(fewer, { wording: { why: null }, days: null });
    expect(given.typed).toEqual([]);
    expect(given.wording.why).not.toEqual(why);
    expect(given.wording.note.en).toContain('hours in all');
  });

  test('words that come back as they were shown count as nobody’s', async () => {
    const { order, ids } = await several(2);
    const same = await edit(order, { wording: order.wording, days: order.days, findingIds: ids.slice(0, 1) });
    expect(same.typed).toEqual([]);
    expect(same.headline).not.toContain('2 hidden');
  });

  test('follows a price that is changed after it was made', async () => {
    const { order, findings } = await several(1);
    const [finding] = findings;
    const now = await read<Finding>(`/findings/${finding?.id}`);
    const { choices } = await read<Estimate>(`/findings/${finding?.id}/estimate`);
    const overrides = [{ operation: 'protect-place', quantity: 40, why: 'A long way through the house' }];
    await api
      .http(job.owner)
      .put(`${v1}/findings/${finding?.id}/estimate`)
      .set('if-match', `"${now.version}"`)
      .send({ choices, overrides })
      .expect(200);
    const again = await read<ChangeOrder>(`/change-orders/${order.id}`);
    expect(again.days).toBeGreaterThan(order.days);
    expect(again.wording.note.en).not.toBe(order.wording.note.en);
    const rows = await read<{ items: ChangeOrder[] }>(`/projects/${job.project.id}/change-orders`);
    expect(rows.items.find(({ id }) => id === order.id)?.days).toBe(again.days);
  });

  test('is not sent while typed words speak of a finding taken out, until each was changed or said to stand', async () => {
    const { order, ids, findings } = await several(3);
    const [, second] = findings;
    const words = (en: string) => ({ en, es: en });
    const typed = await edit(order, {
      wording: {
        headline: words('3 hidden conditions in your garage'),
        found: words(`See finding ${second?.number}.`),
        why: words('It holds the roof.'),
      },
      days: 4,
    });
    const fewer = await edit(typed, { findingIds: ids.filter((id) => id !== second?.id) });
    expect(fewer.marks.map(({ field }) => field).toSorted()).toEqual(['days', 'found', 'headline']);
    expect(fewer.marks.find(({ field }) => field === 'found')?.words).toContain(`finding ${second?.number}`);
    const refused = await sendRefused(fewer);
    expect(refused.errors?.map(({ pointer }) => pointer).toSorted()).toEqual([
      '/days',
      '/wording/found',
      '/wording/headline',
    ]);
    const changed = await edit(fewer, { wording: { headline: words('Your garage'), found: null } });
    expect(changed.marks.map(({ field }) => field)).toEqual(['days']);
    const looked = await edit(changed, { lookedAt: ['days'] });
    expect(looked.marks).toEqual([]);
    const { changeOrder } = await job.send(looked);
    expect(changeOrder.draft).toMatchObject({ days: 4, wording: { headline: { en: 'Your garage' } } });
  });

  test('marks fall when the finding comes back', async () => {
    const { order, ids, findings } = await several(2);
    const note = { en: `We start with finding ${findings[1]?.number}.`, es: 'x' };
    const typed = await edit(order, { wording: { note } });
    const fewer = await edit(typed, { findingIds: ids.slice(0, 1) });
    expect(fewer.marks).toHaveLength(1);
    expect((await edit(fewer, { findingIds: ids })).marks).toEqual([]);
  });
});

describe('a change order that should not be', () => {
  test('is set aside: its findings are free, its number stays used, and the record says so', async () => {
    const { order, ids } = await several(2);
    const gone = (await setAside(order).expect(200)).body as ChangeOrder;
    expect(gone.state).toBe('set-aside');
    const next = await job.draft(ids);
    expect(next.number).toBeGreaterThan(order.number);
    const { items } = await read<{ items: { type: string; data: object }[] }>(
      `/projects/${job.project.id}/record?limit=50`,
    );
    expect(items.find(({ type }) => type === 'change-order.set-aside')?.data).toMatchObject({ number: order.number });
    await setAside(gone).expect(200);
  });

  test('once sent, ends its link and keeps its version', async () => {
    const { order, ids } = await several(1);
    const { changeOrder, link } = await job.send(order);
    const gone = (await setAside(changeOrder).expect(200)).body as ChangeOrder;
    expect(gone.versions).toMatchObject([{ state: 'set-aside', linkState: 'revoked' }]);
    expect(await stateOf(ids[0] ?? '')).toBe('priced');
    const token = new URL(link).hash.slice(1);
    await api.http().post(`${v1}/client/session`).send({ token }).expect(410);
    expect((await sendRefused(gone)).detail).toContain('set aside');
    await api
      .http(job.owner)
      .patch(`${v1}/change-orders/${gone.id}`)
      .set('if-match', `"${gone.version}"`)
      .send({ days: 1 })
      .expect(409);
  });

  test('is not set aside on an older look, nor once it was answered', async () => {
    const { order } = await several(1);
    const changed = await edit(order, { days: 3 });
    await setAside(order).expect(412);
    const sent = await job.send(changed);
    const open = await job.open(sent.link);
    const letter = (await api.http().get(open.path).set('cookie', open.cookie).expect(200)).body;
    await job.decide(open, letter);
    const answered = await read<ChangeOrder>(`/change-orders/${order.id}`);
    await setAside(answered).expect(409);
  });
});

test('a declined finding is offered again at its price', async () => {
  const { order, ids } = await several(1);
  const sent = await job.send(order);
  const open = await job.open(sent.link);
  const letter = (await api.http().get(open.path).set('cookie', open.cookie).expect(200)).body;
  await job.decide(open, letter, { kind: 'declined' });
  expect(await stateOf(ids[0] ?? '')).toBe('declined');
  const again = await job.draft(ids);
  expect(again.totalCents).toBe(order.totalCents);
  await job.send(again);
  expect(await stateOf(ids[0] ?? '')).toBe('offered');
});

describe('a finding on which an engineer decides', () => {
  const inputs = { widthIn: 3.5, cutIn: 2, code: 'irc', bearingOrBraced: true, inShearWall: true };

  async function grave() {
    const note = await job.note({ title: 'Cut shear wall plate' });
    await api
      .http(job.owner)
      .post(`${v1}/findings/${note.id}/judgments`)
      .set('if-match', `"${note.version}"`)
      .send({ inputs })
      .expect(201);
    const finding = await read<FindingRow>(`/findings/${note.id}`);
    expect(finding.severity).toBe('engineer');
    return finding;
  }
  const price = async (finding: { id: string; version: number }, choices: object[]) =>
    api
      .http(job.owner)
      .put(`${v1}/findings/${finding.id}/estimate`)
      .set('if-match', `"${finding.version}"`)
      .send({ choices })
      .expect(200);

  test('has the engineer in its suggested price, and in every choice that holds it, once', async () => {
    const ids: string[] = [];
    for (let at = 0; at < 2; at += 1) {
      const finding = await grave();
      const { choices } = await read<Estimate>(`/findings/${finding.id}/estimate`);
      expect(choices.map(({ repairId }) => repairId)).toContain('engineer-letter');
      await price(finding, choices);
      ids.push(finding.id);
    }
    const plain = await job.priced();
    const { changeOrder } = await job.send(await job.draft([...ids, plain.id]), { byPart: true });
    const visits = (choice: Pick<ChangeOrder['draft'], 'price'>) =>
      choice.price.lines.filter(({ operation }) => operation === 'engineer-letter').map(({ quantity }) => quantity);
    expect(visits(changeOrder.draft)).toEqual([1]);
    const parts = changeOrder.draft.parts ?? [];
    for (const part of parts) {
      const holds = part.findingIds.some((id) => ids.includes(id));
      expect(visits(part)).toEqual(holds ? [1] : []);
    }
    expect(parts).toHaveLength(6);
  });

  test('is not sent without an engineer in its price', async () => {
    const finding = await grave();
    const { choices } = await read<Estimate>(`/findings/${finding.id}/estimate`);
    await price(
      finding,
      choices.filter(({ repairId }) => repairId !== 'engineer-letter'),
    );
    const refused = await sendRefused(await job.draft([finding.id]));
    expect(refused.detail).toContain('Cut shear wall plate');
    expect(refused.detail).toContain('an engineer decides');
  });
});

describe('a letter to a client who reads Spanish', () => {
  const send = ({ id, version }: Seen, body: object = {}) =>
    api.http(job.owner).post(`${v1}/change-orders/${id}/send`).set('if-match', `"${version}"`).send(body);

  test('is not sent while names have no Spanish; the check’s own words are offered for a title', async () => {
    const { order, ids } = await several(1);
    expect(order.missingSpanish.map(({ kind, english }) => [kind, english])).toEqual([
      ['titles', 'Cut plate A'],
      ['places', 'North wall'],
    ]);
    const [title, place] = order.missingSpanish;
    expect(title?.suggested).toMatch(/solera/i);
    const refused = await send(order).expect(422);
    expect(refused.body.errors.map(({ pointer }: { pointer: string }) => pointer)).toEqual([
      `/spanish/titles/${ids[0]}`,
      `/spanish/places/${place?.id}`,
    ]);
    const spanish = { titles: { [ids[0] ?? '']: 'Solera cortada' }, places: { [place?.id ?? '']: 'Muro norte' } };
    const named = await edit(order, { spanish });
    expect(named.missingSpanish).toEqual([]);
    expect(named.wording.headline).toEqual({ en: 'Cut plate A: North wall', es: 'Solera cortada: Muro norte' });
    const { body } = await send(named).expect(200);
    expect(body.changeOrder.draft.items[0]).toMatchObject({
      titleEs: 'Solera cortada',
      place: { nameEs: 'Muro norte' },
    });
  });

  test('asks for the Spanish of payments and of lines typed by hand too, which is typed where they are', async () => {
    const own = await startJob(api);
    const terms = `${v1}/projects/${own.project.id}/contract/terms`;
    const payment = { id: newId(), name: 'Rough-in passed', cents: 1_000_000 };
    const before = await api.http(own.owner).get(terms).expect(200);
    const { version: _version, changedAt: _changedAt, ...plain } = before.body;
    const saveTerms = (seen: number, milestones: object[]) =>
      api
        .http(own.owner)
        .put(terms)
        .set('if-match', `"${seen}"`)
        .send({ ...plain, milestones })
        .expect(200);
    await saveTerms(0, [payment]);
    const finding = await own.priced();
    const price = async (more: object) => {
      const path = `${v1}/findings/${finding.id}`;
      const { version } = (await api.http(own.owner).get(path).expect(200)).body;
      const crane = { title: 'Crane', quantity: 1, unit: 'day', unitCents: 90_000, why: 'No room for a lift', ...more };
      const body = { choices: [], manualLines: [crane] };
      await api.http(own.owner).put(`${path}/estimate`).set('if-match', `"${version}"`).send(body).expect(200);
    };
    await price({});
    const { id } = await own.draft([finding.id]);
    const draft = async () =>
      (await api.http(own.owner).get(`${v1}/change-orders/${id}`).expect(200)).body as ChangeOrder;
    const missing = async () => (await draft()).missingSpanish.map(({ kind, english }) => `${kind}: ${english}`);
    expect(await missing()).toEqual(expect.arrayContaining(['payments: Rough-in passed', 'lines: Crane']));
    await saveTerms(1, [{ ...payment, nameEs: 'Instalación pasada' }]);
    await price({ titleEs: 'Grúa' });
    expect((await missing()).join()).not.toMatch(/payments|lines/);
    expect((await draft()).draft.contract.payments?.[0]?.name).toEqual({
      en: 'Rough-in passed',
      es: 'Instalación pasada',
    });
  });

  test('says the place beside a line of the price in Spanish, and by its finding while it has none', async () => {
    const made = await api
      .http(job.owner)
      .post(`${v1}/projects/${job.project.id}/locations`)
      .send({ kind: 'wall', name: 'South wall', widthIn: 144, heightIn: 97.125, framingSpacingIn: 16 })
      .expect(201);
    const there = await job.priced({ locationId: made.body.id });
    const order = await job.draft([(await job.priced()).id, there.id]);
    const spanishOf = ({ draft }: ChangeOrder) => draft.price.lines.map(({ title }) => title.es).join('\n');
    expect(spanishOf(order)).toContain(`(hallazgo ${there.number})`);
    const named = await edit(order, { spanish: { places: { [made.body.id]: 'Muro sur' } } });
    expect(spanishOf(named)).toContain('(Muro sur)');
    expect(spanishOf(named)).not.toMatch(/South wall|North wall/);
  });

  test('sent with English on purpose has no English in its Spanish sentences', async () => {
    const { order } = await several(2);
    const { body } = await send(order, { withEnglish: true, byPart: true }).expect(200);
    const { wording, sections, cautions, parts } = body.changeOrder.draft as ChangeOrder['draft'];
    const spanish = [
      ...Object.values(wording).map(({ es }) => es),
      ...(sections ?? []).flatMap(({ lines }) => lines.map(({ words }) => words.es)),
      ...cautions.map(({ es }) => es),
      ...(parts ?? []).flatMap((part) => part.cautions.map(({ es }) => es)),
    ].join('\n');
    expect(spanish).not.toMatch(/Cut plate|North wall/);
  });
});
