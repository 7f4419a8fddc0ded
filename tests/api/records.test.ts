import type { RecordCheck } from '@underlath/contract';
import pg from 'pg';
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { chainHash } from '../../apps/api/src/features/records/record-hash.ts';
import { startTestApi, type TestApi } from '../support/api.ts';
import { cutPlate, fixture, type Site, startSite, uncutPlate, v1 } from '../support/site.ts';

let api: TestApi;
let site: Site;
/** Somebody with the database in hand: superuser, triggers off. */
let intruder: pg.Client;

beforeAll(async () => {
  api = await startTestApi();
  intruder = new pg.Client({ connectionString: api.databaseUrl });
  await intruder.connect();
  await intruder.query(`set session_replication_role = 'replica'`);
});
afterAll(async () => {
  await intruder.end();
  await api.close();
});
beforeEach(async () => {
  site = await startSite(api);
  const finding = await site.finding();
  await api.http(site.crew).post(`${v1}/findings/${finding.id}/judgments`).send({ inputs: uncutPlate });
  const { body } = await site.upload(fixture('plain.png'), { findingId: finding.id });
  await site.derived(body.id);
});

const verify = async (): Promise<RecordCheck> =>
  (await api.http(site.owner).get(`${v1}/projects/${site.project.id}/record/verify`)).body;
const faults = async () => (await verify()).faults.map(({ what }) => what).join('\n');
const tamper = (sql: string, ...values: unknown[]) => intruder.query(sql, [site.project.id, ...values]);

describe('the record of a project', () => {
  test('tells everything that was done, by whom, newest first, page by page', async () => {
    const types: string[] = [];
    for (let cursor: string | null = ''; cursor !== null; ) {
      const { body }: { body: { items: { type: string }[]; next: string | null } } = await api
        .http(site.owner)
        .get(`${v1}/projects/${site.project.id}/record`)
        .query({ limit: 3, ...(cursor && { cursor }) });
      types.push(...body.items.map(({ type }) => type));
      cursor = body.next;
    }
    expect(types.reverse()).toEqual([
      'project.created',
      'location.added',
      'finding.noted',
      'finding.judged',
      'finding.judged',
      'photo.received',
      'photo.derived',
    ]);
  });

  test('verifies, and its hashes can be recomputed from the rows by anyone', async () => {
    const check = await verify();
    expect(check).toMatchObject({ ok: true, events: 7, faults: [], head: { seq: 7 } });
    const { rows } = await tamper('select body, prev_hash, hash from event where project_id = $1 order by seq');
    let before = '0'.repeat(64);
    for (const { body, prev_hash, hash } of rows) {
      expect(prev_hash).toBe(before);
      expect(chainHash(before, body)).toBe(hash);
      before = hash;
    }
    expect(check.head.hash).toBe(before);
  });

  test('says whether what a letter printed is still in it, and what nothing outside knows', async () => {
    const at = (seq: number, hash: string) =>
      api.http(site.owner).get(`${v1}/projects/${site.project.id}/record/verify`).query({ seq, hash });
    const { rows } = await tamper('select hash from event where project_id = $1 and seq = 3');
    const same = (await at(3, rows[0].hash).expect(200)).body as RecordCheck;
    expect(same).toMatchObject({ ok: true, otherKinds: [], untold: [] });
    expect(same.witnesses).toMatchObject({ kept: 0, handed: 1, handedAgreed: 1, newestSeq: 3 });
    const other = (await at(4, rows[0].hash).expect(200)).body as RecordCheck;
    expect(other.witnesses).toMatchObject({ handed: 1, handedAgreed: 0, newestSeq: 0 });
    expect(other.faults).toEqual([{ seq: 4, what: expect.stringContaining('Event 4 is not the one') }]);
    const later = (await at(9, rows[0].hash).expect(200)).body as RecordCheck;
    expect(later.faults[0]?.what).toContain('The record ends with event 7, but the witness handed in knows event 9');
    await api.http(site.owner).get(`${v1}/projects/${site.project.id}/record/verify?seq=3`).expect(422);
  });

  test('the company’s own is no project to anybody', async () => {
    const { companyId } = site.owner;
    await api.http(site.owner).get(`${v1}/projects/${companyId}/record`).expect(404);
    await api.http(site.owner).get(`${v1}/projects/${companyId}/record/verify`).expect(404);
    const place = { kind: 'wall', name: 'Nowhere' };
    await api.http(site.owner).post(`${v1}/projects/${companyId}/locations`).send(place).expect(404);
  });

  test('cannot be changed by the application, nor by the owner of the tables', async () => {
    const { database } = api.platform;
    const where = { projectId: site.project.id };
    await expect(
      database.inCompany(site.owner.companyId, (tx) => tx.event.updateMany({ where, data: { type: 'x' } })),
    ).rejects.toThrow(/permission denied/);
    await expect(database.owner.event.deleteMany({ where })).rejects.toThrow(/written once/);
    await expect(database.owner.judgment.updateMany({ where: {}, data: { edition: 'x' } })).rejects.toThrow(
      /written once/,
    );
  });

  test('keeps one unbroken chain when many write at once', async () => {
    await Promise.all(Array.from({ length: 10 }, (_, at) => site.finding({ title: `Plate ${at}` })));
    expect(await verify()).toMatchObject({ ok: true, events: 27 });
  });

  test('keeps nothing of what failed', async () => {
    const before = await verify();
    await api
      .http(site.crew)
      .post(`${v1}/projects/${site.project.id}/findings`)
      .send({
        locationId: site.wall.id,
        checkId: 'cut.top-plate',
        seenAt: '2026-03-03T14:05:09Z',
        inputs: { ...cutPlate, cutIn: 99 },
      });
    expect((await verify()).head).toEqual(before.head);
  });
});

