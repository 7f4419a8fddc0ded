import { createHash, randomBytes } from 'node:crypto';
import { mkdtempSync, readdirSync, rmSync, utimesSync } from 'node:fs';
import http from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Photo } from '@underlath/contract';
import { afterEach, describe, expect, inject, test } from 'vitest';
import { cloneDatabase } from '../support/database.ts';
import { runToEnd, type Serving, startServing } from '../support/serve.ts';
import { fixture, newProject } from '../support/site.ts';

const folders: string[] = [];
const newFolder = () => {
  const folder = mkdtempSync(join(tmpdir(), 'underlath-kill-'));
  folders.push(folder);
  return folder;
};
const running: Serving[] = [];
const start = async (env: NodeJS.ProcessEnv) => {
  const serving = await startServing(env);
  running.push(serving);
  return serving;
};

afterEach(async () => {
  for (const serving of running.splice(0)) if (serving.child.exitCode === null) await serving.end('SIGTERM');
  for (const folder of folders.splice(0)) rmSync(folder, { recursive: true, force: true });
});

const sha256 = (bytes: Uint8Array) => createHash('sha256').update(bytes).digest('hex');

describe('a wrong setting', () => {
  test.each([
    ['PORT', 'eighty'],
    ['STORAGE_URL', 'ftp://photos'],
    ['DATABASE_URL', 'mysql://root@localhost/x'],
    ['SEED', 'everything'],
  ])('%s=%s stops the start with a sentence that names it', async (name, value) => {
    const { code, printed } = await runToEnd('start', { DATA_DIR: newFolder(), [name]: value });
    expect(code).not.toBe(0);
    expect(printed).toContain(`${name} is "${value}", which is not allowed; it takes `);
    expect(printed).not.toContain('    at ');
  });
});

describe('with DATABASE_URL', () => {
  test('nothing is seeded unless asked, and never into what holds something', async () => {
    const clone = await cloneDatabase(inject('postgresUrl'));
    const env = { DATABASE_URL: clone.databaseUrl, DATA_DIR: newFolder(), SEED: '' };
    try {
      const server = await start(env);
      const signUp = { companyName: 'Kept Carpentry', name: 'Kit Kept', email: 'kit@kept.example', password };
      await post(server.url, '/companies', signUp);
      expect(await server.end('SIGTERM')).toBe(0);
      const seeded = await runToEnd('seed', env);
      expect(seeded.code).not.toBe(0);
      expect(seeded.printed).toContain('The database is not empty');
    } finally {
      await clone.drop();
    }
  }, 90_000);
});

const password = 'a rafter and a collar tie';

describe('a server that is killed in the middle of uploads', () => {
  test('has every photo it said it had, no half one, and makes the smaller pictures after it is back', async () => {
    const env = { DATA_DIR: newFolder() };
    const first = await start(env);
    const signUp = { companyName: 'Kept Carpentry', name: 'Kit Kept', email: 'kit@kept.example', password };
    const { cookie } = await post(first.url, '/companies', signUp);
    const { body: project } = await post(first.url, '/projects', newProject, cookie);
    const told = new Map<string, string>();
    const picture = fixture('no-zone.jpg');
    const uploads = Array.from({ length: 24 }, async () => {
      // Bytes behind the end of the picture make each of them another photo.
      const bytes = Buffer.concat([picture, randomBytes(400_000)]);
      const photo = await upload(first.url, project.id, bytes, cookie);
      if (photo) told.set(photo.id, sha256(bytes));
      if (told.size === 5) first.child.kill('SIGKILL');
    });
    await Promise.all(uploads);
    expect(told.size).toBeGreaterThanOrEqual(5);

    const second = await start(env);
    const photos = await allPhotos(second.url, project.id, cookie);
    for (const [id, hash] of told) expect(photos.find((photo) => photo.id === id)?.sha256).toBe(hash);
    for (const photo of photos) {
      const original = await fetch(`${second.url}/api/v1/photos/${photo.id}/original`, { headers: { cookie } });
      expect(sha256(new Uint8Array(await original.arrayBuffer()))).toBe(photo.sha256);
    }
    await expect
      .poll(async () => (await allPhotos(second.url, project.id, cookie)).every(isReady), { timeout: 60_000 })
      .toBe(true);
    expect(await second.end('SIGTERM')).toBe(0);

    // What was half received lies apart for a day, since another server may be receiving there too, and is then cleared.
    const incoming = join(env.DATA_DIR, 'files/incoming');
    const twoDaysAgo = new Date(Date.now() - 2 * 86_400_000);
    for (const name of readdirSync(incoming)) utimesSync(join(incoming, name), twoDaysAgo, twoDaysAgo);
    const third = await start(env);
    expect(readdirSync(incoming)).toEqual([]);
    expect(await third.end('SIGTERM')).toBe(0);
  }, 180_000);
});

