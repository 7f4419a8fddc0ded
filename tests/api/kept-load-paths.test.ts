import { type StoredLoadPath, storedLoadPath } from '@underlath/contract';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { type Person, startTestApi, type TestApi } from '../support/api.ts';
import { fixture, newWall, type Site, someId, startSite, v1 } from '../support/site.ts';

let api: TestApi;
let site: Site;
/** A 5/8 in rod rusted to 1/2 in. */
let findingId: string;
let share: number;
let photoId: string;

beforeAll(async () => {
  api = await startTestApi();
  site = await startSite(api);
  const finding = await site.finding(rusted(0.5));
  findingId = finding.id;
  share = finding.judgments[0]?.answer.remaining ?? Number.NaN;
  photoId = (await site.upload(fixture('plain.png'))).body.id;
});
afterAll(() => api.close());

const rusted = (remainingIn: number) => ({
  checkId: 'decay.rod-loss',
  inputs: { diameterIn: 0.625, remainingIn, pitted: false },
});
const rod = () => ({ name: 'Rod', role: 'hold-down', state: 'findings', findingIds: [findingId] });
const panels = { name: 'Panels', role: 'panels', state: 'unseen', intendedLb: 3000 };
const wallLine = (links: object[] = [rod(), panels], more: object = {}) => ({
  name: 'North line',
  kind: 'wall-line',
  segments: [{ name: 'A', lengthFt: 8, heightFt: 8, links, ...more }],
});
const add = (body: object, locationId = site.wall.id, person: Person = site.estimator) =>
  api.http(person).post(`${v1}/locations/${locationId}/load-paths`).send(body);
const added = async (body: object = wallLine()) => {
  const answer = await add(body);
  expect(answer.status, answer.text).toBe(201);
  return answer.body as StoredLoadPath;
};
const get = async (id: string, query = '') =>
  (await api.http(site.crew).get(`${v1}/load-paths/${id}${query}`).expect(200)).body as StoredLoadPath;
const patch = (id: string, version: number, change: object) =>
  api.http(site.estimator).patch(`${v1}/load-paths/${id}`).set('if-match', `"${version}"`).send(change);

