import type { Readable } from 'node:stream';
import { buffer } from 'node:stream/consumers';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { brandmeerHouse } from '../../seed/brandmeer-house.ts';
import { dunmuirCottage } from '../../seed/dunmuir-cottage.ts';
import { seedDemo } from '../../seed/index.ts';
import { startTestApi, type TestApi } from '../support/api.ts';
import { openLink } from '../support/offers.ts';
import { readPdf } from '../support/pdf-text.ts';

const v1 = '/api/v1';
let api: TestApi;
let demo: Awaited<ReturnType<typeof seedDemo>>;
let seconds: number;

beforeAll(async () => {
  api = await startTestApi();
  const started = Date.now();
  demo = await seedDemo(api.platform);
  seconds = (Date.now() - started) / 1000;
  // Two houses with a picture of each finding; on a machine with other work this takes longer than a test's usual start.
}, 180_000);
afterAll(() => api.close());

const http = async () => {
  const { email, password } = demo.signIns.find(({ role }) => role === 'estimator') ?? { email: '', password: '' };
  const signedIn = await api.http().post(`${v1}/session`).send({ email, password }).expect(200);
  const session = signedIn.get('Set-Cookie')?.find((cookie) => cookie.startsWith('underlath_session='));
  return api.http({ cookie: session?.split(';')[0] ?? '' });
};
const openClient = () => openLink(api, demo.clientPath);
const pdfOf = (answer: { body: unknown }) => readPdf(answer.body as Buffer);

describe('the demo', () => {
  test('judges every finding of its stories as they tell it', async () => {
    const agent = await http();
    const findings = (await projectsOf(agent)).flatMap(({ findings }) => findings);
    const judged = Object.fromEntries(
      findings.map(({ title, verdict, severity, state }) => [title, `${verdict}, ${severity}, ${state}`]),
    );
    expect(judged).toEqual({
      'Old tile in black glue under the carpet': 'fails, repair, repaired',
      'Plate cut for the kitchen vent, and tied right': 'meets, record, judged',
      'Panels pieced around the old milk door': 'fails, engineer, approved',
      'Street-side hold-down rod rusted thin': 'fails, engineer, repaired',
      'Pantry ceiling dips toward the middle': 'fails, repair, declined',
      'Sill under the third sash is soaked': 'undetermined, repair, judged',
      'Mold on the boards behind the wainscot': 'fails, repair, offered',
      'Two of eleven joist ends hang by split nails': 'fails, repair, offered',
      'Joist end on two toe-nails': 'fails, engineer, offered',
      'Porch beam sags over the middle sash': 'fails, repair, priced',
      'House end of the porch beam sits well': 'meets, record, judged',
      'River corner post rotten through at its foot': 'fails, make-safe, priced',
      'Laundry ceiling: board of 1996': 'not-applicable, record, judged',
      'Stud bored for a gas line that is gone': 'meets, record, proven',
    });
    console.info(`demo written in ${seconds.toFixed(1)} s`);
  });

  test('shows each finding on a photo of its own', async () => {
    const agent = await http();
    for (const { id, findings } of await projectsOf(agent)) {
      const counts = await Promise.all(
        findings.map(async ({ id: finding }) => {
          const { items } = (await agent.get(`${v1}/projects/${id}/photos?findingId=${finding}`).expect(200)).body;
          return items.length;
        }),
      );
      expect(counts.length).toBeGreaterThan(0);
      expect(counts).not.toContain(0);
    }
    const pictures = [brandmeerHouse, dunmuirCottage].flatMap(({ findings }) =>
      findings.map(({ photos }) => photos[0]?.picture),
    );
    expect(new Set(pictures).size).toBe(pictures.length);
  });

  test('has a wall and a beam as chains with something sound, something weakened and something not seen', async () => {
    const agent = await http();
    const [{ id } = { id: '' }] = await projectsOf(agent);
    const places = (await agent.get(`${v1}/projects/${id}/locations`).expect(200)).body.items as Row[];
    const lines = await Promise.all(
      places.map(async (place) => (await agent.get(`${v1}/locations/${place.id}/load-paths`).expect(200)).body.items),
    );
    const told = lines.flat().map(({ kind, answer }) => {
      const links = answer.segments.flatMap(({ links }: Row) => links) as Row[];
      return [
        kind,
        links.some(({ state }) => state === 'sound'),
        links.some(({ remaining }) => remaining !== null && remaining < 0.85),
        links.some(({ state }) => state === 'unseen'),
        answer.known,
      ];
    });
    expect(told.sort()).toEqual([
      ['gravity-line', true, true, true, false],
      ['wall-line', true, true, true, false],
    ]);
  });

  test('has a change order approved, one approved in part, one that waits and one not sent', async () => {
    const agent = await http();
    const [{ id } = { id: '' }, cottage] = await projectsOf(agent);
    const orders = (await agent.get(`${v1}/projects/${id}/change-orders`).expect(200)).body.items as Row[];
    expect(orders.map(({ state }) => state).sort()).toEqual(['approved', 'draft', 'part-approved', 'sent']);
    const contract = (await agent.get(`${v1}/projects/${cottage?.id}/contract`).expect(200)).body;
    expect(contract.money).toMatchObject({ completedCents: contract.currentSumCents, balanceToFinishCents: 0 });
    for (const project of [id, cottage?.id]) {
      const record = await agent.get(`${v1}/projects/${project}/record/verify`).expect(200);
      expect(record.body).toMatchObject({ ok: true, faults: [] });
    }
  });

  test('opens a spot with two findings once, and leaves one notice overdue', async () => {
    const agent = await http();
    const [{ id, findings } = { id: '', findings: [] }] = await projectsOf(agent);
    const { todo } = (await agent.get(`${v1}/projects/${id}/overview`).expect(200)).body;
    expect(todo.filter(({ kind }: Row) => kind === 'notice-overdue').map(({ title }: Row) => title)).toEqual([
      'Porch beam sags over the middle sash',
    ]);
    const mold = findings.find(({ checkId }) => checkId === 'hazard.mold');
    const wet = findings.find(({ checkId }) => checkId === 'decay.moisture');
    expect(overlapIn2(mold?.extent, wet?.extent)).toBeGreaterThan(0);
    expect(mold?.locationId).toBe(wet?.locationId);
  });

  test('is refused where anything is already', async () => {
    await expect(seedDemo(api.platform)).rejects.toThrow('The database is not empty');
  });
});

