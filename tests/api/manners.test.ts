import Fastify, { type FastifyInstance } from 'fastify';
import { serializerCompiler, validatorCompiler } from 'fastify-type-provider-zod';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import * as z from 'zod';
import { buildApp } from '../../apps/api/src/app.ts';
import type { Feature } from '../../apps/api/src/deps.ts';
import { DatabaseAwayError } from '../../apps/api/src/platform/database/database-errors.ts';
import { StorageFullError } from '../../apps/api/src/platform/file-store/store-errors.ts';
import { readIfMatch } from '../../apps/api/src/plugins/etag.ts';
import { permissions } from '../../apps/api/src/plugins/permissions.ts';
import { assertVersion } from '../../apps/api/src/shared/versions.ts';
import { type Person, startTestApi, type TestApi } from '../support/api.ts';

/** Routes that misbehave on purpose, mounted in the real app beside the real features. */
const odd: Feature = {
  name: 'odd',
  register: (app) => {
    let made = 0;
    const body = z.strictObject({ name: z.string().min(1), lengthIn: z.number().positive() });
    const office = { roles: ['owner', 'estimator'] } as const;
    app.post('/api/v1/odd', { config: { permission: office, idempotent: true }, schema: { body } }, async (request) => {
      made += 1;
      if ((request.body as { name: string }).name === 'slow') await new Promise((done) => setTimeout(done, 400));
      if ((request.body as { name: string }).name === 'full') throw new StorageFullError('full');
      return { made, who: request.principal?.kind };
    });
    app.patch('/api/v1/odd', { config: { permission: office } }, async (request) => {
      assertVersion(readIfMatch(request), 7);
      return { version: 8 };
    });
    app.get('/api/v1/odd/away', { config: { permission: 'public' } }, async () => {
      throw new DatabaseAwayError('gone');
    });
    app.get('/api/v1/odd/broken', { config: { permission: 'public' } }, async () => {
      throw new Error('the password is hunter2');
    });
    app.get('/api/v1/odd/mine', { config: { permission: 'session' } }, async (request) => request.principal);
  },
};

let api: TestApi;
let app: FastifyInstance;
let url: string;
let owner: Person;
let crew: Person;

beforeAll(async () => {
  api = await startTestApi();
  app = await buildApp(api.platform, { ...api.deps, features: [odd] });
  url = await app.listen({ port: 0, host: '127.0.0.1' });
  owner = await api.signIn({ role: 'owner' });
  crew = await api.signIn({ role: 'crew', companyId: owner.companyId });
});
afterAll(async () => {
  await app.close();
  await api.close();
});

async function call(
  person: Person | null,
  method: string,
  path: string,
  body?: unknown,
  headers: Record<string, string> = {},
) {
  const answer = await fetch(`${url}/api/v1${path}`, {
    method,
    headers: {
      ...(person && { cookie: person.cookie }),
      ...(body !== undefined && { 'content-type': 'application/json' }),
      ...headers,
    },
    ...(body !== undefined && { body: typeof body === 'string' ? body : JSON.stringify(body) }),
  });
  return { status: answer.status, headers: answer.headers, body: JSON.parse(await answer.text()) };
}

const good = { name: 'stud', lengthIn: 92.625 };

describe('problem documents', () => {
  test('a field that does not fit is named by its pointer, an unknown one too', async () => {
    const { status, body } = await call(owner, 'POST', '/odd', { name: 'stud', lengthIn: 'long', color: 'red' });
    expect(status).toBe(422);
    expect(body.type).toBe('urn:underlath:problem:invalid-input');
    expect(body.errors.map((one: { pointer: string }) => one.pointer).sort()).toEqual(['/color', '/lengthIn']);
    expect(body.errors.find((one: { pointer: string }) => one.pointer === '/lengthIn').detail).toMatch(
      /number.*string/,
    );
  });

  test('of many unknown names the first twenty are named, and the rest counted', async () => {
    const many = Object.fromEntries(Array.from({ length: 5000 }, (_, at) => [`n${at}`, 1]));
    const { status, body } = await call(owner, 'POST', '/odd', { ...good, ...many });
    expect(status).toBe(422);
    expect(body.errors).toHaveLength(21);
    expect(body.errors[19]).toEqual({ pointer: '/n19', detail: 'there is no field called "n19"' });
    expect(body.errors[20]).toEqual({ pointer: '', detail: 'and 4980 more fields that there are not' });
    const long = await call(owner, 'POST', '/odd', { ...good, ['x'.repeat(100_000)]: 1 });
    expect(JSON.stringify(long.body).length).toBeLessThan(1000);
  });

  test('unreadable JSON is 400, another kind of body 415, a body over a megabyte 413', async () => {
    expect((await call(owner, 'POST', '/odd', '{"name": ')).body.type).toMatch(/malformed-request$/);
    const xml = await call(owner, 'POST', '/odd', '<stud/>', { 'content-type': 'text/xml' });
    expect([xml.status, xml.body.type]).toEqual([415, 'urn:underlath:problem:unsupported-media']);
    const big = await call(owner, 'POST', '/odd', { name: 'x'.repeat(1_100_000), lengthIn: 1 });
    expect([big.status, big.body.type]).toEqual([413, 'urn:underlath:problem:too-large']);
  });

  test('a database that is away is 503 with Retry-After, a full disk 507', async () => {
    const away = await call(null, 'GET', '/odd/away');
    expect([away.status, away.body.type]).toEqual([503, 'urn:underlath:problem:database-away']);
    expect(away.headers.get('retry-after')).toBe('5');
    const full = await call(owner, 'POST', '/odd', { name: 'full', lengthIn: 1 });
    expect([full.status, full.body.type]).toEqual([507, 'urn:underlath:problem:storage-full']);
  });

  test('an unexpected error tells nothing of the inside', async () => {
    const { status, body } = await call(null, 'GET', '/odd/broken');
    expect(status).toBe(500);
    expect(JSON.stringify(body)).not.toContain('hunter2');
  });
});

