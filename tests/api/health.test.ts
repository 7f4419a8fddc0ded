import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { startTestApi, type TestApi } from '../support/api.ts';

let api: TestApi;
beforeAll(async () => {
  api = await startTestApi({ limits: { perAddress: 40 } });
});
afterAll(() => api.close());

describe('a running server', () => {
  test('is alive, and ready when database, file store and migrations answer', async () => {
    expect((await api.http().get('/livez')).body).toEqual({ status: 'ok' });
    const ready = await api.http().get('/readyz');
    expect(ready.status).toBe(200);
    expect(ready.body).toEqual({ status: 'ok', database: 'ok', fileStore: 'ok', migrations: 'ok' });
  });

  test('is not ready when a migration is missing, and says which part', async () => {
    const pool = api.platform.database.ownerPool;
    await pool.query(`update _prisma_migrations set rolled_back_at = now() where migration_name = '0001_init'`);
    const ready = await api.http().get('/readyz');
    await pool.query('update _prisma_migrations set rolled_back_at = null');
    expect(ready.status).toBe(503);
    expect(ready.body).toMatchObject({ status: 'failing', database: 'ok', migrations: 'failing' });
  });

  test('describes itself in OpenAPI 3.1', async () => {
    const { body } = await api.http().get('/api/v1/openapi.json');
    expect(body.openapi).toBe('3.1.0');
    const operations = Object.values(body.paths).flatMap((path) =>
      Object.values(path as Record<string, { operationId: string }>),
    );
    expect(operations.map(({ operationId }) => operationId)).toContain('listProjects');
    expect(body.paths['/api/v1/projects'].post.security).toEqual([{ session: [] }, { apiKey: [] }]);
    const change = body.paths['/api/v1/projects/{projectId}'].patch;
    expect(change.parameters.map(({ name }: { name: string }) => name)).toContain('if-match');
  });

  test('answers an unknown address with a problem document', async () => {
    const answer = await api.http().get('/api/v1/nothing');
    expect(answer.status).toBe(404);
    expect(answer.headers['content-type']).toMatch(/^application\/problem\+json/);
    expect(answer.body).toMatchObject({ type: 'urn:underlath:problem:not-found', status: 404 });
    expect(answer.headers['x-request-id']).toBe(answer.body.instance.replace('urn:uuid:', ''));
  });

  test('answers a wrong method with 405 and the right ones', async () => {
    const answer = await api.http().post('/api/v1/openapi.json');
    expect(answer.status).toBe(405);
    expect(answer.headers.allow).toBe('GET, HEAD');
  });

  test('refuses a write that another site sends', async () => {
    const byOrigin = await api.http().post('/api/v1/session').set('origin', 'https://elsewhere.example').send({});
    expect(byOrigin.body.type).toBe('urn:underlath:problem:cross-site');
    const bySite = await api.http().post('/api/v1/session').set('sec-fetch-site', 'same-site').send({});
    expect(bySite.body.type).toBe('urn:underlath:problem:cross-site');
  });

  test('sends a policy without inline code and lets no page frame it', async () => {
    const { headers } = await api.http().get('/livez');
    expect(headers['content-security-policy']).toContain("script-src 'self'");
    expect(headers['content-security-policy']).not.toContain('unsafe-inline');
    expect(headers['content-security-policy']).toContain("frame-ancestors 'none'");
    expect(headers['x-content-type-options']).toBe('nosniff');
    expect(headers['referrer-policy']).toBe('no-referrer');
    expect(headers['strict-transport-security']).toBeUndefined();
  });

  test('answers 429 with Retry-After past the limit, as a problem document', async () => {
    const answers = [];
    for (let turn = 0; turn < 45; turn++) answers.push(await api.http().get('/api/v1/openapi.json'));
    const refused = answers.at(-1);
    expect(refused?.status).toBe(429);
    expect(refused?.body.type).toBe('urn:underlath:problem:too-many-requests');
    expect(Number(refused?.headers['retry-after'])).toBeGreaterThan(0);
    expect((await api.http().get('/livez')).status).toBe(200);
  });
});
