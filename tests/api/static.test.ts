import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { brotliCompressSync, gzipSync } from 'node:zlib';
import Fastify from 'fastify';
import { afterAll, describe, expect, test } from 'vitest';
import { dashboardFiles } from '../../apps/api/src/plugins/static.ts';

const folder = mkdtempSync(join(tmpdir(), 'underlath-static-'));
const script = `export const wall = '${'stud '.repeat(400)}';`;
mkdirSync(join(folder, 'assets'));
for (const [path, text] of [
  ['assets/app-1a2b.js', script],
  ['index.html', '<title>desk</title>'],
  ['client.html', '<title>letter</title>'],
] as const) {
  writeFileSync(join(folder, path), text);
  writeFileSync(join(folder, `${path}.br`), brotliCompressSync(text));
  writeFileSync(join(folder, `${path}.gz`), gzipSync(text));
}
const app = Fastify();
await app.register(dashboardFiles, { folder });
const url = await app.listen({ port: 0, host: '127.0.0.1' });
afterAll(async () => {
  await app.close();
  rmSync(folder, { recursive: true, force: true });
});

/** `fetch` unpacks what it gets, so the body tells whether it was packed as the header says. */
const get = async (path: string, encodings: string) => {
  const answer = await fetch(url + path, { headers: { 'accept-encoding': encodings } });
  return {
    encoding: answer.headers.get('content-encoding'),
    type: answer.headers.get('content-type'),
    vary: answer.headers.get('vary'),
    kept: answer.headers.get('cache-control'),
    text: await answer.text(),
  };
};

test('a script goes out packed to who takes it, and as it is to who does not', async () => {
  const kept = 'public, max-age=31536000, immutable';
  for (const [asked, encoding] of [
    ['gzip, deflate, br', 'br'],
    ['gzip', 'gzip'],
    ['identity', null],
  ] as const) {
    const answer = await get('/assets/app-1a2b.js', asked);
    expect(answer).toMatchObject({ encoding, kept, text: script });
    expect(answer.type).toContain('javascript');
    if (encoding) expect(answer.vary?.toLowerCase()).toContain('accept-encoding');
  }
});

test('pages are packed too and still asked for anew each time', async () => {
  expect(await get('/projects/one', 'br')).toMatchObject({
    encoding: 'br',
    kept: 'no-cache',
    text: '<title>desk</title>',
  });
  const letter = await get('/c', 'gzip');
  expect(letter).toMatchObject({ encoding: 'gzip', kept: 'no-cache', text: '<title>letter</title>' });
  expect(letter.type).toContain('text/html');
});

describe('an address', () => {
  const ask = (path: string, accept = '*/*') => fetch(url + path, { headers: { accept }, redirect: 'manual' });

  test.each(['/', '/projects/one', '/checks/cut.top-plate', '/crew/one/places/two', '/people-log'])(
    '%s is the app’s, and gets its page',
    async (path) => {
      const answer = await ask(path);
      expect([answer.status, await answer.text()]).toEqual([200, '<title>desk</title>']);
    },
  );

  test.each(['/assets/nothing.js', '/.env', '/favicon.ico', '/.git/config', '/wp-login.php', '/people.html'])(
    '%s is no file here, and is not found',
    async (path) => {
      for (const accept of ['*/*', 'text/html']) expect((await ask(path, accept)).status).toBe(404);
      expect(await (await ask(path)).text()).not.toContain('<title>');
    },
  );

  test('that a person mistyped gets the app’s page for that, as not found', async () => {
    const answer = await ask('/proyects', 'text/html,application/xhtml+xml');
    expect([answer.status, await answer.text()]).toEqual([404, '<title>desk</title>']);
    expect((await ask('/proyects')).status).toBe(404);
  });
});