describe('permissions', () => {
  test('a route that declares none stops the server from starting', async () => {
    const bare = Fastify();
    bare.setValidatorCompiler(validatorCompiler).setSerializerCompiler(serializerCompiler);
    bare.decorateRequest('principal', null);
    const withoutAuth = Object.assign(permissions, { [Symbol.for('plugin-meta')]: { name: 'permissions' } });
    await bare.register(withoutAuth);
    expect(() => bare.get('/open', async () => 'hello')).toThrow('Route GET /open declares no permission');
  });

  test('nobody is asked to sign in, a wrong role is refused by name', async () => {
    const nobody = await call(null, 'POST', '/odd', good);
    expect([nobody.status, nobody.body.type]).toEqual([401, 'urn:underlath:problem:not-signed-in']);
    const wrong = await call(crew, 'POST', '/odd', good);
    expect([wrong.status, wrong.body.type]).toEqual([403, 'urn:underlath:problem:not-allowed']);
    expect(wrong.body.detail).toBe('Your role is crew; this takes owner or estimator.');
  });

  test('a session names the member, and dies on the server', async () => {
    const person = await api.signIn({ role: 'estimator' });
    const mine = await call(person, 'GET', '/odd/mine');
    expect(mine.body).toMatchObject({
      kind: 'member',
      companyId: person.companyId,
      memberId: person.memberId,
      role: 'estimator',
    });
    await api.platform.accounts.revokeSessionsOf(person.userId);
    expect((await call(person, 'GET', '/odd/mine')).status).toBe(401);
  });

  test('a removed member is nobody at once', async () => {
    const person = await api.signIn();
    await api.platform.database.inCompany(person.companyId, (tx) =>
      tx.member.updateMany({ where: { id: person.memberId }, data: { removedAt: new Date() } }),
    );
    expect((await call(person, 'GET', '/odd/mine')).status).toBe(401);
  });

  test('an unknown API key is refused', async () => {
    const answer = await call(null, 'GET', '/odd/mine', undefined, { authorization: 'Bearer made-up' });
    expect([answer.status, answer.headers.get('www-authenticate')]).toEqual([401, 'Bearer']);
  });
});

describe('If-Match', () => {
  test.each([
    [undefined, 428, 'version-required'],
    ['"6"', 412, 'stale-version'],
    ['*', 412, 'stale-version'],
  ])('%s on version 7 answers %i', async (ifMatch, status, type) => {
    const answer = await call(owner, 'PATCH', '/odd', undefined, ifMatch === undefined ? {} : { 'if-match': ifMatch });
    expect([answer.status, answer.body.type]).toEqual([status, `urn:underlath:problem:${type}`]);
  });

  test('the version seen goes through', async () => {
    expect((await call(owner, 'PATCH', '/odd', undefined, { 'if-match': '"7"' })).body).toEqual({ version: 8 });
  });
});

describe('Idempotency-Key', () => {
  test('the same key and body answer the same again, and the work is done once', async () => {
    const headers = { 'idempotency-key': 'repeat-1' };
    const first = await call(owner, 'POST', '/odd', good, headers);
    const again = await call(owner, 'POST', '/odd', { lengthIn: 92.625, name: 'stud' }, headers);
    expect(again.body).toEqual(first.body);
    expect(again.headers.get('idempotency-replayed')).toBe('true');
    expect((await call(owner, 'POST', '/odd', good)).body.made).toBe(first.body.made + 1);
  });

  test('another body under the same key is refused', async () => {
    const headers = { 'idempotency-key': 'repeat-2' };
    await call(owner, 'POST', '/odd', good, headers);
    const other = await call(owner, 'POST', '/odd', { ...good, lengthIn: 1 }, headers);
    expect([other.status, other.body.type]).toEqual([422, 'urn:underlath:problem:key-reused']);
  });

  test('of fifty posts at once one does the work; the others are told to wait or get its answer', async () => {
    const slow = { name: 'slow', lengthIn: 1 };
    const headers = { 'idempotency-key': 'repeat-3' };
    const answers = await Promise.all(Array.from({ length: 50 }, () => call(owner, 'POST', '/odd', slow, headers)));
    const done = answers.filter(({ status }) => status === 200);
    expect(new Set(done.map(({ body }) => body.made)).size).toBe(1);
    expect(answers.filter(({ status }) => status !== 200).every(({ status }) => status === 409)).toBe(true);
  });

  test('a failure is not kept: the same key may try again', async () => {
    const headers = { 'idempotency-key': 'repeat-4' };
    const full = { name: 'full', lengthIn: 1 };
    expect((await call(owner, 'POST', '/odd', full, headers)).status).toBe(507);
    expect((await call(owner, 'POST', '/odd', full, headers)).status).toBe(507);
  });

  test('two people may use the same key', async () => {
    const headers = { 'idempotency-key': 'repeat-1' };
    const other = await api.signIn({ role: 'estimator' });
    expect((await call(other, 'POST', '/odd', good, headers)).headers.get('idempotency-replayed')).toBeNull();
  });
});
