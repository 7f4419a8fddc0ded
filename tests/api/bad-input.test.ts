import { type Route, routes } from '@underlath/contract';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { startTestApi, type TestApi } from '../support/api.ts';
import { cutPlate, newProject, newWall, type Site, startSite, v1 } from '../support/site.ts';

let api: TestApi;
let site: Site;

beforeAll(async () => {
  api = await startTestApi();
  site = await startSite(api);
});
afterAll(() => api.close());

async function send(method: string, path: string, body: string, headers: Record<string, string> = {}) {
  const answer = await fetch(`${api.url}${v1}${path}`, {
    method,
    headers: { cookie: site.owner.cookie, 'content-type': 'application/json', 'if-match': '"1"', ...headers },
    body,
  });
  const type = answer.headers.get('content-type') ?? '';
  return { status: answer.status, type, body: type.includes('json') ? JSON.parse(await answer.text()) : {} };
}

const idOf = (param: string): string =>
  ({ projectId: site.project.id, locationId: site.wall.id, checkId: 'cut.top-plate' })[param] ?? site.wall.id;
const withBody = Object.entries(routes as Record<string, Route>).filter(([, { body }]) => body);

describe.each(withBody)('%s', (_name, route) => {
  test.each([
    'null',
    '[]',
    '"words"',
    '7',
    '{"a":',
    '',
    '{"__proto__":{"role":"owner"}}',
    `{"x":${'['.repeat(20_000)}${']'.repeat(20_000)}}`,
  ])('answers a problem to %.30s, and does not break', async (body) => {
    const path = route.path.replace(/:(\w+)/g, (_all, param: string) => idOf(param));
    const answer = await send(route.method, path, body);
    expect(answer.status).toBeGreaterThanOrEqual(400);
    expect(answer.status).toBeLessThan(500);
    expect(answer.type).toMatch(/^application\/problem\+json/);
    expect(answer.body.detail.length).toBeGreaterThan(10);
  });
});

describe('letters that a database cannot keep', () => {
  const nul = JSON.stringify('plate\u0000');
  const half = '"plate\\ud800"';

  test.each([
    ['a project', () => ['POST', '/projects', { ...newProject, name: '@' }]],
    ['a place', () => ['POST', `/projects/${site.project.id}/locations`, { ...newWall, name: '@' }]],
    [
      'a finding',
      () => [
        'POST',
        `/projects/${site.project.id}/findings`,
        {
          locationId: site.wall.id,
          checkId: 'cut.top-plate',
          seenAt: '2026-03-03T14:05:09Z',
          inputs: cutPlate,
          note: '@',
        },
      ],
    ],
    ['a sign-in', () => ['POST', '/session', { email: 'a@example.test', password: '@' }]],
    ['a link', () => ['POST', '/invitations/look-up', { token: '@' }]],
  ] as [string, () => [string, string, object]][])('in %s are refused, not stumbled over', async (_name, request) => {
    const [method, path, body] = request();
    for (const letter of [nul, half]) {
      const { status } = await send(method, path, JSON.stringify(body).replace('"@"', letter));
      expect(status).toBeGreaterThanOrEqual(400);
      expect(status).toBeLessThan(500);
    }
  });

  test('in a search are refused', async () => {
    const { status } = await api.http(site.owner).get(`${v1}/projects?q=%00`);
    expect(status).toBe(422);
  });
});
