import { type Finding, type FindingRow, routes } from '@underlath/contract';
import { findCheck } from '@underlath/rules/all-checks';
import sharp from 'sharp';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { type Person, startTestApi, type TestApi } from '../support/api.ts';
import { cutPlate, type Site, someId, startSite, uncutPlate, v1 } from '../support/site.ts';

let api: TestApi;
let site: Site;

beforeAll(async () => {
  api = await startTestApi();
  site = await startSite(api);
});
afterAll(() => api.close());

const noted = () => ({
  locationId: site.wall.id,
  checkId: 'cut.top-plate',
  seenAt: '2026-03-03T14:05:09Z',
  inputs: cutPlate,
});
const create = (body: object, person: Person = site.crew, projectId = site.project.id) =>
  api.http(person).post(`${v1}/projects/${projectId}/findings`).send(body);
const judge = (id: string, inputs: object, more: object = {}) =>
  api
    .http(site.crew)
    .post(`${v1}/findings/${id}/judgments`)
    .send({ inputs, ...more });
const move = (finding: Finding, state: string, reason = '') =>
  api
    .http(site.crew)
    .post(`${v1}/findings/${finding.id}/state`)
    .set('if-match', `"${finding.version}"`)
    .send({ state, reason });
const read = async (id: string): Promise<Finding> => (await api.http(site.crew).get(`${v1}/findings/${id}`)).body;

/** What a client's approval does to a finding; change orders have tests of their own. */
async function approve(id: string): Promise<Finding> {
  await api.platform.database.inCompany(site.owner.companyId, (tx) =>
    tx.finding.updateMany({ where: { id }, data: { state: 'approved' } }),
  );
  return read(id);
}

let shade = 0;
async function photo(stage: string, projectSite: Site = site): Promise<string> {
  const background = { r: shade++, g: 90, b: 60 };
  const bytes = await sharp({ create: { width: 40, height: 30, channels: 3, background } })
    .png()
    .toBuffer();
  return (await projectSite.upload(bytes, { stage })).body.id;
}

