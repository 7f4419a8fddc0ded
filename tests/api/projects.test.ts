import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { type Person, startTestApi, type TestApi } from '../support/api.ts';
import { cutPlate, newProject, type Site, someId, startSite, v1 } from '../support/site.ts';

let api: TestApi;
let site: Site;

beforeAll(async () => {
  api = await startTestApi();
  site = await startSite(api);
});
afterAll(() => api.close());

const create = (body: object, person: Person = site.estimator) => api.http(person).post(`${v1}/projects`).send(body);
const patch = (id: string, version: number, change: object, person: Person = site.estimator) =>
  api.http(person).patch(`${v1}/projects/${id}`).set('if-match', `"${version}"`).send(change);

describe('making a project', () => {
  test('answers it whole, with what was left out filled in', async () => {
    const { status, body, headers } = await create({ ...newProject, yearBuilt: 1926, startOn: '2026-03-02' });
    expect(status).toBe(201);
    expect(headers.etag).toBe('"1"');
    expect(body).toMatchObject({
      ...newProject,
      version: 1,
      yearBuilt: 1926,
      startOn: '2026-03-02',
      clientEmail: null,
      clientLocale: 'en',
      contingencyCents: 0,
      currency: 'USD',
    });
    expect((await api.http(site.estimator).get(`${v1}/projects/${body.id}`)).body).toEqual(body);
  });

  test('twice under one id and one content is one project; other content is refused', async () => {
    const id = someId();
    const first = await create({ id, ...newProject });
    const again = await create({ id, ...newProject });
    expect([again.status, again.body]).toEqual([201, first.body]);
    const other = await create({ id, ...newProject, stories: 3 });
    expect([other.status, other.body.type]).toEqual([409, 'urn:underlath:problem:already-exists']);
  });

  test('fifty times at once under one id is one project', async () => {
    const id = someId();
    const answers = await Promise.all(Array.from({ length: 50 }, () => create({ id, ...newProject })));
    expect(new Set(answers.map(({ status }) => status))).toEqual(new Set([201]));
    expect(new Set(answers.map(({ text }) => text)).size).toBe(1);
    const record = await api.http(site.owner).get(`${v1}/projects/${id}/record`);
    expect(record.body.items.map(({ type }: { type: string }) => type)).toEqual(['project.created']);
  });

  test('under an id of another company takes nothing from it', async () => {
    const stranger = await api.signIn();
    expect((await create({ id: site.project.id, ...newProject, name: 'Elsewhere' }, stranger)).status).toBe(201);
    expect((await api.http(site.crew).get(`${v1}/projects/${site.project.id}`)).body.name).toBe(newProject.name);
  });

  test.each([
    ['/stories', { stories: 5 }],
    ['/stories', { stories: 'two' }],
    ['/originalSumCents', { originalSumCents: -1 }],
    ['/originalSumCents', { originalSumCents: 1.5 }],
    ['/originalSumCents', { originalSumCents: 3e9 }],
    ['/codeEdition', { codeEdition: 'irc-1890' }],
    ['/standardEditions/0', { standardEditions: ['irc-1890'] }],
    ['/standardEditions/1', { standardEditions: ['irc-2024', 'irc-2018'] }],
    ['/startOn', { startOn: '2026-02-30' }],
    ['/clientEmail', { clientEmail: 'dana' }],
    ['/name', { name: '   ' }],
    ['/name', { name: undefined }],
    ['/color', { color: 'red' }],
  ])('%s is named when it does not fit: %j', async (pointer, change) => {
    const { status, body } = await create({ ...newProject, ...change });
    expect([status, body.type, body.errors.map((one: { pointer: string }) => one.pointer)]).toEqual([
      422,
      'urn:underlath:problem:invalid-input',
      [pointer],
    ]);
  });
});

