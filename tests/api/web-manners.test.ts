import { connect } from 'node:net';
import { routes } from '@underlath/contract';
import Fastify from 'fastify';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { conditional } from '../../apps/api/src/plugins/conditional.ts';
import { type Person, startTestApi, type TestApi } from '../support/api.ts';
import { newProject, type Site, startSite, v1 } from '../support/site.ts';

let api: TestApi;
let site: Site;
let owner: Person;

beforeAll(async () => {
  api = await startTestApi();
  site = await startSite(api);
  owner = site.owner;
});
afterAll(() => api.close());

const get = (path: string, headers: Record<string, string> = {}) =>
  fetch(api.url + path, { headers: { cookie: owner.cookie, ...headers } });

describe('what a browser is told', () => {
  test('is that the camera is for this site alone, and no other part of the device for anybody', async () => {
    const policy = (await get('/livez')).headers.get('permissions-policy')?.split(', ') ?? [];
    expect(policy.filter((one) => !one.endsWith('=()'))).toEqual(['camera=(self)']);
    expect(policy).toEqual(expect.arrayContaining(['microphone=()', 'geolocation=()', 'usb=()']));
  });

  test('over https is to come back by https, to this host and those below it', async () => {
    const secure = await startTestApi({ config: { publicUrl: 'https://marsh.example' } });
    const answer = await fetch(`${secure.url}/livez`);
    expect(answer.headers.get('strict-transport-security')).toBe('max-age=63072000; includeSubDomains');
    await secure.close();
    expect((await get('/livez')).headers.get('strict-transport-security')).toBeNull();
  });
});