describe('recording a finding', () => {
  test('judges it at once by the edition of the project and keeps what went in and came out', async () => {
    const { status, body, headers } = await create(noted());
    expect(status).toBe(201);
    expect(headers.etag).toBe(`"${body.version}"`);
    expect(body).toMatchObject({
      checkId: 'cut.top-plate',
      state: 'judged',
      verdict: 'fails',
      locationName: 'North wall',
      title: findCheck('cut.top-plate')?.title.en,
      createdBy: { id: site.crew.memberId, name: 'Cleo Birch' },
      context: { storiesAbove: 1 },
      linesCents: null,
      changeOrderId: null,
    });
    expect(body.judgments).toHaveLength(1);
    expect(body.judgments[0]).toMatchObject({
      seq: 1,
      edition: 'irc-2021',
      inputs: cutPlate,
      context: { storiesAbove: 1 },
    });
    expect(body.judgments[0].answer).toMatchObject({ verdict: 'fails', severity: body.severity, edition: 'irc-2021' });
    expect(body.client.found.en.length).toBeGreaterThan(20);
    expect(body.client.why.es.length).toBeGreaterThan(20);
  });

  test('takes an edition asked for, and the facts of the place as the person on site tells them', async () => {
    const { body } = await create({ ...noted(), edition: 'irc-2012', context: { storiesAbove: 0, shored: true } });
    expect(body.judgments[0]).toMatchObject({ edition: 'irc-2012', context: { storiesAbove: 0, shored: true } });
  });

  test('judges by the code the inputs name, when it is another one than the project has', async () => {
    const { body } = await create({ ...noted(), inputs: { ...cutPlate, code: 'ibc' } });
    expect(body.judgments[0].edition).toMatch(/^ibc-/);
  });

  test('with a measurement missing cannot tell yet and says what to measure', async () => {
    const { cutIn: _cut, ...rest } = cutPlate;
    const { body } = await create({ ...noted(), inputs: rest });
    expect(body).toMatchObject({ state: 'noted', verdict: 'undetermined' });
    expect(body.judgments[0].answer.missing).toEqual(['cutIn']);
  });

  test('answers in Spanish when that is asked for first', async () => {
    const { body } = await create(noted());
    const spanish = await api.http(site.crew).get(`${v1}/findings/${body.id}`).set('accept-language', 'es-MX,es;q=0.9');
    expect(spanish.body.judgments[0].answer.reasons).not.toEqual(body.judgments[0].answer.reasons);
    expect(spanish.body.judgments[0].answer.reasons).toHaveLength(body.judgments[0].answer.reasons.length);
  });

  test('numbers the findings of a project one by one, also when many come at once', async () => {
    const own = await startSite(api);
    const made = await Promise.all(Array.from({ length: 12 }, () => own.finding()));
    expect(made.map(({ number }) => number).sort((a, b) => a - b)).toEqual(
      Array.from({ length: 12 }, (_, at) => at + 1),
    );
  });

  test('twice under one id and one content is one finding; other content is refused', async () => {
    const body = { id: someId(), ...noted() };
    // Fifty at once wait in one line for one row; a slow machine may send the last of them away to try again.
    const busy = { status: 503, body: { number: 0 } };
    const insist = async () => {
      for (let answer: { status: number; body: Finding | { number: number } } = busy; ; answer = await create(body)) {
        if (answer.status !== 503) return answer;
      }
    };
    const answers = await Promise.all(Array.from({ length: 50 }, insist));
    expect(new Set(answers.map(({ status }) => status))).toEqual(new Set([201]));
    expect(new Set(answers.map((answer) => answer.body.number)).size).toBe(1);
    expect((await read(body.id)).judgments).toHaveLength(1);
    const other = await create({ ...body, note: 'another thing' });
    expect([other.status, other.body.type]).toEqual([409, 'urn:underlath:problem:already-exists']);
  });

  test('with one Idempotency-Key answers the same again, and refuses another body', async () => {
    const send = (body: object) => create(body).set('idempotency-key', 'plate-7');
    const first = await send(noted());
    const again = await send(noted());
    expect([again.status, again.body.id, again.headers['idempotency-replayed']]).toEqual([201, first.body.id, 'true']);
    const other = await send({ ...noted(), note: 'another' });
    expect([other.status, other.body.type]).toEqual([422, 'urn:underlath:problem:key-reused']);
  });

  test.each([
    ['/inputs/cutIn', { inputs: { ...cutPlate, cutIn: -2 } }],
    ['/inputs/cutIn', { inputs: { ...cutPlate, cutIn: '2 in' } }],
    ['/inputs/colour', { inputs: { ...cutPlate, colour: 'red' } }],
    ['/edition', { edition: 'irc-1890' }],
    ['/checkId', { checkId: 'cut.nothing' }],
    ['/locationId', { locationId: '01890a5d-ac96-774b-bcce-b302099a8057' }],
    ['/photoIds/0', { photoIds: ['01890a5d-ac96-774b-bcce-b302099a8057'] }],
    ['/seenAt', { seenAt: '2999-01-01T00:00:00Z' }],
    ['/seenAt', { seenAt: 'yesterday' }],
    ['/extent', { extent: { xIn: 100, yIn: 0, widthIn: 60, heightIn: 10 } }],
    ['/context/storiesAbove', { context: { storiesAbove: 9 } }],
  ])('%s is named when it does not fit, and nothing is kept', async (pointer, change) => {
    const id = someId();
    const { status, body } = await create({ id, ...noted(), ...change });
    expect([status, body.type, body.errors[0].pointer]).toEqual([422, 'urn:underlath:problem:invalid-input', pointer]);
    expect((await api.http(site.crew).get(`${v1}/findings/${id}`)).status).toBe(404);
  });

  test('with a place or a photo of another project is refused like one that is nowhere', async () => {
    const other = await startSite(api);
    expect((await create({ ...noted(), locationId: other.wall.id })).body.errors[0].pointer).toBe('/locationId');
    const photoIds = [await photo('found', other)];
    expect((await create({ ...noted(), photoIds })).body.errors[0].pointer).toBe('/photoIds/0');
  });
});