describe('the PDF of a sent version', () => {
  test('is tagged, has a title and a language, and carries hash, record head, total, photos and sources', async () => {
    const open = await openClient();
    const letter = (await api.http().get(open.path).set('cookie', open.cookie).expect(200)).body;
    const answer = await api
      .http()
      .get(`${open.path}/pdf?locale=en`)
      .set('cookie', open.cookie)
      .buffer(true)
      .parse(binary)
      .expect(200);
    expect(answer.headers['content-type']).toBe('application/pdf');
    const pdf = await pdfOf(answer);
    expect(pdf).toMatchObject({ language: 'en-US', isTagged: true });
    expect(pdf.title).toBe(`Change order ${letter.document.number}, version 1: ${letter.document.wording.headline.en}`);
    const { price, contract, record, items } = letter.document;
    const money = (cents: number) => (cents / 100).toLocaleString('en-US', { style: 'currency', currency: 'USD' });
    for (const words of [
      letter.sha256,
      record.hash,
      money(price.totalCents),
      money(contract.afterCents),
      'Not answered yet.',
      items[0].sources[0].title,
      letter.document.consent.text.en.slice(0, 40),
    ]) {
      expect(pdf.text).toContain(words);
    }
    expect(pdf.imageCount).toBe(items.flatMap((item: { photos: unknown[] }) => item.photos).length);
    expect(pdf.imageCount).toBeGreaterThan(0);
  });

  test('speaks Spanish when asked, with the same total and hash', async () => {
    const open = await openClient();
    const letter = (await api.http().get(open.path).set('cookie', open.cookie).expect(200)).body;
    const answer = await api
      .http()
      .get(`${open.path}/pdf?locale=es`)
      .set('cookie', open.cookie)
      .buffer(true)
      .parse(binary)
      .expect(200);
    const pdf = await pdfOf(answer);
    expect(pdf.language).toBe('es-US');
    expect(pdf.text).toContain('Lo que encontramos');
    expect(pdf.text).toContain(letter.document.items[0].found.es.slice(0, 50));
    expect(pdf.text).toContain(letter.sha256);
  });

  test('of an approved version names who signed, when, and the consent they were shown', async () => {
    const agent = await http();
    const [project] = (await agent.get(`${v1}/projects`).expect(200)).body.items;
    const orders = (await agent.get(`${v1}/projects/${project.id}/change-orders`).expect(200)).body.items;
    const approved = orders.find((one: { state: string }) => one.state === 'approved');
    const answer = await agent
      .get(`${v1}/change-orders/${approved.id}/versions/1/pdf`)
      .buffer(true)
      .parse(binary)
      .expect(200);
    const pdf = await pdfOf(answer);
    for (const words of [
      'Approved',
      brandmeerHouse.project.clientName,
      'Name typed as signature',
      'I want to answer online.',
    ]) {
      expect(pdf.text).toContain(words);
    }
    await agent.get(`${v1}/change-orders/${approved.id}/versions/2/pdf`).expect(404);
  });

  test('carries nothing of the camera: neither maker nor time of taking nor place', async () => {
    const open = await openClient();
    const answer = await api
      .http()
      .get(`${open.path}/pdf`)
      .set('cookie', open.cookie)
      .buffer(true)
      .parse(binary)
      .expect(200);
    const bytes = (answer.body as Buffer).toString('latin1');
    for (const mark of ['Exif', 'Invented', 'Drawn', 'DateTimeOriginal']) expect(bytes).not.toContain(mark);
  });

  test('a photo of the letter is shown to its client, and no other photo is', async () => {
    const open = await openClient();
    const letter = (await api.http().get(open.path).set('cookie', open.cookie).expect(200)).body;
    const own = new Set(
      letter.document.items.flatMap((item: { photos: { id: string }[] }) => item.photos.map(({ id }) => id)),
    );
    const [shown] = own;
    const picture = await api
      .http()
      .get(`${open.path}/photos/${shown}?size=thumb`)
      .set('cookie', open.cookie)
      .expect(200);
    expect(picture.headers['content-type']).toBe('image/jpeg');
    const { rows } = await api.platform.database.ownerPool.query<{ id: string }>('select id from photo');
    const other = rows.find(({ id }) => !own.has(id));
    await api.http().get(`${open.path}/photos/${other?.id}`).set('cookie', open.cookie).expect(404);
  });
});

// biome-ignore lint/suspicious/noExplicitAny: the answers are checked where they are used
type Row = Record<string, any>;

/** The demo's projects with their findings, the newest first. */
async function projectsOf(agent: Awaited<ReturnType<typeof http>>): Promise<{ id: string; findings: Row[] }[]> {
  const projects = (await agent.get(`${v1}/projects`).expect(200)).body.items as Row[];
  return Promise.all(
    projects.map(async ({ id }) => ({
      id,
      findings: (await agent.get(`${v1}/projects/${id}/findings?limit=200`).expect(200)).body.items,
    })),
  );
}

const overlapIn2 = (a: Row = {}, b: Row = {}): number =>
  Math.max(0, Math.min(a.xIn + a.widthIn, b.xIn + b.widthIn) - Math.max(a.xIn, b.xIn)) *
  Math.max(0, Math.min(a.yIn + a.heightIn, b.yIn + b.heightIn) - Math.max(a.yIn, b.yIn));

/** The bytes themselves: the default parser would read a PDF as text. */
function binary(response: unknown, done: (error: Error | null, body: Buffer) => void): void {
  buffer(response as Readable).then(
    (bytes) => done(null, bytes),
    (error) => done(error, Buffer.alloc(0)),
  );
}