describe('SIGTERM', () => {
  test('lets a running upload finish, ends with 0, and the next start has it', async () => {
    const env = { DATA_DIR: newFolder() };
    const first = await start(env);
    const signUp = { companyName: 'Kept Carpentry', name: 'Kit Kept', email: 'kit@kept.example', password };
    const { cookie } = await post(first.url, '/companies', signUp);
    const { body: project } = await post(first.url, '/projects', newProject, cookie);
    const { sending, finish } = await beginUpload(first.url, project.id, fixture('no-zone.jpg'), cookie);
    const stopped = first.end('SIGTERM');
    await expect.poll(() => fetch(`${first.url}/livez`).then(ignore, () => 'refused')).toBe('refused');
    finish();
    const [code, photo] = await Promise.all([stopped, sending]);
    expect(code).toBe(0);
    const second = await start(env);
    const ids = (await allPhotos(second.url, project.id, cookie)).map(({ id }) => id);
    expect(ids).toEqual([photo.id]);
  }, 120_000);
});

const ignore = () => 'answered';
const isReady = ({ derivative }: Photo) => derivative.state === 'ready';

async function post(url: string, path: string, body: object, cookie = '') {
  const answer = await fetch(`${url}/api/v1${path}`, {
    method: 'POST',
    headers: { 'content-type': 'application/json', cookie },
    body: JSON.stringify(body),
  });
  expect(answer.status, await answer.clone().text()).toBe(201);
  const set = answer.headers.getSetCookie().map((one) => one.split(';')[0]);
  return { body: (await answer.json()) as { id: string }, cookie: set.join('; ') };
}

/** The photo as the server confirmed it, or undefined when the connection died before that. */
async function upload(url: string, projectId: string, bytes: Uint8Array, cookie: string): Promise<Photo | undefined> {
  const form = new FormData();
  form.set('file', new Blob([new Uint8Array(bytes)]), 'photo.jpg');
  try {
    const answer = await fetch(`${url}/api/v1/projects/${projectId}/photos`, {
      method: 'POST',
      headers: { cookie },
      body: form,
    });
    return answer.status === 201 ? ((await answer.json()) as Photo) : undefined;
  } catch {
    return undefined;
  }
}

async function allPhotos(url: string, projectId: string, cookie: string): Promise<Photo[]> {
  const answer = await fetch(`${url}/api/v1/projects/${projectId}/photos?limit=200`, { headers: { cookie } });
  expect(answer.status).toBe(200);
  return ((await answer.json()) as { items: Photo[] }).items;
}

/** An upload of which half has been sent; `finish` sends the rest. */
async function beginUpload(url: string, projectId: string, bytes: Buffer, cookie: string) {
  const boundary = 'half-and-half';
  const body = Buffer.concat([
    Buffer.from(`--${boundary}\r\ncontent-disposition: form-data; name="file"; filename="photo.jpg"\r\n\r\n`),
    bytes,
    Buffer.from(`\r\n--${boundary}--\r\n`),
  ]);
  const request = http.request(`${url}/api/v1/projects/${projectId}/photos`, {
    method: 'POST',
    agent: new http.Agent({ keepAlive: true }),
    headers: { cookie, 'content-type': `multipart/form-data; boundary=${boundary}`, 'content-length': body.length },
  });
  const half = Math.floor(body.length / 2);
  const sending = new Promise<Photo>((done, fail) => {
    request.once('error', fail);
    request.once('response', async (response) => {
      const text = Buffer.concat(await response.toArray()).toString();
      if (response.statusCode === 201) done(JSON.parse(text) as Photo);
      else fail(new Error(`${response.statusCode}: ${text}`));
    });
  });
  await new Promise<void>((sent) => request.write(body.subarray(0, half), () => sent()));
  return { sending, finish: () => request.end(body.subarray(half)) };
}