describe('a load path kept with a place', () => {
  test('takes the share left from the judgment of its finding, and the stories from the place', async () => {
    const path = await added();
    expect(storedLoadPath.strict().safeParse(path).error).toBeUndefined();
    expect(path.answer).toMatchObject({ known: false, verdict: 'fails', severity: 'engineer' });
    expect(share).toBeLessThan(1);
    expect(path.answer.segments[0]?.links[0]?.remaining).toBe(share);
    expect(path.answer.atMostLb).toBeCloseTo(3000 * share, 9);
    expect(path.answer.openNext).toMatchObject([{ link: 'Panels' }]);
    const { items } = (await api.http(site.crew).get(`${v1}/locations/${site.wall.id}/load-paths`).expect(200)).body;
    expect(items).toContainEqual(path);
  });

  test('measuring again moves it, a withdrawn finding leaves its link unseen', async () => {
    const { id: other } = await site.finding(rusted(0.5));
    const path = await added(wallLine([{ ...rod(), findingIds: [other] }]));
    const again = { inputs: rusted(0.4).inputs };
    const judged = await api.http(site.crew).post(`${v1}/findings/${other}/judgments`).send(again);
    expect(judged.status, judged.text).toBeLessThan(300);
    const [link] = (await get(path.id)).answer.segments[0]?.links ?? [];
    expect(link?.remaining).toBeLessThan(share);
    const { version } = (await api.http(site.owner).get(`${v1}/findings/${other}`)).body;
    const withdrawn = { state: 'withdrawn', reason: 'Wrong wall' };
    const moved = await api
      .http(site.owner)
      .post(`${v1}/findings/${other}/state`)
      .set('if-match', `"${version}"`)
      .send(withdrawn);
    expect(moved.status, moved.text).toBe(200);
    expect((await get(path.id)).answer.segments[0]).toMatchObject({ unseen: ['Rod'], remaining: null });
  });

  test('tells what it would be worth once a finding is repaired, and keeps nothing of that', async () => {
    const path = await added();
    const repaired = await get(path.id, `?repaired=${findingId}`);
    expect(repaired).toMatchObject({ repaired: [findingId], answer: { atMostLb: 3000, verdict: 'undetermined' } });
    expect(await get(path.id)).toMatchObject({ repaired: [], answer: path.answer });
    const strange = await api.http(site.crew).get(`${v1}/load-paths/${path.id}?repaired=${someId()}`);
    expect([strange.status, strange.body.errors[0].pointer]).toEqual([422, '/repaired']);
  });

  test('changes by the version seen, and tells the record', async () => {
    const path = await added();
    const sound = [{ ...panels, state: 'sound', photoId }];
    const segments = [{ name: 'A', links: sound }];
    const changed = await patch(path.id, 1, { segments, demandLb: 2000 });
    expect(changed.body).toMatchObject({ version: 2, answer: { known: true, verdict: 'meets', ratio: 2000 / 3000 } });
    expect(changed.headers.etag).toBe('"2"');
    expect((await patch(path.id, 1, { name: 'Other' })).status).toBe(412);
    expect((await api.http(site.estimator).patch(`${v1}/load-paths/${path.id}`).send({ name: 'x' })).status).toBe(428);
    const record = await api.http(site.owner).get(`${v1}/projects/${site.project.id}/record?limit=1`);
    expect(record.body.items[0]).toMatchObject({ type: 'load-path.changed', subjectId: path.id });
  });

  test('twice under one id and one content is one; other content is refused', async () => {
    const id = someId();
    const first = await add({ id, ...wallLine() });
    expect((await add({ id, ...wallLine() })).body).toEqual(first.body);
    expect((await add({ id, ...wallLine(), name: 'South line' })).status).toBe(409);
  });

  test('keeps its place from being removed until it is gone', async () => {
    const wall = (
      await api
        .http(site.owner)
        .post(`${v1}/projects/${site.project.id}/locations`)
        .send({ ...newWall, name: 'South' })
    ).body;
    const path = (await add(wallLine([panels]), wall.id)).body;
    const remove = () => api.http(site.owner).delete(`${v1}/locations/${wall.id}`).set('if-match', '"1"');
    const refused = await remove();
    expect([refused.status, refused.body.detail]).toEqual([409, expect.stringContaining('1 load paths')]);
    await api.http(site.owner).delete(`${v1}/load-paths/${path.id}`).set('if-match', '"1"').expect(204);
    expect((await remove()).status).toBe(204);
  });

  test.each<[string, string, () => object]>([
    ['a sound link without its photo', '/segments/0/links/0/photoId', () => wallLine([{ ...panels, state: 'sound' }])],
    ['a photo of nowhere', '/segments/0/links/0/photoId', () => wallLine([{ ...panels, photoId: someId() }])],
    ['findings without one', '/segments/0/links/0/findingIds', () => wallLine([{ ...panels, state: 'findings' }])],
    ['an unseen link with findings', '/segments/0/links/0/state', () => wallLine([{ ...rod(), state: 'unseen' }])],
    [
      'a finding of another company',
      '/segments/0/links/0/findingIds/0',
      () => wallLine([{ ...rod(), findingIds: [someId()] }]),
    ],
    [
      'a link outside the wall',
      '/segments/0/links/0/at',
      () => wallLine([{ ...panels, at: { xIn: 100, yIn: 0, widthIn: 48, heightIn: 96 } }]),
    ],
    [
      'two links of a kind in one spot',
      '/segments/0/links/1/at',
      () => {
        const at = { xIn: 0, yIn: 0, widthIn: 48, heightIn: 96 };
        return wallLine([
          { ...panels, at },
          { ...panels, name: 'Again', at },
        ]);
      },
    ],
    ['a segment past the end of the wall', '/segments/0/fromIn', () => wallLine([panels], { fromIn: 60 })],
    [
      'segments that lie over each other',
      '/segments/1/fromIn',
      () => {
        const segment = { lengthFt: 4, links: [panels] };
        return {
          name: 'North',
          kind: 'wall-line',
          segments: [
            { ...segment, name: 'A', fromIn: 0 },
            { ...segment, name: 'B', fromIn: 40 },
          ],
        };
      },
    ],
    [
      'more opened than there are',
      '/segments/0/links/0/parts/opened',
      () => wallLine([{ ...panels, parts: { total: 2, opened: 3, bad: 0 } }]),
    ],
    ['a role of another kind of line', '/segments/0/links/0/role', () => wallLine([{ ...panels, role: 'hanger' }])],
    ['a negative load', '/segments/0/links/0/intendedLb', () => wallLine([{ ...panels, intendedLb: -1 }])],
  ])('refuses %s and says where', async (_what, pointer, body) => {
    const { status, body: problem } = await add(body());
    expect([status, problem.errors?.[0]?.pointer]).toEqual([422, pointer]);
  });
});

test('of 24 hangers with one bad among three opened, all are to be opened', async () => {
  const hangers = { name: 'Hangers', role: 'hanger', state: 'unseen', parts: { total: 24, opened: 3, bad: 1 } };
  const path = await added({ name: 'Joists', kind: 'gravity-line', segments: [{ name: 'Joists', links: [hangers] }] });
  expect(path.sampling).toMatchObject([{ name: 'Hangers', total: 24, opened: 3, bad: 1, openMore: 21 }]);
  expect(path.sampling[0]?.words).toContain('open them all');
});

test('a strength that a check worked out is offered for its link', async () => {
  const inputs = { diameterIn: 0.5, species: 'hem-fir', direction: 'parallel', sillThicknessIn: 1.5, count: 4 };
  const bolts = await site.finding({ checkId: 'anchor.sill-bolt-shear', inputs });
  const capacity = bolts.judgments[0]?.answer.values.capacityLb?.value;
  expect(capacity).toBeGreaterThan(0);
  const { items } = (await api.http(site.estimator).get(`${v1}/locations/${site.wall.id}/capacities`).expect(200)).body;
  expect(items).toMatchObject([{ findingId: bolts.id, role: 'sill-bolts', intendedLb: capacity }]);
});
