import type { Readable } from 'node:stream';
import { buffer } from 'node:stream/consumers';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { seedDemo } from '../../seed/index.ts';
import { startTestApi, type TestApi } from '../support/api.ts';
import { readPdf } from '../support/pdf-text.ts';

const v1 = '/api/v1';
let api: TestApi;
let demo: Awaited<ReturnType<typeof seedDemo>>;
let seconds: number;

beforeAll(async () => {
  api = await startTestApi();
  const started = Date.now();
  demo = await seedDemo(api.platform, api.deps);
  seconds = (Date.now() - started) / 1000;
});
afterAll(() => api.close());

const http = async () => {
  const { email, password } = demo.signIns.find(({ role }) => role === 'estimator') ?? { email: '', password: '' };
  const signedIn = await api.http().post(`${v1}/session`).send({ email, password }).expect(200);
  return api.http({ cookie: signedIn.get('set-cookie')?.[0]?.split(';')[0] ?? '' });
};
const openClient = async () => {
  const token = new URL(demo.clientPath, api.url).hash.slice(1);
  const opened = await api.http().post(`${v1}/client/session`).send({ token }).expect(204);
  return opened.get('set-cookie')?.[0]?.split(';')[0] ?? '';
};
const pdfOf = (answer: { body: unknown }) => readPdf(answer.body as Buffer);

describe('the demo', () => {
  test('shows every severity, a wall with several failed links, and one change order of each kind', async () => {
    const agent = await http();
    const projects = await agent.get(`${v1}/projects`).expect(200);
    const [project] = projects.body.items;
    const findings = (await agent.get(`${v1}/projects/${project.id}/findings?limit=200`).expect(200)).body.items;
    const count = (severity: string) =>
      findings.filter((one: { severity: string }) => one.severity === severity).length;
    expect(['make-safe', 'engineer', 'repair', 'record'].map((severity) => count(severity) > 0)).toEqual([
      true,
      true,
      true,
      true,
    ]);
    const checks = new Set(findings.map((one: { checkId: string }) => one.checkId));
    expect(checks.size).toBe(9);
    const garage = findings.filter((one: { locationName: string }) => one.locationName === 'Garage, north wall');
    expect(garage.map((one: { verdict: string }) => one.verdict)).toEqual([
      'fails',
      'fails',
      'fails',
      'fails',
      'fails',
    ]);
    const orders = (await agent.get(`${v1}/projects/${project.id}/change-orders`).expect(200)).body.items;
    expect(orders.map((one: { state: string }) => one.state).sort()).toEqual(['approved', 'draft', 'sent']);
    const record = await agent.get(`${v1}/projects/${project.id}/record/verify`).expect(200);
    expect(record.body).toMatchObject({ ok: true, faults: [] });
    console.info(`demo written in ${seconds.toFixed(1)} s`);
  });

  test('is refused where anything is already', async () => {
    await expect(seedDemo(api.platform, api.deps)).rejects.toThrow('The database is not empty');
  });
});

describe('the PDF of a sent version', () => {
  test('is tagged, has a title and a language, and carries hash, record head, total, photos and sources', async () => {
    const cookie = await openClient();
    const letter = (await api.http().get(`${v1}/client/letter`).set('cookie', cookie).expect(200)).body;
    const answer = await api
      .http()
      .get(`${v1}/client/letter.pdf?locale=en`)
      .set('cookie', cookie)
      .buffer(true)
      .parse(binary)
      .expect(200);
    expect(answer.headers['content-type']).toBe('application/pdf');
    const pdf = await pdfOf(answer);
    expect(pdf).toMatchObject({ language: 'en-US', isTagged: true });
    expect(pdf.title).toBe(`Change order 2, version 1: ${letter.document.wording.headline.en}`);
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
    const cookie = await openClient();
    const letter = (await api.http().get(`${v1}/client/letter`).set('cookie', cookie).expect(200)).body;
    const answer = await api
      .http()
      .get(`${v1}/client/letter.pdf?locale=es`)
      .set('cookie', cookie)
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
    for (const words of ['Approved', 'Philippa Arden-Rowe', 'Name typed as signature', 'I want to answer online.']) {
      expect(pdf.text).toContain(words);
    }
    await agent.get(`${v1}/change-orders/${approved.id}/versions/2/pdf`).expect(404);
  });

  test('carries nothing of the camera: neither maker nor time of taking nor place', async () => {
    const cookie = await openClient();
    const answer = await api
      .http()
      .get(`${v1}/client/letter.pdf`)
      .set('cookie', cookie)
      .buffer(true)
      .parse(binary)
      .expect(200);
    const bytes = (answer.body as Buffer).toString('latin1');
    for (const mark of ['Exif', 'Invented', 'Drawn', 'DateTimeOriginal']) expect(bytes).not.toContain(mark);
  });

  test('a photo of the letter is shown to its client, and no other photo is', async () => {
    const cookie = await openClient();
    const letter = (await api.http().get(`${v1}/client/letter`).set('cookie', cookie).expect(200)).body;
    const own = new Set(
      letter.document.items.flatMap((item: { photos: { id: string }[] }) => item.photos.map(({ id }) => id)),
    );
    const [shown] = own;
    const picture = await api.http().get(`${v1}/client/photos/${shown}?size=thumb`).set('cookie', cookie).expect(200);
    expect(picture.headers['content-type']).toBe('image/jpeg');
    const { rows } = await api.platform.database.ownerPool.query<{ id: string }>('select id from photo');
    const other = rows.find(({ id }) => !own.has(id));
    await api.http().get(`${v1}/client/photos/${other?.id}`).set('cookie', cookie).expect(404);
  });
});

/** The bytes themselves: the default parser would read a PDF as text. */
function binary(response: unknown, done: (error: Error | null, body: Buffer) => void): void {
  buffer(response as Readable).then(
    (bytes) => done(null, bytes),
    (error) => done(error, Buffer.alloc(0)),
  );
}