describe('measuring again', () => {
  test('adds a judgment and keeps the earlier ones as they were', async () => {
    const { body: first } = await create(noted());
    const { status, body } = await judge(first.id, uncutPlate);
    expect([status, body.verdict, body.state]).toEqual([201, 'meets', 'judged']);
    expect(body.judgments).toHaveLength(2);
    expect(body.judgments[0]).toEqual(first.judgments[0]);
    expect(body.judgments[1]).toMatchObject({ seq: 2, inputs: uncutPlate });
  });

  test('turns noted into judged when the last measurement came', async () => {
    const { body: first } = await create({ ...noted(), inputs: {} });
    expect(first.state).toBe('noted');
    expect((await judge(first.id, cutPlate)).body.state).toBe('judged');
  });

  test('by many at once keeps each in its own place', async () => {
    const { body } = await create(noted());
    await Promise.all(Array.from({ length: 8 }, (_, at) => judge(body.id, { ...cutPlate, cutIn: at / 4 })));
    expect((await read(body.id)).judgments.map(({ seq }) => seq)).toEqual([1, 2, 3, 4, 5, 6, 7, 8, 9]);
  });

  test('with an impossible number changes nothing', async () => {
    const { body } = await create(noted());
    expect((await judge(body.id, { ...cutPlate, cutIn: 99 })).body.errors[0].pointer).toBe('/inputs/cutIn');
    expect(await read(body.id)).toEqual(body);
  });
});

describe('changing a finding', () => {
  const patch = (id: string, version: number, change: object) =>
    api.http(site.crew).patch(`${v1}/findings/${id}`).set('if-match', `"${version}"`).send(change);

  test('keeps words, place and extent, and only from the version seen', async () => {
    const { body } = await create(noted());
    const extent = { xIn: 12, yIn: 90, widthIn: 24, heightIn: 7 };
    const changed = await patch(body.id, body.version, { title: 'Plate over the sink', note: 'Two cuts', extent });
    expect(changed.body).toMatchObject({
      title: 'Plate over the sink',
      note: 'Two cuts',
      extent,
      version: body.version + 1,
    });
    expect((await patch(body.id, body.version, { note: 'late' })).status).toBe(412);
    expect((await patch(body.id, changed.body.version, { extent: null })).body.extent).toBeNull();
    expect((await patch(body.id, 99, { verdict: 'meets' })).body.errors[0].pointer).toBe('/verdict');
  });

  test('adds photos once, in order, of its own project only', async () => {
    const { body } = await create(noted());
    const ids = [await photo('found'), await photo('opened')];
    const attach = (photoIds: string[]) =>
      api.http(site.crew).post(`${v1}/findings/${body.id}/photos`).send({ photoIds });
    await attach(ids);
    const again = await attach(ids);
    expect(again.body.photos.map(({ id }: { id: string }) => id).sort()).toEqual([...ids].sort());
    expect((await attach([someId()])).body.errors[0].pointer).toBe('/photoIds/0');
  });
});

describe('the way of a finding', () => {
  test('ends by withdrawal only with a reason, and then takes no more measurements', async () => {
    const finding = await site.finding();
    expect((await move(finding, 'withdrawn')).body.errors[0].pointer).toBe('/reason');
    const { body } = await move(finding, 'withdrawn', 'Wrong wall');
    expect(body).toMatchObject({ state: 'withdrawn', stateReason: 'Wrong wall' });
    expect((await judge(finding.id, uncutPlate)).body.type).toBe('urn:underlath:problem:wrong-state');
  });

  test('reaches repaired only from approved, and proven only from repaired', async () => {
    const finding = await site.finding();
    for (const state of ['repaired', 'proven']) {
      expect((await move(finding, state)).body.type).toBe('urn:underlath:problem:wrong-state');
    }
    expect((await move(await approve(finding.id), 'repaired')).body.state).toBe('repaired');
  });

  test('is proven by a measurement after the repair that meets, and a photo before cover', async () => {
    const finding = await site.finding();
    await judge(finding.id, uncutPlate);
    const repaired: Finding = (await move(await approve(finding.id), 'repaired')).body;
    expect((await move(repaired, 'proven')).body.detail).toMatch(/Measure it again/);
    await judge(finding.id, cutPlate);
    expect((await move(await read(finding.id), 'proven')).body.detail).toMatch(/must meet/);
    await judge(finding.id, uncutPlate);
    expect((await move(await read(finding.id), 'proven')).body.detail).toMatch(/before cover/);
    const photoIds = [await photo('before-cover')];
    await api.http(site.crew).post(`${v1}/findings/${finding.id}/photos`).send({ photoIds });
    expect((await move(await read(finding.id), 'proven')).body.state).toBe('proven');
  });

  test('moves once from one version, whoever asks', async () => {
    const finding = await site.finding();
    const answers = await Promise.all([1, 2, 3].map((at) => move(finding, 'withdrawn', `reason ${at}`)));
    expect(answers.map(({ status }) => status).sort()).toEqual([200, 412, 412]);
  });
});

