import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { type Person, startTestApi, type TestApi } from '../support/api.ts';
import { newWall, type Site, someId, startSite, v1 } from '../support/site.ts';

let api: TestApi;
let site: Site;

beforeAll(async () => {
  api = await startTestApi();
  site = await startSite(api);
});
afterAll(() => api.close());

const add = (body: object, projectId = site.project.id, person: Person = site.crew) =>
  api.http(person).post(`${v1}/projects/${projectId}/locations`).send(body);
const patch = (id: string, version: number, change: object, person: Person = site.estimator) =>
  api.http(person).patch(`${v1}/locations/${id}`).set('if-match', `"${version}"`).send(change);
const remove = (id: string, version: number, person: Person = site.estimator) =>
  api.http(person).delete(`${v1}/locations/${id}`).set('if-match', `"${version}"`);

describe('a place', () => {
  test('has a kind, a size and openings, and what was left out is filled in', async () => {
    const opening = { name: 'Window', xIn: 40, yIn: 36, widthIn: 32, heightIn: 48 };
    const { status, body } = await add({ ...newWall, kind: 'beam-line', name: 'Girder', openings: [opening] });
    expect(status).toBe(201);
    expect(body).toMatchObject({ kind: 'beam-line', openings: [opening], parentId: null, worst: null, openCount: 0 });
  });

  test('twice under one id and one content is one place; other content is refused', async () => {
    const place = { id: someId(), ...newWall, name: 'South wall' };
    const first = await add(place);
    const again = await add(place);
    expect([again.status, again.body]).toEqual([201, first.body]);
    expect((await add({ ...place, heightIn: 90 })).status).toBe(409);
  });

  test('hangs under a place of the same project only', async () => {
    const other = await startSite(api);
    for (const parentId of [someId(), other.wall.id]) {
      const { status, body } = await add({ kind: 'room', name: 'Bath', parentId });
      expect([status, body.errors[0].pointer]).toEqual([422, '/parentId']);
    }
  });

  test('cannot be put into itself or into a place inside it', async () => {
    const story = (await add({ kind: 'story', name: 'First story' })).body;
    const room = (await add({ kind: 'room', name: 'Kitchen', parentId: story.id })).body;
    const wall = (await add({ ...newWall, name: 'East', parentId: room.id })).body;
    for (const parentId of [story.id, room.id, wall.id]) {
      const { status, body } = await patch(story.id, 1, { parentId });
      expect([status, body.errors[0].pointer]).toEqual([422, '/parentId']);
    }
    expect((await patch(wall.id, 1, { parentId: story.id })).body).toMatchObject({ parentId: story.id, version: 2 });
  });

  test.each([
    ['/widthIn', { widthIn: -3 }],
    ['/widthIn', { widthIn: 'wide' }],
    ['/framingSpacingIn', { framingSpacingIn: 1 }],
    ['/kind', { kind: 'attic' }],
    ['/name', { name: '' }],
    ['/openings/0/widthIn', { openings: [{ name: 'Door', xIn: 0, yIn: 0, widthIn: 0, heightIn: 80 }] }],
  ])('%s is named when it does not fit: %j', async (pointer, change) => {
    const { status, body } = await add({ ...newWall, ...change });
    expect([status, body.errors[0].pointer]).toEqual([422, pointer]);
  });

  test('of another company is 404, as one that is nowhere', async () => {
    const stranger = await api.signIn();
    expect((await add(newWall, site.project.id, stranger)).status).toBe(404);
    expect((await patch(site.wall.id, 1, { name: 'Mine' }, stranger)).status).toBe(404);
    expect((await remove(site.wall.id, 1, stranger)).status).toBe(404);
    expect((await api.http(stranger).get(`${v1}/projects/${site.project.id}/locations`)).status).toBe(404);
    expect((await patch(someId(), 1, { name: 'Mine' })).status).toBe(404);
  });
});

describe('removing a place', () => {
  test('takes an empty one and tells the record', async () => {
    const { body } = await add({ ...newWall, name: 'Closet' });
    expect((await remove(body.id, 2)).status).toBe(412);
    expect((await remove(body.id, 1)).status).toBe(204);
    const list = await api.http(site.crew).get(`${v1}/projects/${site.project.id}/locations`);
    expect(list.body.items.map(({ id }: { id: string }) => id)).not.toContain(body.id);
    const record = await api.http(site.owner).get(`${v1}/projects/${site.project.id}/record`);
    expect(record.body.items[0]).toMatchObject({ type: 'location.removed', subjectId: body.id });
  });

  test('refuses one with a place, a finding or a photo in it', async () => {
    const own = await startSite(api);
    await own.finding();
    const answer = await remove(own.wall.id, 1, own.owner);
    expect([answer.status, answer.body.type]).toEqual([409, 'urn:underlath:problem:wrong-state']);
    expect(answer.body.detail).toContain('0 places, 1 findings, 0 photos and 0 load paths');
  });
});

describe('the tree of places', () => {
  test('shows in each place the worst of what is open in and below it, and how much', async () => {
    const own = await startSite(api);
    const story = (await add({ kind: 'story', name: 'First' }, own.project.id, own.crew)).body;
    await patch(own.wall.id, 1, { parentId: story.id }, own.owner);
    const finding = await own.finding();
    await own.finding({ inputs: {} });
    const tree = async () => {
      const { body } = await api.http(own.crew).get(`${v1}/projects/${own.project.id}/locations`);
      return Object.fromEntries(
        body.items.map(({ name, worst, openCount }: { name: string; worst: string; openCount: number }) => [
          name,
          [worst, openCount],
        ]),
      );
    };
    const before = await tree();
    expect(before['North wall']?.[1]).toBe(2);
    expect(before.First).toEqual(before['North wall']);
    expect(before.First?.[0]).toBe('engineer');
    const url = `${v1}/findings/${finding.id}/state`;
    const move = { state: 'withdrawn', reason: 'Measured the wrong plate' };
    expect((await api.http(own.crew).post(url).set('if-match', `"${finding.version}"`).send(move)).status).toBe(200);
    expect((await tree()).First?.[1]).toBe(1);
  });
});