describe('verifying finds', () => {
  const last = `(select max(seq) from event where project_id = $1)`;

  test('an edited event', async () => {
    await tamper(`update event set body = replace(body, 'Cleo', 'Leo') where project_id = $1 and seq = 4`);
    expect(await faults()).toContain('The hash of event 4 is not the hash of what it says.');
  });

  test('an edited event with its hash made to fit', async () => {
    const { rows } = await tamper('select body, prev_hash from event where project_id = $1 and seq = 4');
    const body = rows[0].body.replace('Cleo', 'Leo');
    await tamper(
      'update event set body = $2, hash = $3 where project_id = $1 and seq = 4',
      body,
      chainHash(rows[0].prev_hash, body),
    );
    expect(await faults()).toContain('Event 5 does not continue the event before it.');
  });

  test('an event filed under another time, kind or subject than it says', async () => {
    await tamper(
      `update event set at = at - interval '1 day', type = 'finding.proven' where project_id = $1 and seq = 4`,
    );
    const found = await faults();
    expect(found).toContain('Event 4 is filed under another at than it says.');
    expect(found).toContain('Event 4 is filed under another type than it says.');
  });

  test('a removed event in the middle', async () => {
    await tamper('delete from event where project_id = $1 and seq = 3');
    expect(await faults()).toContain('Event 3 is missing; event 4 comes next.');
  });

  test('a cut tail', async () => {
    await tamper(`delete from event where project_id = $1 and seq = ${last}`);
    expect(await faults()).toContain('The record should end with event 7; it ends with event 6.');
  });

  test('a cut tail with the head moved back: the row it spoke of tells', async () => {
    await tamper(`delete from event where project_id = $1 and seq >= 6`);
    await tamper(`update record_head h set seq = 5, hash = e.hash from event e
      where h.project_id = $1 and e.project_id = h.project_id and e.seq = 5`);
    expect(await faults()).toMatch(/The record does not know photo/);
  });

  test('two events swapped', async () => {
    await tamper('update event set seq = 100 where project_id = $1 and seq = 3');
    await tamper('update event set seq = 3 where project_id = $1 and seq = 4');
    await tamper('update event set seq = 4 where project_id = $1 and seq = 100');
    expect((await verify()).ok).toBe(false);
    expect(await faults()).toContain('Event 3 is filed under another seq than it says.');
  });

  test('an event of another project put in its place', async () => {
    const other = await startSite(api);
    await tamper('delete from event where project_id = $1 and seq = 2');
    await tamper(
      `insert into event select company_id, $1, seq, at, type, subject_id, body, prev_hash, hash from event where project_id = $2 and seq = 2`,
      other.project.id,
    );
    await tamper('update event set company_id = $2 where project_id = $1', site.owner.companyId);
    expect(await faults()).toContain('Event 2 is filed under another projectId than it says.');
  });

  test('a judgment whose measurement or verdict was changed, and one that is gone', async () => {
    const ofProject = '(select id from finding where project_id = $1)';
    await tamper(
      `update judgment set inputs = jsonb_set(inputs, '{cutIn}', '0.5') where finding_id in ${ofProject} and seq = 1`,
    );
    expect(await faults()).toMatch(/Judgment .* was changed/);
    await tamper(`delete from judgment where finding_id in ${ofProject} and seq = 2`);
    expect(await faults()).toMatch(/Judgment .* is gone/);
  });

  test('a photo that stands for other bytes', async () => {
    await tamper(`update photo set sha256 = repeat('0', 64) where project_id = $1`);
    expect(await faults()).toMatch(/Photo .* was changed/);
  });

  test('a head that is gone', async () => {
    await tamper('delete from record_head where project_id = $1');
    expect(await faults()).toContain('The head of the record is missing.');
  });
});

describe('who may read it', () => {
  test('is the office, of its own company', async () => {
    const stranger = await api.signIn();
    for (const path of ['record', 'record/verify']) {
      const url = `${v1}/projects/${site.project.id}/${path}`;
      expect((await api.http(site.crew).get(url)).status).toBe(403);
      expect((await api.http(stranger).get(url)).status).toBe(404);
    }
  });
});
