import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { type Person, startTestApi, type TestApi } from '../support/api.ts';
import { type CuttableLine, openLine } from '../support/cuttable-line.ts';

let line: CuttableLine;
let api: TestApi;
let owner: Person;

beforeAll(async () => {
  api = await startTestApi({
    databaseVia: async (databaseUrl) => {
      const url = new URL(databaseUrl);
      line = await openLine({ host: url.hostname, port: Number(url.port) });
      url.port = String(line.port);
      return url.href;
    },
  });
  owner = await api.signIn();
});
afterAll(async () => {
  await line.mend();
  await api.close();
  await line.close();
});

const projects = () => api.http(owner).get('/api/v1/projects');

async function untilWell(): Promise<void> {
  for (let turn = 0; turn < 100; turn++) {
    if ((await projects()).status === 200) return;
    await new Promise((done) => setTimeout(done, 100));
  }
  throw new Error('the server did not recover');
}

describe('a database that is away', () => {
  test('is told as 503 with Retry-After while the process stays alive, and forgotten once it is back', async () => {
    expect((await projects()).status).toBe(200);
    await line.cut();
    const away = await projects();
    expect([away.status, away.body.type]).toEqual([503, 'urn:underlath:problem:database-away']);
    expect(away.headers['retry-after']).toBe('5');
    expect((await api.http().get('/livez')).status).toBe(200);
    const ready = await api.http().get('/readyz');
    expect([ready.status, ready.body.database, ready.body.fileStore]).toEqual([503, 'failing', 'ok']);
    await line.mend();
    await untilWell();
    expect((await api.http().get('/readyz')).status).toBe(200);
  });

  test('leaves nothing of a write that could not be made', async () => {
    const project = { name: 'Elm Street', siteAddress: '12 Elm Street', clientName: 'Ines Roth', stories: 2 };
    await line.cut();
    const refused = await api.http(owner).post('/api/v1/projects').send(project);
    expect(refused.status).toBe(503);
    await line.mend();
    await untilWell();
    expect((await projects()).body.items).toEqual([]);
  });

  test('that hangs is given up on within half a minute, and answered as away', async () => {
    line.hang();
    const started = Date.now();
    const away = await projects();
    expect([away.status, away.body.type]).toEqual([503, 'urn:underlath:problem:database-away']);
    expect(Date.now() - started).toBeLessThan(30_000);
    expect((await api.http().get('/readyz')).status).toBe(503);
    await line.mend();
    await untilWell();
  }, 60_000);
});