describe('changing a project', () => {
  test('is kept, versioned and told in the record', async () => {
    const { body: made } = await create(newProject);
    const changed = await patch(made.id, 1, { clientName: 'Dana and Sam Okafor', startOn: '2026-04-01' });
    expect(changed.body).toMatchObject({ version: 2, clientName: 'Dana and Sam Okafor', startOn: '2026-04-01' });
    const record = await api.http(site.owner).get(`${v1}/projects/${made.id}/record`);
    expect(record.body.items[0]).toMatchObject({
      type: 'project.changed',
      actor: { kind: 'member', id: site.estimator.memberId, name: 'Ed Sorrel' },
      data: { clientName: 'Dana and Sam Okafor', startOn: '2026-04-01' },
    });
  });

  test('from an old version is 412, without a version 428, and changes nothing', async () => {
    const { body: made } = await create(newProject);
    await patch(made.id, 1, { name: 'Second' });
    expect((await patch(made.id, 1, { name: 'Third' })).body.type).toBe('urn:underlath:problem:stale-version');
    const bare = await api.http(site.estimator).patch(`${v1}/projects/${made.id}`).send({ name: 'Third' });
    expect(bare.body.type).toBe('urn:underlath:problem:version-required');
    expect((await api.http(site.crew).get(`${v1}/projects/${made.id}`)).body.name).toBe('Second');
  });

  test('by two people at once from one version is done once', async () => {
    const { body: made } = await create(newProject);
    const answers = await Promise.all(['A', 'B', 'C'].map((name) => patch(made.id, 1, { name })));
    expect(answers.map(({ status }) => status).sort()).toEqual([200, 412, 412]);
  });

  test('of another company or of nowhere is 404', async () => {
    const stranger = await api.signIn();
    expect((await patch(site.project.id, 1, { name: 'Mine' }, stranger)).status).toBe(404);
    expect((await patch(someId(), 1, { name: 'Mine' })).status).toBe(404);
    expect((await patch('not-an-id', 1, { name: 'Mine' })).status).toBe(404);
  });
});

describe('the list of projects', () => {
  test('comes newest first, page by page without gaps or repeats, and only with its own', async () => {
    const person = await api.signIn();
    for (let made = 1; made <= 5; made++) await create({ ...newProject, name: `House ${made}` }, person);
    const names: string[] = [];
    for (let cursor: string | null = ''; cursor !== null; ) {
      const { body }: { body: { items: { name: string }[]; next: string | null } } = await api
        .http(person)
        .get(`${v1}/projects`)
        .query({ limit: 2, ...(cursor && { cursor }) });
      names.push(...body.items.map(({ name }) => name));
      cursor = body.next;
    }
    expect(names).toEqual(['House 5', 'House 4', 'House 3', 'House 2', 'House 1']);
  });

  test('is searched in name, address and client, with signs taken as they are', async () => {
    const person = await api.signIn();
    await create({ ...newProject, name: 'Fir_Lane 100%', clientName: 'Rae' }, person);
    await create({ ...newProject, name: 'FirXLane', siteAddress: '9 Mill Road' }, person);
    const find = async (q: string) =>
      (await api.http(person).get(`${v1}/projects`).query({ q })).body.items.map(({ name }: { name: string }) => name);
    expect(await find('fir_lane')).toEqual(['Fir_Lane 100%']);
    expect(await find('100%')).toEqual(['Fir_Lane 100%']);
    expect(await find('mill')).toEqual(['FirXLane']);
    expect(await find('RAE')).toEqual(['Fir_Lane 100%']);
    expect(await find("'; drop table project; --")).toEqual([]);
  });

  test('refuses a cursor it never gave and a limit out of range', async () => {
    const list = (query: object) => api.http(site.crew).get(`${v1}/projects`).query(query);
    expect((await list({ cursor: 'made-up' })).body.errors[0].pointer).toBe('query/cursor');
    expect((await list({ limit: 1000 })).body.errors[0].pointer).toBe('query/limit');
  });
});

describe('the overview of a project', () => {
  test('counts what is open and says what needs whom, most urgent first', async () => {
    const own = await startSite(api);
    const cut = await own.finding({ title: 'Plate cut for a pipe' });
    const unmeasured = await own.finding({ title: 'Another plate', inputs: { widthIn: cutPlate.widthIn } });
    const { body } = await api.http(own.estimator).get(`${v1}/projects/${own.project.id}/overview`);
    expect(body).toMatchObject({ findingCount: 2, photoCount: 0, project: { id: own.project.id } });
    expect(body.contract).toMatchObject({ originalSumCents: 18_400_000, currentSumCents: 18_400_000, pendingCents: 0 });
    expect(body.open[cut.severity ?? '']).toBeGreaterThan(0);
    const kinds = body.todo.map(({ kind, findingId }: { kind: string; findingId: string }) => [kind, findingId]);
    expect(kinds).toContainEqual(['price', cut.id]);
    expect(kinds).toContainEqual(['measure', unmeasured.id]);
    expect(kinds.findIndex(([kind]: string[]) => kind === 'measure')).toBeLessThan(
      kinds.findIndex(([kind]: string[]) => kind === 'price'),
    );
    expect(body.todo.find(({ kind }: { kind: string }) => kind === 'price')).toMatchObject({
      title: 'Plate cut for a pipe',
      where: 'North wall',
    });
  });
});