describe('fixed addresses', () => {
  test('security.txt has what RFC 9116 asks for, and says when nobody was named', async () => {
    const answer = await get('/.well-known/security.txt');
    const text = await answer.text();
    expect([answer.status, answer.headers.get('content-type')]).toEqual([200, 'text/plain; charset=utf-8']);
    expect(text).toMatch(/^# Whoever runs this server has named nobody/);
    const expires = Date.parse(/^Expires: (.+)$/m.exec(text)?.[1] ?? '');
    expect(expires).toBeGreaterThan(Date.now());
    expect(expires).toBeLessThan(Date.now() + 365 * 86_400_000);
    const named = await startTestApi({ config: { securityContact: 'mailto:guard@marsh.example' } });
    expect(await (await fetch(`${named.url}/.well-known/security.txt`)).text()).toMatch(/^Contact: mailto:guard@/);
    await named.close();
  });

  test('robots.txt leaves the open pages open and nothing else', async () => {
    expect(await (await get('/robots.txt')).text()).toBe(
      'User-agent: *\nAllow: /checks\nAllow: /assets/\nDisallow: /\n',
    );
  });
});

describe('what is read again', () => {
  test('is not sent again while it is the same, and is once it changed', async () => {
    const path = `${v1}/projects/${site.project.id}`;
    const first = await get(path);
    const etag = first.headers.get('etag') ?? '';
    expect(etag).toMatch(/^"\d+\.[\w-]{16}"$/);
    for (const known of [etag, `W/${etag}`, `"other", ${etag}`, '*']) {
      const again = await get(path, { 'if-none-match': known });
      expect([again.status, await again.text()]).toEqual([304, '']);
      expect(again.headers.get('etag')).toBe(etag);
    }
    const change = { method: 'PATCH', body: '{"name":"Elder Street"}' };
    const headers = { cookie: owner.cookie, 'content-type': 'application/json', 'if-match': etag };
    expect((await fetch(api.url + path, { ...change, headers })).status).toBe(200);
    expect((await get(path, { 'if-none-match': etag })).status).toBe(200);
    expect((await fetch(api.url + path, { ...change, headers })).status).toBe(412);
  });

  test('is sent when its words are others, though its version is the same', async () => {
    const app = Fastify();
    await app.register(conditional);
    let words = 'one crew';
    app.get('/', async (_request, reply) => reply.header('etag', '"7"').send({ version: 7, words }));
    const ask = (known?: string) => app.inject({ url: '/', headers: known ? { 'if-none-match': known } : {} });
    const etag = String((await ask()).headers.etag);
    expect((await ask(etag)).statusCode).toBe(304);
    words = 'another crew';
    const after = await ask(etag);
    expect([after.statusCode, after.json().words]).toEqual([200, 'another crew']);
    await app.close();
  });
});

describe('a request that says more than can be taken', () => {
  test.each([
    [`${v1}/findings`, 'serverity=repair'],
    [`${v1}/photos`, 'stagge=found'],
    ['/', 'limitt=5'],
  ])('an unknown parameter of %s is refused by name', async (below, query) => {
    const path = below === '/' ? `${v1}/projects` : `${v1}/projects/${site.project.id}${below.slice(v1.length)}`;
    const answer = await get(`${path}?${query}`);
    const body = await answer.json();
    expect([answer.status, body.type]).toEqual([422, 'urn:underlath:problem:invalid-input']);
    expect(body.errors).toEqual([
      { pointer: `query/${query.split('=')[0]}`, detail: `there is no field called "${query.split('=')[0]}"` },
    ]);
  });

  test('a parameter where none is taken is refused too', async () => {
    expect((await get(`${v1}/company?full=yes`)).status).toBe(422);
  });

  test('plain text is another kind of body, 415', async () => {
    const headers = { cookie: owner.cookie, 'content-type': 'text/plain' };
    const answer = await fetch(`${api.url}${v1}/projects`, { method: 'POST', headers, body: 'a house' });
    expect([answer.status, (await answer.json()).type]).toEqual([415, 'urn:underlath:problem:unsupported-media']);
  });

  test('a cursor of another list is refused', async () => {
    for (const turn of [1, 2]) {
      await site.finding();
      await api
        .http(owner)
        .post(`${v1}/projects`)
        .send({ ...newProject, name: `House ${turn}` })
        .expect(201);
    }
    const { next } = await (await get(`${v1}/projects?limit=1`)).json();
    expect((await get(`${v1}/projects?limit=1&cursor=${next}`)).status).toBe(200);
    for (const list of ['findings', 'photos', 'record']) {
      const answer = await get(`${v1}/projects/${site.project.id}/${list}?cursor=${next}`);
      expect([list, answer.status, (await answer.json()).errors[0].pointer]).toEqual([list, 422, 'query/cursor']);
    }
    expect((await get(`${v1}/people-log?cursor=${next}`)).status).toBe(422);
  });
});

describe('what is no request of HTTP', () => {
  const send = (text: string) =>
    new Promise<string>((done, fail) => {
      const { hostname, port } = new URL(api.url);
      const socket = connect(Number(port), hostname, () => socket.write(text));
      let heard = '';
      socket.on('data', (chunk) => {
        heard += chunk;
      });
      socket.on('end', () => done(heard));
      socket.on('error', fail);
    });

  test.each([
    ['a line that is none', 'STUD AND PLATE\r\n\r\n', 400],
    ['headers without end', `GET / HTTP/1.1\r\nhost: x\r\nx-long: ${'x'.repeat(40_000)}\r\n\r\n`, 431],
  ])('%s is answered with a problem document', async (_what, text, status) => {
    const heard = await send(text);
    expect(heard).toMatch(new RegExp(`^HTTP/1.1 ${status} `));
    expect(heard).toContain('content-type: application/problem+json');
    expect(JSON.parse(heard.slice(heard.indexOf('\r\n\r\n') + 4))).toMatchObject({
      type: 'urn:underlath:problem:malformed-request',
      status,
    });
  });
});

describe('the description of the API', () => {
  const read = async () => (await get(`${v1}/openapi.json`)).json();

  test('names its schemas, and refers to none that it lacks', async () => {
    const document = await read();
    expect(Object.keys(document.components.schemas)).toEqual(expect.arrayContaining(['Project', 'Photo', 'Problem']));
    const text = JSON.stringify(document);
    for (const [, kind = '', name = ''] of text.matchAll(/"#\/components\/(\w+)\/([^"]+)"/g))
      expect(document.components[kind], name).toHaveProperty(name);
    expect(text).not.toContain('"x-problems"');
    // It was 787 kB before its parts had names.
    expect(text.length).toBeLessThan(700_000);
  });

  test('says the problems and the form of each operation', async () => {
    const { paths, components } = await read();
    const upload = paths['/api/v1/projects/{projectId}/photos'].post;
    const form = upload.requestBody.content['multipart/form-data'].schema;
    expect(Object.keys(form.properties)).toEqual([
      'id',
      'sha256',
      'findingId',
      'locationId',
      'stage',
      'caption',
      'file',
    ]);
    expect(Object.keys(upload.responses)).toEqual(
      expect.arrayContaining(['200', '201', '401', '403', '413', '415', '507']),
    );
    const change = paths['/api/v1/projects/{projectId}'].patch;
    expect(change.responses['412']).toEqual({ $ref: '#/components/responses/Problem412' });
    expect(Object.keys(components.responses.Problem412.content)).toEqual(['application/problem+json']);
    const operations = Object.values(paths).flatMap((methods) => Object.values(methods as object));
    expect(operations).toHaveLength(Object.keys(routes).length);
    for (const { responses } of operations) expect(Object.keys(responses)).toContain('429');
  });

  test('lists each operation under one part of the work', async () => {
    const { paths, tags } = await read();
    const names = tags.map(({ name }: { name: string }) => name);
    const operations = Object.values(paths).flatMap((methods) => Object.values(methods as object));
    for (const operation of operations) {
      expect(operation.tags, operation.operationId).toHaveLength(1);
      expect(names).toContain(operation.tags[0]);
    }
    expect(new Set(operations.map((operation) => operation.tags[0])).size).toBe(names.length);
  });

  test('names the cookies as they are', async () => {
    const secure = await startTestApi({ config: { publicUrl: 'https://marsh.example' } });
    const { components } = await (await fetch(`${secure.url}${v1}/openapi.json`)).json();
    expect(components.securitySchemes.session.name).toBe('__Host-underlath_session');
    await secure.close();
  });

  test('is written once, packed for who takes it, and not sent again', async () => {
    const packed = await get(`${v1}/openapi.json`, { 'accept-encoding': 'gzip' });
    const plain = await get(`${v1}/openapi.json`, { 'accept-encoding': 'identity' });
    expect(packed.headers.get('content-encoding')).toBe('gzip');
    expect(await packed.text()).toBe(await plain.text());
    const etag = plain.headers.get('etag') ?? '';
    expect((await get(`${v1}/openapi.json`, { 'if-none-match': etag })).status).toBe(304);
  });

  test('has a page that loads from this server alone', async () => {
    const page = await get('/api/reference/');
    const html = await page.text();
    expect([page.status, page.headers.get('content-security-policy')]).toEqual([
      200,
      expect.stringContaining("script-src 'self';"),
    ]);
    expect(html).not.toMatch(/https?:\/\//);
    const files = [...html.matchAll(/(?:href|src)="\.?([^"]+)"/g)].map(([, path]) => path);
    expect(files.length).toBeGreaterThan(3);
    for (const file of files) expect((await get(`/api/reference${file}`)).status, file).toBe(200);
    const script = await (await get('/api/reference/static/swagger-initializer.js')).text();
    expect(script).toContain('validatorUrl: null');
    expect((await get('/api/reference/json')).url).toBe(`${api.url}${v1}/openapi.json`);
    expect((await get('/api/reference/yaml')).status).toBe(404);
  });
});

test('an address that cannot be read is answered with the same manners as any other', async () => {
  const answer = await get('/%zz');
  expect([answer.status, answer.headers.get('content-type')]).toEqual([400, 'application/problem+json']);
  expect([answer.headers.get('x-content-type-options'), answer.headers.get('cache-control')]).toEqual([
    'nosniff',
    'no-store',
  ]);
});
