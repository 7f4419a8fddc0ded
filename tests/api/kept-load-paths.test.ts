import { type LineAboveChoice, lineAboveChoice, type StoredLoadPath, storedLoadPath } from '@underlath/contract';
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
/** Every usual link of a wall, seen sound by the photo. */
const soundWall = (holdDown: object = {}) => {
  const seen = (name: string, role: string, more: object = {}) => ({ name, role, state: 'sound', photoId, ...more });
  return [
    seen('Plate', 'top-plate'),
    seen('Panels', 'panels', { intendedLb: 3000 }),
    seen('Posts', 'posts'),
    seen('Tie', 'hold-down', holdDown),
    seen('Bolts', 'sill-bolts'),
    seen('Footing', 'footing'),
  ];
};
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

describe('a wall line that another stands on', () => {
  const tie = { tensionLb: 3600, leverFt: 7.5 };
  const lower = (more: object = {}) => added({ ...wallLine(soundWall(tie), { heightFt: 9 }), demandLb: 1200, ...more });
  const upperWall = async (more: object = {}) => {
    const wall = { ...newWall, name: 'North wall, upstairs', storiesAbove: 0, ...more };
    return (await api.http(site.owner).post(`${v1}/projects/${site.project.id}/locations`).send(wall).expect(201)).body;
  };
  const upper = async (more: object = {}, wall: object = {}) =>
    (await add({ ...wallLine(soundWall()), name: 'Upstairs', demandLb: 1000, ...more }, (await upperWall(wall)).id))
      .body as StoredLoadPath;
  const on = (loadPathId: string, floorDepthIn = 12) => ({ lineAbove: { loadPathId, floorDepthIn } });

  test('is at most until it is said which, and then carries its moment from floor to floor', async () => {
    const before = await lower();
    expect(before).toMatchObject({
      fromAbove: null,
      answer: { known: false, verdict: 'undetermined', atMostLb: 3000 },
    });
    expect(before.answer.segments[0]?.momentOpen).toEqual(['Tie']);
    const above = await upper();
    const after = (await patch(before.id, 1, on(above.id))).body as StoredLoadPath;
    expect(storedLoadPath.strict().safeParse(after).error).toBeUndefined();
    expect(after.fromAbove).toEqual({
      loadPathId: above.id,
      name: 'Upstairs',
      momentsFtLb: [9000],
      words: ['Upstairs: 1,000 lb x (8 ft + 1 ft of floor) = 9,000 ft-lb.'],
    });
    expect(after.answer).toMatchObject({ known: true, verdict: 'meets', governing: ['Tie'] });
    expect(after.answer.atMostLb).toBeCloseTo((3600 * 7.5 - 9000) / 9, 9);
    expect(await get(before.id)).toMatchObject({ fromAbove: after.fromAbove, lineAbove: on(above.id).lineAbove });
  });

  test('stays at most while the line above has no load, and says that it is that', async () => {
    const { fromAbove, answer } = await lower(on((await upper({ demandLb: null })).id));
    expect(fromAbove).toMatchObject({ momentsFtLb: [null], words: [expect.stringContaining('has no load yet')] });
    expect(answer).toMatchObject({ known: false, verdict: 'undetermined' });
  });

  test('has a story above it whatever its place says', async () => {
    const path = await lower({ ...on((await upper({ demandLb: null })).id), storiesAbove: 0 });
    expect(path.answer).toMatchObject({ known: false, verdict: 'undetermined' });
  });

  test('keeps the moment that its engineer typed', async () => {
    const links = soundWall({ ...tie, momentAboveFtLb: 16_000 });
    const path = await lower({ ...on((await upper()).id), ...wallLine(links, { heightFt: 9 }) });
    expect(path.answer.atMostLb).toBeCloseTo((27_000 - 16_000) / 9, 9);
  });

  test('is offered the lines whose wall is as wide and one story higher first', async () => {
    const [fits, wider] = [await upper(), await upper({ name: 'Wider' }, { name: 'East', widthIn: 200 })];
    const answer = await api.http(site.estimator).get(`${v1}/locations/${site.wall.id}/lines-above`).expect(200);
    const items: LineAboveChoice[] = answer.body.items;
    for (const item of items) expect(lineAboveChoice.strict().safeParse(item).error).toBeUndefined();
    const order = items.map(({ loadPathId }) => loadPathId);
    expect(items.find(({ loadPathId }) => loadPathId === fits.id)?.fits).toBe(true);
    expect(items.find(({ loadPathId }) => loadPathId === wider.id)?.fits).toBe(false);
    expect(order.indexOf(fits.id)).toBeLessThan(order.indexOf(wider.id));
    expect(items.map(({ place }) => place)).not.toContain(site.wall.name);
  });

  test('is free again when the line above is removed, and the record says so', async () => {
    const above = await upper();
    const path = await lower(on(above.id));
    await api.http(site.estimator).delete(`${v1}/load-paths/${above.id}`).set('if-match', '"1"').expect(204);
    expect(await get(path.id)).toMatchObject({
      version: 2,
      lineAbove: null,
      fromAbove: null,
      answer: { known: false },
    });
    const record = await api.http(site.owner).get(`${v1}/projects/${site.project.id}/record?limit=2`);
    expect(record.body.items.map(({ type }: { type: string }) => type)).toEqual([
      'load-path.removed',
      'load-path.changed',
    ]);
  });

  test.each<[string, () => Promise<object>]>([
    ['itself', async () => on('self')],
    ['a line that stands on it', async () => on((await upper()).id)],
    ['one of nowhere', async () => on(someId())],
    ['one that is no wall', async () => on((await upper({ kind: 'floor-line', segments: floor })).id)],
    ['any, being a floor', async () => ({ ...on((await upper()).id), kind: 'floor-line', segments: floor })],
  ])('is refused %s', async (what, change) => {
    const path = await lower();
    const body = (await change()) as { lineAbove: { loadPathId: string } };
    if (what === 'itself') body.lineAbove.loadPathId = path.id;
    if (what === 'a line that stands on it')
      await api
        .http(site.estimator)
        .patch(`${v1}/load-paths/${body.lineAbove.loadPathId}`)
        .set('if-match', '"1"')
        .send(on(path.id))
        .expect(200);
    const refused = await patch(path.id, 1, body);
    expect([refused.status, refused.body.errors?.[0]?.pointer]).toEqual([422, '/lineAbove/loadPathId']);
  });
});
const floor = [{ name: 'A', links: [{ name: 'Joist', role: 'member', state: 'unseen' }] }];

test('a rod that is rusted and short in its nut has both losses multiplied, and the answer says so', async () => {
  const short = await site.finding({
    checkId: 'anchor.thread-engagement',
    inputs: { diameterIn: 0.625, nut: 'hex', projectionIn: -0.125, rule: 'flush' },
  });
  const inNut = short.judgments[0]?.answer.remaining ?? Number.NaN;
  expect(inNut).toBeGreaterThan(0);
  const path = await added(wallLine([{ ...rod(), findingIds: [findingId, short.id] }, panels]));
  expect(path.answer.segments[0]?.links[0]?.remaining).toBeCloseTo(share * inNut, 12);
  expect(path.answer.reasons.join(' ')).toContain('losses of one kind multiply (the rod and its threads)');
});

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
    const segments = [{ name: 'A', links: soundWall({ momentAboveFtLb: 0 }) }];
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