describe('the list of findings', () => {
  test('comes newest first with its photos, page by page without gaps or repeats, and filtered', async () => {
    const own = await startSite(api);
    const photoIds = [await photo('found', own), await photo('during', own)];
    const made: Finding[] = [];
    for (let at = 0; at < 5; at++) {
      made.push(
        await own.finding({ title: `Plate ${at}`, inputs: at < 2 ? cutPlate : {}, ...(at === 0 && { photoIds }) }),
      );
    }
    const list = (query: object) => api.http(own.crew).get(`${v1}/projects/${own.project.id}/findings`).query(query);
    const names: string[] = [];
    for (let cursor: string | null = ''; cursor !== null; ) {
      const { body }: { body: { items: FindingRow[]; next: string | null } } = await list({
        limit: 2,
        ...(cursor && { cursor }),
      });
      names.push(...body.items.map(({ title }) => title));
      cursor = body.next;
    }
    expect(names).toEqual(['Plate 4', 'Plate 3', 'Plate 2', 'Plate 1', 'Plate 0']);
    const { body } = await list({ state: 'judged' });
    expect(routes.listFindings.answers[200].parse(body)).toEqual(body);
    expect(body.items.map(({ title }: FindingRow) => title)).toEqual(['Plate 1', 'Plate 0']);
    expect(body.items[1].photos.map(({ id }: { id: string }) => id).sort()).toEqual([...photoIds].sort());
    const { photos: _photos, judgments: _judgments, client: _client, context: _context, ...row } = made[0] as Finding;
    const { photos: _thumbs, ...listed } = body.items[1];
    expect(listed).toEqual(row);
    expect((await list({ severity: 'make-safe' })).body.items).toEqual([]);
    expect((await list({ q: 'plate 3' })).body.items).toHaveLength(1);
    expect((await list({ q: '%' })).body.items).toHaveLength(0);
    expect((await list({ locationId: own.wall.id })).body.items).toHaveLength(5);
    expect((await list({ severity: 'grave' })).body.errors[0].pointer).toBe('query/severity');
  });

  test('asks the database once, however many findings it shows', async () => {
    const own = await startSite(api);
    for (let at = 0; at < 3; at++) await own.finding();
    const queries: string[] = [];
    const { pool } = api.platform.database;
    const connect = pool.connect.bind(pool);
    const counted = async () => {
      const client = await connect();
      const query = client.query.bind(client) as (...args: unknown[]) => unknown;
      Object.assign(client, {
        query: (...args: unknown[]) => {
          const [asked] = args;
          queries.push(typeof asked === 'string' ? asked : (asked as { text: string }).text);
          return query(...args);
        },
      });
      return client;
    };
    await own.finding();
    Object.assign(pool, { connect: counted });
    try {
      await api.http(own.crew).get(`${v1}/projects/${own.project.id}/findings`).expect(200);
    } finally {
      Object.assign(pool, { connect });
    }
    expect(queries.filter((text) => /from finding/i.test(text))).toHaveLength(1);
  });

  test('of a project of another company or of nowhere is 404', async () => {
    const stranger = await api.signIn();
    for (const id of [site.project.id, someId()]) {
      expect((await api.http(stranger).get(`${v1}/projects/${id}/findings`)).status).toBe(404);
    }
    const finding = await site.finding();
    expect((await api.http(stranger).get(`${v1}/findings/${finding.id}`)).status).toBe(404);
  });
});
